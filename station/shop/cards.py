"""Everything that can be pressed, as codes: buttons, digits, zones of the sheet.

A button on a screen sends the code of its printed card, so scanner, touch and keyboard
are one way in. Numbers are fixed for good once printed: add, never renumber. Reasons are
facts (a shop lists its own); the ones a shop starts with are in `shop.first_facts`.
"""

from typing import NamedTuple

from station.shop.areas import ANYWHERE, AREAS, button_of
from station.shop.codes import usable, write, write_touch


class Card(NamedTuple):
    """A button: its name in the program, its number on paper, its words and area."""

    name: str
    number: str
    words: str
    area: str  # a work area, or "anywhere"


_TABLE: tuple[tuple[str, tuple[tuple[int, str, str], ...]], ...] = (
    (
        ANYWHERE,
        (
            (1, "enter", "That is it"),
            (2, "undo", "Undo the last act"),
            (3, "put_down", "Leave it"),
            (4, "yes", "Yes, I am sure"),
            (5, "fewer", "One less"),
            (6, "more", "One more"),
            (7, "clear", "Clear the number"),
            (8, "reprint", "Print a new copy"),
            (9, "split", "Split a part off"),
            (10, "lost_paper", "Traveller lost"),
            (11, "found", "Missing parts found"),
            (12, "recount", "Count again"),
            (13, "hold", "Hold this batch"),
            (14, "release", "Let it go on"),
            (15, "handover", "Hand over"),
            (16, "next_page", "More of the list"),
            (17, "back_page", "Back in the list"),
            *((a.number, button_of(a), a.words.template) for a in AREAS),
            (25, "point", "Decimal point"),
            (31, "row_1", "Row 1"),
            (32, "row_2", "Row 2"),
            (33, "row_3", "Row 3"),
            (34, "row_4", "Row 4"),
            (35, "row_5", "Row 5"),
            (36, "row_6", "Row 6"),
            (37, "row_7", "Row 7"),
            (38, "row_8", "Row 8"),
            (39, "row_9", "Row 9"),
            (40, "menu", "More"),
            (41, "sign_out", "Someone else"),
            (42, "dark", "Dark or light screen"),
            (43, "sounds", "Sounds on or off"),
            (44, "language", "Another language"),
            (45, "print_page", "Print the list"),
            (46, "care", "Take care: read all"),
            (47, "returned", "Something came back"),
            (48, "batches", "The batches"),
            (49, "history", "What was done"),
            (50, "row_10", "Row 10"),
            (51, "row_11", "Row 11"),
            (52, "row_12", "Row 12"),
            (53, "handbook", "Handbook"),
            (54, "row_13", "Row 13"),
            (55, "row_14", "Row 14"),
            (56, "row_15", "Row 15"),
            (57, "row_16", "Row 16"),
            (58, "row_17", "Row 17"),
            (59, "row_18", "Row 18"),
        ),
    ),
    (
        "loading",
        (
            (101, "start", "Start the sheet"),
            (102, "off_bed", "The sheet is off the bed"),
            (103, "sheet_spoiled", "Sheet spoiled"),
            (104, "stop", "Report a stop"),
            (105, "stop_over", "The stop is over"),
            (106, "held_down", "Held down, bed vacuumed"),
            (107, "bit_good", "Bit is right"),
            (108, "file_right", "Cut file is right"),
            (109, "zeroed", "Zero is set"),
            (110, "first_off_good", "First-off agrees"),
            (111, "first_off_bad", "First-off is wrong"),
            (112, "day_done", "Start of day done"),
            (113, "resurfaced", "Spoilboard resurfaced"),
            (114, "rehomed", "Router re-homed"),
            (115, "told", "I have read it"),
            (116, "bit_broken", "Bit broken"),
            (117, "one_more_sheet", "Cut one more sheet"),
            (118, "survived", "Count what survived"),
            (119, "next_router", "Next router"),
            (120, "bed_clear", "Bed is clear"),
            (121, "bit_out", "Bit is out of the wood"),
            (122, "nobody_near", "Nobody is at the bed"),
            (123, "who_next", "Who needs me next"),
            (124, "new_bit", "New bit"),
        ),
    ),
    (
        "popping",
        (
            (201, "pass_on", "Pass on"),
            (202, "some", "Only some of it"),
            (203, "missing", "Missing"),
            (204, "uncut", "To rework"),
            (205, "spoil", "Spoiled"),
        ),
    ),
    (
        "trimming",
        (
            (301, "on_rack", "Put on the rack"),
            (302, "some_trimmed", "Only some of it"),
            (303, "rework", "To rework"),
            (304, "overtrimmed", "Spoiled"),
            (305, "master_agrees", "Agrees with the master"),
            (306, "master_differs", "Differs from the master"),
            (307, "lost", "Missing"),
        ),
    ),
    (
        "packing",
        (
            (401, "close_pack", "Close the pack"),
            (402, "part_missing", "Part missing"),
            (403, "wait", "Wait for it"),
            (404, "send_short", "Send it short"),
            (405, "take_back", "Put it back on the rack"),
            (406, "next_order", "Next order"),
            (407, "all_of_it", "All parts are in"),
            (408, "scale", "Weight on the scale"),
            (409, "label_again", "Print the label again"),
            (410, "spoiled_piece", "A piece is spoiled"),
            (411, "walk", "Several orders on one walk"),
            (412, "take_from", "Take it from a later order"),
            (413, "ask_sheet", "Ask for a sheet"),
            (414, "count_supplies", "Count mailers, wrap and labels"),
            (415, "part_pack", "One of two packs"),
            (416, "open_pack", "Open the pack again"),
        ),
    ),
    (
        "cart",
        (
            (501, "on_cart", "Onto the cart"),
            (502, "off_cart", "Off the cart"),
            (503, "at_door", "At the door"),
            (504, "leave", "The cart leaves"),
            (505, "not_yet", "Back from the door"),
            (506, "cart_list", "Print the cart list"),
        ),
    ),
    (
        "today",
        (
            (601, "settle", "Settle it"),
            (602, "show_flow", "Show the flow"),
            (603, "show_concerns", "Show what needs a look"),
            (604, "all_alike", "All like it"),
        ),
    ),
    (
        "plan",
        (
            (651, "release_first", "Release what blocks, print"),
            (652, "release_line", "Release what is chosen, print"),
            (653, "take_back_line", "Take the chosen batch back"),
            (654, "order_list", "Write the order list"),
            (655, "take_mark", "Take the suggested minimum"),
            (656, "think", "Look again at what to cut, or stop"),
            (657, "ordered", "All of the list is ordered"),
        ),
    ),
    (
        "office",
        (
            (701, "save", "Save"),
            (702, "new", "A new one"),
            (703, "next_kind", "Next list"),
            (704, "back_kind", "Back a list"),
            (716, "release_batch", "Release and print"),
            (706, "cancel_it", "Cancel it"),
            (707, "approve", "Approve this revision"),
            (708, "next_field", "Next field"),
            (709, "print_cards", "Print its card"),
            (710, "read_csv", "Read a CSV file"),
            (711, "write_csv", "Write a CSV file"),
            (712, "backup", "Back up"),
            (717, "receive", "Receive sheets"),
            (714, "correct", "Correct a count"),
            (715, "lock", "Lock the office"),
            (718, "new_pin", "A new PIN"),
            (719, "lines_done", "The list is complete"),
            (720, "remove", "Take this line out"),
            (737, "read_file", "Read its file"),
            (738, "show_path", "Show the path"),
            (739, "stop_reading", "Stop reading"),
            (740, "path_play", "Play the path, or pause"),
            (741, "path_back", "Back on the path"),
            (742, "path_on", "Onward on the path"),
            (743, "path_speed", "Another speed"),
            (744, "path_in", "Closer"),
            (745, "path_out", "Farther"),
            (746, "path_all", "The whole sheet"),
            (747, "how_read", "How it is read"),
            (748, "hold_downs", "The hold-downs"),
            (749, "next_problem", "The next problem"),
            (750, "as_proposed", "As proposed"),
            (751, "path_pieces", "The sheet as it comes off"),
            (758, "path_layers", "Layers of the path"),
            (752, "read_all", "Read all lists"),
            (753, "still_missing", "What is missing"),
            (754, "not_made", "Sheets not made"),
            (755, "health", "This shop's health"),
            (756, "restore", "Restore a backup"),
            (757, "search", "Search"),
            (736, "list_order", "Orders"),
            (722, "list_cutfile", "Cut files"),
            (723, "list_part", "Parts"),
            (724, "list_product", "Products"),
            (725, "list_rack", "Rack places"),
            (726, "list_material", "Materials"),
            (727, "list_lot", "Lots"),
            (728, "list_router", "Routers"),
            (729, "list_bit", "Bits"),
            (730, "list_mailer", "Mailers"),
            (762, "list_postage", "Postage"),
            (761, "list_bit_size", "Bit sizes"),
            (759, "list_purchase", "On its way"),
            (760, "list_push", "Own pushes"),
            (731, "list_cart", "Carts"),
            (732, "list_worker", "Workers"),
            (733, "list_reason", "Reasons"),
            (734, "list_revision", "Revisions"),
            (735, "list_shop", "This shop"),
        ),
    ),
)

