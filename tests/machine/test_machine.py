"""A state machine over all rules: random work at one desk through every room.

At each step it scans one of the codes that could be scanned now, or enters a number. What
must always hold: no place below zero, every sheet's pieces accounted for, undo gives the very
state and the very hand from before, act by act, no held piece goes on, nothing counted is lost
by looking elsewhere, by a power cut or another badge, every screen with work in hand has a way on
or can be left, and the derived tables equal a rebuild. A tenth of the whole campaign runs with the
tests; ``python -m tests.machine`` runs 2,000 walks of 50 steps.
"""

import os
import shutil
import tempfile
from pathlib import Path
from random import Random

import pytest
from hypothesis import HealthCheck, Phase, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, rule, run_state_machine_as_test

from station.shop.areas import AREAS
from station.shop.cards import BUTTONS, ZONES, button
from station.shop.facts import (
    KINDS,
    Batch,
    Bed,
    Numbers,
    Order,
    Pack,
    Part,
    Reason,
    Revision,
    Slip,
    Spent,
)
from station.shop.moves import NO_PIECES
from station.shop.places import balances
from tests.first_offs import list_answers, list_passed_over
from tests.replay import PIN, Stage
from tests.simulate.errands import errand
from tests.touch import list_touches

pytestmark = pytest.mark.slow

NUMBERS = ("0", "1", "2", "5", "24", "96", "-1", "1000000000", "6.4")
WALKS = int(os.environ.get("MACHINE_WALKS", "200"))
STEPS = 50


def weather(kind, ledger, pick):
    """Something to scan now, chosen by the number `pick` among what makes sense."""
    found = list(ledger.facts(kind))
    return found[pick % len(found)] if found else None


