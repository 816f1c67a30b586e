"""What is said and shown when something went wrong.

That nothing was counted is said only where nothing was; a screen that cannot be made leaves
the way out of it open.
"""

from dataclasses import replace

from station.shop.acts import Answer, attention, refuse
from station.shop.areas import AREAS, button_of
from station.shop.cards import BUTTONS, button
from station.shop.faces import Cards, Entry, Face, Hint, Press, Text
from station.shop.words import Say, say, together

Paper = tuple[str, str]  # its kind and what it is about: ("traveller", "00412")

_NAMES: dict[str, Say] = {
    "traveller": say("traveller"),
    "label": say("label of pack"),
    "pick_list": say("pick list of order"),
    "handover": say("handover sheet of worker"),
    "cart_list": say("list of cart"),
    "card": say("card"),
    "badges": say("badges"),
    "part_cards": say("cards of parts"),
    "thing_cards": say("cards of routers, bits, lots, carts, mailers and cut files"),
    "button_cards": say("cards of buttons"),
}
_AGAIN: dict[str, Say] = {
    "traveller": say("Print it again: “More”, then “Print a new copy”."),
    "label": say("Print it again at packing: “Label again”."),
}


def tell_own_bug(recorded: Answer | None) -> Answer:
    """Says that the program itself is wrong; `recorded` is what was recorded all the same."""
    if recorded is None:
        return refuse(
            say("Something is wrong in the program; nothing was counted"),
            say("Scan it once more. It is written down for the makers."),
        )
    return attention(
        say("It is recorded, then something went wrong in the program"),
        say("Do not scan it again: {what}. It is written down for the makers.",
            what=recorded.said),
    )  # fmt: skip


def make_face(title: Text) -> Face:
    """Makes what is shown where a room's own screen cannot be: why, and the ways on."""
    areas = tuple(map(button_of, AREAS))
    entries = tuple(Entry(big=say(BUTTONS[name].words), code=button(name)) for name in areas)
    return Face(
        title=title,
        main=(
            Hint(
                title=say("This screen cannot be shown: something is wrong in the program"),
                note=say("It is written down for the makers. What was counted counts. "
                         "Leave what is in hand, or work elsewhere."),
                tone="stop",
            ),
        ),
        side=(Cards(title=say("This screen"), entries=entries),),
        weights=(55, 0, 45),
        presses=(
            Press(label=say("Leave it"), code=button("put_down"), style="primary"),
            Press(label=say("More"), code=button("menu")),
        ),
    )  # fmt: skip


def tell_stopped(recorded: Answer) -> Answer:
    """Says that an act is recorded, though the disk took nothing of what comes after it."""
    return replace(
        recorded,
        tone="attention",
        do=say("It is recorded. Then the disk failed: look after it, then go on."),
    )


def tell_not_printed(answer: Answer, papers: dict[Paper, str], *, recorded: bool) -> Answer:
    """Says which papers were not made, why, and how each is printed again.

    `papers`: why, in words or empty, by paper. The act counts where it was `recorded`.
    """
    names = together([_name(kind, about, why) for (kind, about), why in papers.items()])
    how = next((_AGAIN[kind] for kind, _ in papers if kind in _AGAIN), say("Print it again."))
    if not recorded:
        return replace(answer, tone="attention", said=say("Not printed: {papers}", papers=names),
                       do=how)  # fmt: skip
    return replace(
        answer,
        tone="attention",
        said=say("It is recorded. Not printed: {papers}", papers=names),
        do=say("{next} {how}", next=answer.do, how=how),
    )


def _name(kind: str, about: str, why: str) -> Say:
    """A paper in words: traveller 00412 (No space left on device)."""
    name = _NAMES.get(kind, Say(kind))
    if about.isdecimal():
        name = say("{paper} {id}", paper=name, id=about)
    return say("{paper} ({why})", paper=name, why=why) if why else name