BUTTONS: dict[str, Card] = {
    name: Card(name, f"{number:03d}", words, area)
    for area, rows in _TABLE
    for number, name, words in rows
}
CODES: dict[str, str] = {name: write("button", card.number) for name, card in BUTTONS.items()}
BY_NUMBER: dict[str, Card] = {card.number: card for card in BUTTONS.values()}

# A room's own buttons that stand under “More”.
IN_MENU: dict[str, tuple[str, ...]] = {"loading": ("who_next",)}

# The F key of a large button that has others before it on some screens only: it never changes.
# A button that is not named here has the lowest one that is free on its screen.
F_KEYS: dict[str, int] = {
    "stop": 2, "bit_broken": 3, "sheet_spoiled": 4, "resurfaced": 4, "first_off_bad": 4,
    "one_more_sheet": 5, "new_bit": 5, "zeroed": 5, "first_off_good": 1,
    "part_missing": 2, "scale": 2, "send_short": 2, "take_back": 3, "take_from": 3,
    "spoiled_piece": 4, "part_pack": 5, "off_cart": 2, "not_yet": 3, "cart_list": 4,
    "fewer": 3, "more": 4,
    "still_missing": 3, "not_made": 4, "lock": 5, "order_list": 2, "ordered": 5, "think": 3,
    "release_first": 1, "release_line": 4,
    "back_page": 6, "next_page": 7, "next_router": 7, "put_down": 8, "menu": 9,
}  # fmt: skip

