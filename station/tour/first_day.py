"""README's first day as it is done on the screens: from an empty shop to a cart that left.

A line is what says so on the screen and is touched; one that begins with an apostrophe is typed;
``scan`` is followed by a badge, card or paper of the shop; ``@`` is time that passes. Whoever is
asked for a supervisor gives badge and PIN.
"""

from dataclasses import dataclass

PIN = "2468"
PART_NAMES = ("Short stick", "Long stick")


@dataclass(frozen=True, kw_only=True)
class DayStep:
    """One numbered step of README's first day: its first words there, and what is done for it.

    Words that README writes in *italics* are touched, in that order.
    """

    title: str
    does: tuple[str, ...]


STEPS: tuple[DayStep, ...] = (
    DayStep(
        title="Open it",
        does=("Language", "English", "Office", "{units}", "{paper}", "Open the station"),
    ),
    DayStep(title="Sign in", does=("01",)),
    DayStep(
        title="Set up the shop",
        does=(
            "A supervisor with a PIN", "01", "A new PIN", f"'{PIN}", f"'{PIN}", "Leave",
            "Still missing", "Sheets in the store", "A new one", "material", "{material}", "Save",
            "Receive sheets", "'20", "Leave",
            "Still missing", "A bit", "A new one", "description", "'compression",
            "'{diameter}",
            "router", "Router 1", "Save", "Leave",
        ),
    ),
    DayStep(
        title="Take your cut file in",
        does=(
            "@file", "Still missing", "A cut file that was read", "A new one", "name", "'STICKS",
            "description", "'Sticks", "Save", "Read its file", "{material}", "first.nc", "@done",
            "@name shapes", "Take it in", "Approve the newest", "Leave",
            "Still missing", "A rack place for each part", "@rack places",
        ),
    ),
    DayStep(title="Print the cards", does=("All cards",)),
    DayStep(
        title="Write down what is sold",
        does=(
            "Still missing", "A cart", "A new one", "name", "'Cart 1", "Save", "Leave",
            "Still missing", "A product", "A new one", "name", "'ST", "description", "'Sticks",
            "parts", "{part}", "'2", "List complete", "Save", "Leave",
            "Still missing", "An order", "A new one", "ST", "'1", "List complete",
            "due", "+", "Save", "Leave",
        ),
    ),
    DayStep(
        title="Release a batch",
        does=("Cut files", "001", "Release and print", "Router 1", "'1"),
    ),
    DayStep(
        title="Cut",
        does=(
            "More", "Work at loading", "Start of day done", "Take batch 00001", "001",
            "'{thickness}", "Hold-down", "Bit", "Cut file", "Zero", "Start sheet 1", "@after 60",
            "Sheet 1 is off the bed", "First-off agrees",
        ),
    ),
    DayStep(title="Pop", does=("More", "Work at popping", "00001", "Pass on")),
    DayStep(
        title="Trim, compare, put on the rack",
        does=("More", "Work at trimming", "00001", "To the rack"),
    ),
    DayStep(
        title="Pack",
        does=("More", "Work at packing", "scan order 9001", "{part}", "Close the pack"),
    ),
    DayStep(
        title="Send it",
        does=(
            "More", "Work at the cart", "scan pack 00001", "At the door",
            "scan pack 00001", "The cart leaves",
        ),
    ),
)  # fmt: skip
