"""Questions about sheets that a batch did not get: told until they are cut anew, or dropped."""

from dataclasses import replace
from typing import NamedTuple

from station.queries.batches import is_approved, refuse_unapproved
from station.queries.underway import list_queued
from station.shop.acts import Answer, refuse
from station.shop.facts import Batch, Concern, CutFile, Reason
from station.shop.first_facts import say_reason
from station.shop.moves import tail
from station.shop.views import View
from station.shop.words import Say, say

UNMADE = "unmade"  # the kind of concern
# how it is settled: by a supervisor, or by itself
AGAIN, DROP, MADE = "cut it again", "drop it", "one more is cut"
MOST = 5000  # concerns
MOST_SHEETS = 99  # of one batch, those made good for spoiled ones included


class Unmade(NamedTuple):
    """A sheet that was not made, or those of a begun batch that may not be cut any more.

    `look` is the id of the concern that tells of it; empty where nobody settles it.
    """

    batch: Batch
    file: str
    sheet: str  # its number; of several how many
    why: Say | str
    since: str  # empty: now
    look: str = ""


def raise_unmade(batch: Batch, sheet: int, lost: int, *, id: str, at: str) -> Concern:
    """Raises that a spoiled sheet is not made anew yet; `lost` are its pieces that are gone."""
    text = say(
        "Batch {batch}, sheet {sheet} is not made anew: {n} {n|piece|pieces} lost",
        batch=batch.id,
        sheet=sheet,
        n=lost,
    )
    return Concern(id=id, what=UNMADE, since=at, about=batch.key, text=text,
                   choices=("cut it again", "drop it"))  # fmt: skip


def list_unmade(view: View, batch: Batch) -> tuple[Concern, ...]:
    """Lists what tells of sheets of a batch that are neither made anew nor dropped, in order."""
    every = view.shelf(Concern, "open", MOST)
    return tuple(c for c in every if c.what == UNMADE and c.about == batch.key)


def list_uncuttable(view: View) -> tuple[Batch, ...]:
    """Lists begun batches whose other sheets nobody may cut: another revision is approved."""
    return tuple(
        b for b in list_queued(view) if b.cut and not b.why_held and not is_approved(view, b)
    )


def list_all_unmade(view: View) -> tuple[Unmade, ...]:
    """Lists every sheet that was not made, the newest first; then those that may not be cut."""
    spoiled = [
        Unmade(batch, _name_file(view, batch), _read_sheet(c), _find_why(view, c), c.since, c.id)
        for c in reversed(view.shelf(Concern, "open", MOST))
        if c.what == UNMADE and (batch := view.get(Batch, tail(c.about)))
    ]
    stuck = [
        Unmade(b, _name_file(view, b), f"{b.cut + 1}–{b.sheets}",
               say("another revision is approved"), "")
        for b in list_uncuttable(view)
    ]  # fmt: skip
    return (*spoiled, *stuck)


def _name_file(view: View, batch: Batch) -> str:
    cut_file = view.get(CutFile, batch.cut_file)
    return cut_file.name if cut_file else batch.cut_file


def _read_sheet(concern: Concern) -> str:
    """Reads which sheet a concern tells of."""
    return str(concern.text.values["sheet"]) if isinstance(concern.text, Say) else ""


def _find_why(view: View, concern: Concern) -> Say | str:
    """Finds why a sheet was spoiled; empty: it was before this PC's history begins."""
    past = view.past(concern.id)
    reason = view.get(Reason, past.act.args.reason) if past else None
    return say_reason(reason) if reason else ""


def want_one_more(batch: Batch) -> Batch:
    """Gives a batch one sheet more, to be cut."""
    return replace(batch, sheets=batch.sheets + 1, state="cutting")


def refuse_one_more(view: View, batch: Batch) -> Answer | None:
    """Refuses to give a batch one sheet more that nobody could cut."""
    if not batch.has_sheets or batch.state == "cancelled" or not batch.spoiled:
        return refuse(
            say("No sheet of batch {batch} was spoiled", batch=batch.id),
            say("More of it is a new batch: ask the office."),
        )
    if batch.sheets >= MOST_SHEETS:
        return refuse(
            say("A batch has at most {most} {most|sheet|sheets}", most=MOST_SHEETS),
            say("More of it is a new batch: ask the office."),
        )
    return refuse_unapproved(view, want_one_more(batch))


def settle_unmade(told: tuple[Concern, ...], how: str, *, at: str, by: str) -> tuple[Concern, ...]:
    """Settles what tells of unmade sheets: they are made anew, or their batch is over."""
    return tuple(replace(c, settled=how, settled_at=at, by=by, reason=how) for c in told)
