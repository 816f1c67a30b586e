"""Lists what a work area has passed on today, by part."""

from collections import Counter
from collections.abc import Collection

from station.queries.stock import name_part
from station.shop.faces import Cell, Listing
from station.shop.views import View
from station.shop.words import Say, say, say_more

MOST = 5  # rows of it


def list_passed_on(
    title: Say, view: View, now: str, *, frm: Collection[str], to: Collection[str]
) -> Listing:
    """Lists the good pieces of each part that went on today, the most first.

    `frm` and `to` are kinds of place. The sums of moves are asked: a batch may be passed on
    several times a day, its sheets may have been cut on another, and an undo takes pieces back.
    """
    since, until = f"{now[:10]}T00", now[:13]

    def add_up(view: View) -> Counter[str]:
        sums: Counter[str] = Counter()
        for moved in view.passed(since, until):
            if moved.frm in frm and moved.to in to:
                sums[moved.part] += moved.qty
        return sums

    sums = view.once(f"passed on/{sorted(frm)}/{sorted(to)}/{until}", add_up)
    parts = [(part, n) for part, n in sums.most_common() if n > 0]
    return Listing(
        title=say_more(title, len(parts) - MOST),
        rows=tuple(
            ((Cell(text=name_part(view, part), bold=True), Cell(text=say("{n} good", n=n))), "")
            for part, n in parts[:MOST]
        ),
        empty=say("Nothing yet."),
    )