class Shop(RuleBasedStateMachine):
    def __init__(self):
        super().__init__()
        self.folder = Path(tempfile.mkdtemp())
        self.stage = Stage(self.folder)
        self.minute = 0
        self.done = []  # acts that undo can take back: entry, state before, hand before
        self.send("@worker 02")

    def teardown(self):
        assert self.stage.ledger.check() == []
        self.stage.ledger.close()
        shutil.rmtree(self.folder)

    def send(self, text):
        self.minute += 1
        at = f"2026-11-25T{8 + self.minute // 60 % 12:02d}:{self.minute % 60:02d}:00"
        self.stage.clock.pin(at)
        before, hand = snapshot(self.stage.ledger), held(self.stage.desk.hand)
        given = self.stage.send(text)
        if given.entry and self.stage.ledger.view.past(given.entry).act.kind != "undo":
            self.done.append((given.entry, before, hand))
            assert not list_gone_on(before[0], given.moves), text
            assert not list_wrongly_started(before[0], given.moves), text
        return given

    @rule(
        area=st.sampled_from([area.id for area in AREAS if area.id != "office"]),
        router=st.sampled_from("125"),
    )
    def walk(self, area, router):
        self.send(f"@area {area}")
        if area == "loading":
            self.send(f"@router {router}")

    @rule(
        pick=st.integers(0, 50),
        router=st.sampled_from("125"),
        ends=st.sampled_from(["off", "off", "spoiled", "stopped", "cuts on"]),
        what=st.sampled_from("apb "),
    )
    def cut(self, pick, router, ends, what):
        """A sheet goes onto a bed, and comes off whole, spoiled, or stays there."""
        self.awake()
        view = self.stage.ledger.view
        bed = view.get(Bed, router)
        if not (bed and bed.batch) and not view.shelf(Batch, f"queue/{router}"):
            self.release(pick, router, 1 + pick % 3)
        self.send("@area loading")
        self.send(f"@router {router}")
        for batch in view.shelf(Batch, f"queue/{router}")[:1]:
            if not (bed and bed.batch):
                self.send(f"traveller {batch.id}")
        self.prepare(router)
        self.interrupt(what, pick)
        if ends == "spoiled":
            for line in ("button sheet_spoiled", f"reason 1{pick % 5 + 1}", "5"):
                self.send(line)
            self.interrupt(what, pick)
            self.send("button sheet_spoiled")
        elif ends == "stopped":
            self.send("button stop")
            self.send(f"reason 3{pick % 6 + 1}")
        elif ends == "off":
            self.off()

    def release(self, pick, router, sheets):
        """A batch of one of the five cut files waits in a router's queue."""
        self.send("@area office")
        for line in ("button put_down", "button next_kind", f"button row_{1 + pick % 5}",
                     "button release_batch", f"router {router}", str(sheets)):  # fmt: skip
            self.send(line)
        if self.stage.desk.question() in ("supervisor", "pin"):
            self.send("worker 07")
            self.send(PIN)

    def prepare(self, router):
        for line in (
            "button rehomed",
            "button told",
            "button day_done",
            *list_answers(self.stage.ledger.view, router),
            "lot 0931",
            "6.4",
            "button held_down",
            "button bit_good",
            "button file_right",
            "button zeroed",
            "button start",
        ):
            self.send(line)

    def off(self):
        self.send("button off_bed")
        if self.stage.desk.question() == "sure":
            self.send("button yes")

    @rule(name=st.sampled_from(sorted(set(BUTTONS) - {"area_office"})))
    def press(self, name):
        self.send(f"button {name}")

    @rule(
        pick=st.integers(0, 50),
        kind=st.sampled_from([Batch, Slip, Part, Reason, Order, Pack, "zone", "rack", "number"]),
    )
    def scan_anything(self, pick, kind):
        if kind == "number":
            self.send(NUMBERS[pick % len(NUMBERS)])
        elif kind == "rack":
            self.send(f"rack {('014', '021', '032')[pick % 3]}")
        elif kind == "zone":
            self.send(f"zone {sorted(ZONES)[pick % len(ZONES)]}")
        elif fact := weather(kind, self.stage.ledger, pick):
            names = {Batch: f"traveller {fact.id}", Slip: f"slip {fact.id.replace('-', ' ')}"}
            self.send(names.get(kind, f"{kind.kind} {fact.id}"))

    @rule(chance=st.integers(0, 10**6), pause=st.integers(1, 9), what=st.sampled_from("apb "))
    def run_errand(self, chance, pause, what):
        self.awake()
        for n, line in enumerate(errand(Random(chance), self.stage.ledger)):
            if n == pause:
                self.interrupt(what, chance)
            self.send(line)
            if self.stage.desk.question() == "sure":
                self.send("button yes")
            if self.stage.desk.question() == "reason":
                self.send(f"reason {('51', '05', '22')[chance % 3]}")

    def interrupt(self, what, chance):
        """Another area, a power cut or another badge, in the middle of the work."""
        areas = [area.id for area in AREAS if area.id != "office"]
        if what == "a":
            self.look_elsewhere(areas[chance % len(areas)])
        elif what == "p":
            before = held(self.stage.desk.hand), self.stage.desk.question()
            self.send("restart")
            assert (held(self.stage.desk.hand), self.stage.desk.question()) == before
        elif what == "b":
            self.take_over("03")

    @rule()
    def undo(self):
        self.awake()
        if self.stage.desk.question():  # of other work: a badge would answer that one
            self.send("button put_down")
        while self.done and self.stage.desk.last == self.done[-1][0]:
            given = self.send("button undo")
            for _ in range(3):  # where it was done, with nothing else in hand
                if not given.entry and (there := given.answer.said.values.get("area")):
                    self.send(f"@area {next(a.id for a in AREAS if str(a.title) == str(there))}")
                elif not given.entry and str(given.answer.said).startswith("What is in hand"):
                    self.send("button put_down")
                else:
                    break
                given = self.send("button undo")
            if self.stage.desk.question() in ("supervisor", "pin"):
                self.send("worker 07")
                given = self.send(PIN)
            if not given.entry:
                assert str(given.answer.said).startswith("That stays"), given.answer
                return
            _, before, hand = self.done.pop()
            assert snapshot(self.stage.ledger) == before
            assert held(self.stage.desk.hand) == hand

    def awake(self):
        """Somebody works here."""
        if not self.stage.desk.hand.worker:
            self.send("worker 02")

    def look_elsewhere(self, area):
        view, desk = self.stage.ledger.view, self.stage.desk
        hand = desk.hand
        if hand.aside.what or desk.question() or area == hand.area:
            return
        counted = hand.work.tell_counted(view)
        self.send(f"button area_{area}")
        self.send("restart")
        self.send(f"button area_{hand.area}")
        if counted:
            assert self.stage.desk.hand.subject == hand.subject
            assert str(self.stage.desk.hand.work.tell_counted(view)) == str(counted)

    def take_over(self, worker):
        view, desk = self.stage.ledger.view, self.stage.desk
        if desk.question():
            return
        hand, counted = desk.hand, str(desk.hand.work.tell_counted(view))
        said = self.send(f"worker {worker}").answer
        assert held(desk.hand) == held(hand)
        if counted:
            assert counted in str(said.do), "who comes is told what was counted"
        self.send("button sign_out")
        self.send("worker 02")
        assert str(self.stage.desk.hand.work.tell_counted(view)) == counted

    @rule()
    def find_a_way_on(self):
        self.awake()
        tried = []
        for code, texts in list_touches(self.stage.desk.face()):
            if code in ELSEWHERE:
                continue
            given = self.send(code)
            if given.answer.tone != "stop":
                return
            tried.append((texts, str(given.answer.said)))
        shown = self.stage.desk.hand
        left = shown.subject or shown.aside.what
        assert not left, (held(shown), tried)

    @rule()
    def leave_everything(self):
        self.awake()
        for _ in range(5):
            self.send("button put_down")
        desk = self.stage.desk
        assert not desk.question()
        assert desk.hand.is_free, held(desk.hand)
        assert not desk.hand.aside.what

    @invariant()
    def nothing_below_zero(self):
        below = [h for h in self.stage.ledger.balances() if h.qty < 0 and not balances(h.place)]
        assert below == []

    @invariant()
    def every_sheet_is_accounted_for(self):
        view = self.stage.ledger.view
        came = {}
        for held in self.stage.ledger.balances():
            if held.place == "cut" and held.part not in NO_PIECES:
                came[held.batch, held.part] = -held.qty
        for batch in self.stage.ledger.facts(Batch):
            if batch.parent:
                continue
            makes = view.get(Revision, f"{batch.cut_file}.{batch.revision}").makes()
            for part, count in makes.items():
                assert came.get((batch.id, part), 0) == count * batch.cut, batch.id

    @invariant()
    def no_first_off_is_passed_over(self):
        assert list_passed_over(self.stage.ledger.facts(Bed)) == []

    @invariant()
    def slips_and_pieces_agree(self):
        view = self.stage.ledger.view
        for slip in view.shelf(Slip, "popping", 100):
            assert view.stock(batch=slip.batch, place=f"popping/{slip.sheet}"), slip.id


