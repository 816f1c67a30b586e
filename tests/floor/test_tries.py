"""Two tries a piece, whatever traveller it is on."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from station.floor.anywhere.rules import RULES as ANYWHERE
from station.floor.trimming.rules import MOST_TRIES, RULES
from station.shop.acts import Act, Answer
from station.shop.facts import Batch, Pile
from station.shop.moves import move
from station.shop.views import total
from tests.fakes import FakeView
from tests.floor.shop_small import SHUTTLE, SHUTTLES, at, batch, small_shop

BEFORE_RACK = ("trimming", "rework", "missing")


class Table:
    """A router table with 40 shuttles of one batch, and every act that moves their tries."""

    def __init__(self) -> None:
        pile = Pile(id="trimming/00412", area="trimming", batch="00412", since=at("09:00"))
        moved = (move(SHUTTLE, 40, "cut", "trimming", "00412"),)
        self.view: FakeView = small_shop(batch(SHUTTLES), pile, moves=moved)
        self.count = 0

    def act(self, kind: str, id: str, **args: object) -> Answer:
        self.count += 1
        act = Act(id=f"a{self.count}", kind=kind, at=at("10:00"), worker="02", station="s1",
                  subject=f"batch/{id}", args={**args, "numbers": {"batch": f"{self.count:05d}"}},
                  )  # fmt: skip
        return self.view.do({**RULES, **ANYWHERE}, act)

    def put(self, id: str, **row: int) -> Answer:
        kinds = {"rework": "rework/22", "spoiled": "spoiled/03"}
        counts = {kinds.get(k, k): n for k, n in row.items() if n}
        return self.act("put_on_rack", id, parts={SHUTTLE: counts})

    def batches(self) -> dict[str, int]:
        """Every batch with pieces before the rack, and its tries."""
        found = [f for f in self.view.facts.values() if isinstance(f, Batch)]
        return {b.id: b.tries for b in found if self.waiting(b.id)}

    def waiting(self, id: str) -> int:
        return sum(total(self.view.stock(batch=id), place=p) for p in BEFORE_RACK)


def test_what_was_split_off_a_rework_keeps_its_tries() -> None:
    t = Table()
    t.put("00412", good=34, rework=6)
    t.act("split_batch", "00001", part=SHUTTLE, quantity=2, area="trimming")
    t.put("00002", rework=2)
    assert t.batches() == {"00001": 1, "00002": 2}
    assert "tried twice" in str(t.put("00002", rework=1).said)


def test_what_fails_while_others_wait_goes_on_a_paper_of_its_own() -> None:
    t = Table()
    t.put("00412", good=34, rework=6)
    answer = t.put("00001", good=1, rework=1)
    assert answer.prints == (("traveller", "00002"),)
    assert t.batches() == {"00001": 1, "00002": 2}
    assert not t.put("00001", good=3, rework=1).refused  # these four had one try only


def test_what_is_found_again_keeps_the_tries_it_had() -> None:
    t = Table()
    t.put("00412", good=34, rework=6)
    t.put("00001", good=3, missing=1, rework=2)
    t.act("find_parts", "00001", part=SHUTTLE, quantity=1)
    assert t.batches() == {"00001": 1, "00002": 2}


def test_the_same_paper_goes_on_where_nothing_else_is_left_on_it() -> None:
    t = Table()
    t.put("00412", good=34, rework=6)
    answer = t.put("00001", good=4, rework=2)
    assert (answer.prints, t.batches()) == ((), {"00001": 2})


_DEEDS = st.tuples(
    st.sampled_from(["put", "split", "find"]),
    st.integers(0, 8),  # which batch
    st.tuples(*[st.integers(0, 2)] * 4),  # good, spoiled, missing, rework
)


@settings(max_examples=150, deadline=None)
@given(st.lists(_DEEDS, max_size=20))
@pytest.mark.slow
def test_no_piece_is_tried_three_times_and_none_loses_a_try(deeds: list) -> None:
    t = Table()
    t.put("00412", good=20, rework=14)
    for kind, pick, (good, spoiled, missing, rework) in deeds:
        before = t.batches()
        if not before:
            return
        one = sorted(before)[pick % len(before)]
        lay = t.waiting(one)
        if kind == "put":
            done = t.put(one, good=good, spoiled=spoiled, missing=missing, rework=rework)
            gone = good + spoiled + rework
            _only_the_failed_moved_on(t, before, one, rework, lay - gone, refused=done.refused)
        elif kind == "split":
            child = f"{t.count + 1:05d}"
            t.act("split_batch", one, part=SHUTTLE, quantity=max(1, good), area="trimming")
            assert t.batches().get(child, before[one]) == before[one]
        else:
            t.act("find_parts", one, part=SHUTTLE, quantity=max(1, missing))
            assert t.batches() == before


def _only_the_failed_moved_on(
    t: Table, before: dict[str, int], id: str, rework: int, stay: int, *, refused: bool
) -> None:
    """What was not said to fail keeps its tries; what failed has one more, at most two."""
    after = t.batches()
    assert max(after.values(), default=0) <= MOST_TRIES
    if refused:
        assert after == before
        return
    if stay:
        assert after[id] == before[id]
    more = {b: n for b, n in after.items() if before.get(b) != n}
    assert sum(t.waiting(b) for b in more) == rework
    assert set(more.values()) <= {before[id] + 1}
