"""When two people have the same pile in hand: what the other has done with it since.

A hand is known to its own station alone, so nobody sees who else holds a pile. Each act on a
pile therefore carries what lay there when it was picked up (`seen`: part → pieces), and the
second person is told before their count takes the rest.
"""

from collections.abc import Mapping

from station.shop.acts import Act, Answer, ask
from station.shop.facts import Batch
from station.shop.views import Past, View
from station.shop.words import Say, clock, say

DID: dict[str, Say] = {
    "pass_on": say("passed {n} on"),
    "put_on_rack": say("put {n} on the rack"),
    "split_batch": say("split {n} off"),
    "find_parts": say("found {n}"),
}
GOOD_AT = ("trimming", "rack", "packing")  # where the good ones of an act went


def changed(act: Act, view: View, batch: Batch, here: Mapping[str, int]) -> Answer | None:
    """A question where another number lies here than was picked up (`here`: part → pieces)."""
    raw = act.args.get("seen")
    if not isinstance(raw, Mapping) or not raw or act.args.get("sure"):
        return None
    past = view.last(batch.key)
    mine = past is not None and past.act.station == act.station
    if mine or {part: n for part, n in raw.items() if n} == dict(here):
        return None
    return ask(
        say(
            "{n} {n|is|are} here, {seen} when you took it: {who}",
            n=sum(here.values()),
            seen=sum(n for n in raw.values() if isinstance(n, int)),
            who=lately(view, batch) or say("it was changed"),
        ),
        say("Count again. Scan it again if the figures on the screen are right."),
        "sure",
    )


def lately(view: View, batch: Batch) -> Say:
    """What was last done with a batch: "worker 02 passed 60 on at 10:42"; or nothing."""
    past = view.last(batch.key)
    if past is None or past.undone or past.act.kind not in DID:
        return Say()
    did = DID[past.act.kind]._replace(values={"n": _moved(past)})
    return say("worker {by} {did} at {at}", by=past.act.worker, did=did, at=clock(past.act.at))


def _moved(past: Past) -> int:
    """Pieces that an act split off, found, or counted as good."""
    if past.act.kind in ("split_batch", "find_parts"):
        return sum(m.qty for m in past.moves)
    return sum(m.qty for m in past.moves if m.to.place.partition("/")[0] in GOOD_AT)