# these look at something else; what the work in hand can do is what stands beside them
ELSEWHERE = {
    button(name)
    for name in BUTTONS
    if name.startswith("area_") or name in ("menu", "care", "sign_out", "lock", "undo")
}

# where pieces come by on their way, in this order
WAY = ("popping", "rework", "trimming", "rack", "packing", "pack", "cart", "shipped")


def list_gone_on(facts, moves):
    """Moves of held pieces onward, as the facts stood before; written apart from the rules."""
    rank = {name: n for n, name in enumerate(WAY)}
    wrong = []
    for m in moves:
        here, there = (s.place.partition("/")[0] for s in (m.frm, m.to))
        if there not in rank or rank.get(here, -1) >= rank[there] or there == "rework":
            continue
        number, held_back = m.frm.batch, False
        while batch := facts.get(f"batch/{number}"):
            held_back = held_back or bool(batch.holds or batch.doubts)
            held_back = held_back or m.frm.place in list_unmeasured(facts, number)
            number = batch.parent
        if held_back and here != "cut":
            wrong.append(m)
    return wrong


def list_unmeasured(facts, number):
    """Where pieces of a batch wait whose sheet is still to be compared."""
    beds = (f for f in facts.values() if isinstance(f, Bed))
    return [
        f"popping/{first.sheet}"
        for bed in beds
        for first in bed.firsts
        if first.state == "due" and first.batch == number
    ]


def list_wrongly_started(facts, moves):
    """Sheets that went onto a bed where, as it stood before, none may; apart from the rules."""
    wrong = []
    for m in (m for m in moves if m.to.place.startswith("bed/")):
        bed = facts[m.to.place]
        batch, lot = facts[f"batch/{bed.batch}"], facts[f"lot/{m.to.batch}"]
        ready = bed.state == "free" and not bed.sheet and not bed.rehome
        fits = lot.material == facts[f"revision/{batch.cut_file}.{batch.revision}"].material
        due = [f for f in bed.firsts if f.state == "due" and m.frm.place == "store"]
        bits = {bit for _, bit in bed.bits}
        bad = [
            f
            for f in bed.firsts
            if f.state == "wrong"
            and f.zero_since == bed.zero_since
            and bits & set(f.bits)
            and facts[f"revision/{f.file}"].material == lot.material
        ]
        held_back = batch.holds or batch.doubts
        if not ready or not fits or due or (bad and len(bits) == 1) or held_back:
            wrong.append(m)
    return wrong


def held(hand):
    """What a hand holds, whoever works and whenever."""
    return hand.area, hand.subject, hand.work, hand.aside


def snapshot(ledger):
    """Every fact and every balance other than zero; numbers that were taken stay taken."""
    facts = {
        f.key: f
        for kind in KINDS.values()
        if kind not in (Numbers, Spent)
        for f in ledger.facts(kind)
    }
    return facts, {(h.place, h.batch, h.part): h.qty for h in ledger.balances() if h.qty}


@pytest.mark.long
def test_the_shop_holds_whatever_is_scanned():
    run_state_machine_as_test(
        Shop,
        settings=settings(
            max_examples=WALKS,
            stateful_step_count=STEPS,
            deadline=None,
            suppress_health_check=list(HealthCheck),
            phases=[Phase.explicit, Phase.generate],
        ),
    )