DIGITS: tuple[str, ...] = tuple("0123456789")

# The sheet in nine zones, three along by three across, as seen on the drawing. Their
# numbers were chosen so that every card has a printable check character.
ZONES: dict[str, str] = {
    "51": "top left",
    "52": "top middle",
    "53": "top right",
    "54": "middle left",
    "55": "middle",
    "56": "middle right",
    "57": "bottom left",
    "58": "bottom middle",
    "59": "bottom right",
}

REASON_USES: dict[str, str] = {
    "spoiled": "parts spoiled",
    "sheet": "sheet spoiled",
    "rework": "parts to rework",
    "stop": "the router stopped",
    "overrule": "a supervisor overrules",
    "correct": "a count is corrected",
    "repack": "a closed pack is opened",
    "returned": "something came back",
    "mailer": "another mailer is taken",
}


def button(name: str) -> str:
    """The code that a button sends and its card carries."""
    return CODES[name]


def row_code(kind: str, id: str, number: int) -> str:
    """What a touch on the n-th row sends: the code of what stands there, where it has one.

    Else it is the card “Row n”; beyond the last such card a row cannot be touched.
    """
    row = f"row_{number}"
    return write_touch(kind, id) or (button(row) if row in BUTTONS else "")


def digit(char: str) -> str:
    """The code of a digit card."""
    return write("digit", char)


def zone_of(x_mm: float, y_mm: float, length_mm: float, width_mm: float) -> str:
    """The zone number of a point on the sheet; y grows upward, row 1 is at the top."""
    column = min(2, max(0, int(3 * x_mm / length_mm)))
    row = 2 - min(2, max(0, int(3 * y_mm / width_mm)))
    return tuple(ZONES)[column + 3 * row]


def middle_of(zone: str, length_mm: float, width_mm: float) -> tuple[float, float]:
    """The middle of a zone of a sheet, x and y in mm."""
    row, column = divmod(tuple(ZONES).index(zone), 3)
    return (column + 0.5) * length_mm / 3, (2.5 - row) * width_mm / 3


def unprintable() -> list[str]:
    """Cards whose number has no printable check character; a test keeps this empty."""
    wrong = [c.name for c in BUTTONS.values() if not usable("button", c.number)]
    wrong += [d for d in DIGITS if not usable("digit", d)]
    return wrong + [z for z in ZONES if not usable("zone", z)]
