"""Every kind of Needs a look arises at the desk, and every choice under it is settled.

The kinds and choices are read from the program's text: a new one without a story fails here.
Those that sharing brings are raised and settled in `test_conflicts.py`, on two stations.
"""

import ast
from pathlib import Path

import pytest

import station
from station.ledger.books import Books
from station.ledger.bridge import MendHistory, bridge
from station.shop import conflicts
from station.shop.acts import Act
from station.shop.facts import Batch, Concern
from tests.floor.test_conflicts import RAISED
from tests.replay import PIN

LOOSEN = "let it go on"
ASKED = ("worker 07", PIN)
RELEASED = ("@worker 07", "@area office", "button put_down", "button next_kind", "touch SG010-SET",
            "button release_batch", "router 1", "2", *ASKED, "@worker 02", "@area loading",
            "@router R1", "traveller 00001", "lot 0931")  # fmt: skip
CHECKED = ("button held_down", "button bit_good", "button file_right", "button zeroed")
PACKING = ("@worker 05", "@area packing")
TRIMMING = ("@worker 04", "@area trimming", "traveller 00900")
STORIES = {  # by the function that raises it: what is done, and its choices
    "anywhere.hold_batch": ((*TRIMMING, "button hold"), (LOOSEN, "keep it")),
    "anywhere.recount_parts": (
        (*TRIMMING, "button recount", "150", "button yes", "reason 51"),
        ("looked at",),
    ),
    "loading._ask_for_look": (
        ("@worker 02", "@area loading", "@router R1", "button new_bit", "6.35"),
        ("approve it", "take it out"),
    ),
    "loading._turn_wrong": (
        (*RELEASED, "6.4", *CHECKED, "button start", "@at 2026-11-25T07:20:00", "button off_bed",
         "button first_off_bad"),
        (LOOSEN, "keep it"),
    ),
    "loading.hold_uncompared": (
        (*RELEASED, "6.4", *CHECKED, "button start", "@at 2026-11-25T07:20:00", "button off_bed",
         "button bit_broken"),
        (LOOSEN, "keep it"),
    ),
    "loading._hold_ran_on": (
        (*RELEASED, "6.4", *CHECKED, "button start", "button stop", "reason 34", "button bit_out",
         "button rehomed", "button bed_clear", "button held_down", "button nobody_near",
         "button stop_over", "@at 2026-11-25T07:20:00", "button off_bed"),
        (LOOSEN, "keep it"),
    ),
    "loading._look_at_lot": (
        ("@worker 07", "@area office", "lot 0931", "button correct", "0", "button yes", *ASKED[1:],
         "reason 54", *RELEASED[1:], "6.4", *CHECKED, "button start"),
        ("looked at",),
    ),
    "loading._mark_lot": (
        (*RELEASED, "5.8", *CHECKED, "button start", *ASKED, "reason 41"),
        ("keep the lot", "send it back"),
    ),
    "office.cancel_order": (
        (*PACKING, "order 3306", "part 062", "@worker 07", "@area office", "touch 3306",
         "button cancel_it", *ASKED),
        ("put back", "send it"),
    ),
    "office._make_wish": (
        (*PACKING, "order 3307", "@worker 07", "@area office", "touch 3307", "touch due",
         "2026-11-26 14:00", "button save", *ASKED),
        ("told the customer", "entered as a new order", "left as it is"),
    ),
    "office._look_at_count": (
        ("@worker 07", "@area office", "lot 0931", "button correct", "55", "button yes",
         "reason 54"),
        ("looked at",),
    ),
    "packing._doubt_weight": (
        (*PACKING, "order 3307", "part 045", "button scale", "9999", "button close_pack",
         "button yes"),
        ("looked at",),
    ),
    "packing._look_at_owed": (
        (*PACKING, "order 3307", "button part_missing", "4", "button yes", "reason 51",
         "@area today",
         "button show_concerns", "touch part 045", "button settle", *ASKED, "reason 51",
         "@area packing", "order 3307", "button part_missing", "4", "button send_short", *ASKED),
        ("looked at",),
    ),
    "packing.ask_for_sheet": (
        (*PACKING, "order 3307", "button part_missing", "4", "button yes", "reason 51",
         "@area today",
         "button show_concerns", "touch part 045", "button settle", *ASKED, "reason 51",
         "@area packing", "order 3307", "button part_missing", "4", "button ask_sheet"),
        ("looked at",),
    ),
    "queries.ask_owed": (
        ("@worker 04", "@area trimming", "traveller 00901", "button on_rack", *PACKING,
         "order 3309", "part 051", "button close_pack", "@area cart", "cart 1", "pack 00001",
         "button at_door", "pack 00001", "button leave", *PACKING, "button returned",
         "pack 00001", "30", "reason 73"),
        ("send others", "nothing is owed"),
    ),
    "queries.raise_unmade": (
        (*RELEASED, "6.4", *CHECKED, "button start", "@at 2026-11-25T07:10:00",
         "button sheet_spoiled", "reason 12", "70", "button sheet_spoiled"),
        ("cut it again", "drop it"),
    ),
    "shared.recount_place": (
        (*PACKING, "order 3307", "button part_missing", "4", "button yes", "reason 51"),
        ("looked at",),
    ),
    "trimming._pass_doubt": (
        (*TRIMMING, "button split", "60", *TRIMMING, "touch A along", "100.9", "100.1", "100"),
        (LOOSEN, "keep it"),
    ),
    "trimming._raise_doubt": ((*TRIMMING, "button master_differs"), (LOOSEN, "keep it")),
}  # fmt: skip


def raised_in_the_program():
    """Where `Concern(…)` stands: room and function, with the choices written there."""
    found = {}
    for file in sorted(Path(station.__path__[0]).rglob("*.py")):
        for function in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if not isinstance(function, ast.FunctionDef):
                continue
            for call in ast.walk(function):
                if isinstance(call, ast.Call) and getattr(call.func, "id", "") == "Concern":
                    given = {k.arg: k.value for k in call.keywords}
                    choices = given.get("choices")
                    found[f"{file.parent.name}.{function.name}"] = (
                        ast.literal_eval(choices)
                        if isinstance(choices, ast.Tuple)
                        else ("looked at",)
                        if choices is None
                        else None
                    )
    return found


@pytest.mark.slow
def test_every_kind_and_choice_has_its_story():
    found = raised_in_the_program()
    assert found.pop("shop._concern") is None  # what sharing brings
    # by a command, settled in `tests/commands/test_pin.py`
    assert found.pop("office._tell_forgotten") == ("it was forgotten", "nobody here did it")
    assert found.pop("shop.missing_work") == ("looked at",)  # what a damage costs, below
    assert found == {name: choices for name, (_, choices) in STORIES.items()}
    assert {what for what, _, _ in RAISED.values()} == set(conflicts.SHARED)
    assert {c for _, choices, _ in RAISED.values() for c in choices} == {
        conflicts.LEAVE,
        conflicts.BOOK,
        conflicts.RENEW,
    }


def balances(stage):
    return sorted(h for h in stage.ledger.balances() if h.qty)


@pytest.mark.parametrize(
    ("story", "how"), [(name, how) for name, (_, choices) in STORIES.items() for how in choices]
)
def test_it_arises_and_is_settled(story, how, stage):
    lines, choices = STORIES[story]
    for line in lines:
        stage.send(line)
    view = stage.ledger.view
    (concern,) = view.shelf(Concern, "open")
    assert concern.choices == choices
    batch = view.get(Batch, concern.about.removeprefix("batch/"))
    before, entries = balances(stage), stage.ledger.count()
    for line in ("@area today", "button show_concerns", f"touch {concern.text}"):
        stage.send(line)
    stage.send(f"touch {how}" if len(choices) > 1 else "button settle")
    for line in (*ASKED, "reason 51"):
        given = stage.send(line)
    assert given.answer.tone == "good"
    assert view.shelf(Concern, "open") == ()
    settled = view.get(Concern, concern.id)
    assert (settled.settled, settled.by, settled.reason) == (how, "07", "counted again")
    assert (balances(stage), stage.ledger.count()) == (before, entries + 1)
    if batch is not None and story != "anywhere.recount_parts":
        holds = () if how == LOOSEN else batch.holds
        assert view.get(Batch, batch.id).holds == holds


def test_work_that_is_missing_is_looked_at(stage):
    args = MendHistory(since="2026-11-25T07:00:00", until="2026-11-25T07:20:00", lost=3)
    act = Act(id="gap", kind=args.kind, at=args.until, station="1", args=args)
    stage.ledger._history.append(bridge(act, Books(), ()), (), {})
    view = stage.ledger.view
    (concern,) = view.shelf(Concern, "open")
    for line in ("@worker 07", "@area today", "button show_concerns", f"touch {concern.text}"):
        stage.send(line)
    for line in ("button settle", *ASKED, "reason 51"):
        given = stage.send(line)
    assert given.answer.tone == "good"
    assert view.shelf(Concern, "open") == ()
    assert stage.ledger.check() == []
