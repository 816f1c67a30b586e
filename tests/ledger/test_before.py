"""A shop file that an older program wrote opens, shares and goes on. See `kept`."""

import json
import re

import pytest

from station import bootstrap
from station.desk.questions import PIN_AT_ONCE
from station.ledger.codec import read_body
from station.shop.acts import BADGE_FIRST
from station.shop.cards import button
from station.shop.codes import write
from station.shop.facts import Batch, Concern, RackPlace, Worker
from tests.answers import screen
from tests.ledger.kept import CLOCK, HERE, SITE, Kept, cases, opened
from tests.ledger.toy import tables_of
from tests.replay import PIN, said

HANDS = json.loads((HERE / "hands.json").read_text(encoding="utf-8"))
WAIT = [
    "settle_concern", "set_fact", "release_batch", "take_batch", "start_sheet", "pass_on",
    "put_on_rack", "undo", "claim_order", "recount_place", "pick", "correct_pick",
]  # fmt: skip


@pytest.fixture
def station(tmp_path):
    """Station 1 on its file of before; in the end all is sound, and as rebuilt."""
    made = opened(tmp_path / "1", (HERE / "shop.sql").read_text(encoding="utf-8"))
    yield made
    assert made.ledger.check() == []
    before = tables_of(made.ledger)
    made.ledger.rebuild()
    assert tables_of(made.ledger) == before
    made.ledger.close()


@pytest.fixture
def other(tmp_path, station):
    """A new station of the same shop, which copies the entries of before."""
    made = Kept(tmp_path / "3", "3", station.link.shop)
    made.ledger.share_with(SITE)
    made.share()
    made.clock.pin(station.clock())
    yield made
    assert made.ledger.check() == []
    made.ledger.close()


def pending(station):
    rows = station.ledger._store.run("SELECT body FROM pending ORDER BY seq")
    return [read_body(text).act.kind for (text,) in rows]


def test_the_file_is_read_whole(station):
    entries = list(station.ledger.entries())
    assert len(entries) == 100
    assert all(str(entry.said) for entry in entries)
    assert {e.kind for e in entries} - station.ledger.rules.keys() == {"undo", "take_numbers"}
    assert pending(station) == WAIT
    assert sum(not c.settled for c in station.ledger.facts(Concern)) == 7


def test_it_was_derived_as_it_is_derived_today(station):
    """Before anything is recorded by today's program; the fixture rebuilds."""
    assert station.ledger.check() == []


def test_what_waits_is_shared(station, other):
    assert station.share() == []
    assert station.ledger.not_shared() == 0
    other.share()
    assert [e.id for e in other.ledger.entries()] == [e.id for e in station.ledger.entries()]
    assert tables_of(other.ledger) == tables_of(station.ledger)
    assert other.ledger.view.get(RackPlace, "061").name == "Comb place"


def meanwhile(other, *lines):
    """Another does this first, and has shared it."""
    other.desk.sign_in("06")
    for line in lines:
        given = other.send(line)
        assert given.answer.tone != "stop" or given.answer.asks, (line, said(given))
    other.share()


def test_what_waits_is_decided_again_by_the_rules_of_today(station, other):
    """A lot, a part and a batch that it rests on are other ones now, and all of it still holds."""
    meanwhile(
        other,
        *("@area office", "lot 0931", "button receive", "5", "worker 07", PIN, "button put_down"),
        *("part 051", "button next_field", "'Frame side", "button save", "button put_down"),
        *("@area trimming", "traveller 00013", "button on_rack"),
    )
    offer = station.ledger.offer()
    written = other.link.shop.written_since(offer.head.number)
    assert {"lot/0931", "part/051"} <= written & set(offer.reads)
    assert station.share() == []
    other.share()
    assert tables_of(other.ledger) == tables_of(station.ledger)


def test_what_does_not_hold_any_more_needs_a_look(station, other):
    """Another passed on, put on the rack and took the order before."""
    meanwhile(
        other,
        *("@area popping", "traveller 00001", "button some", "5", "button pass_on"),
        *("@area trimming", "traveller 00001", "button some_trimmed", "4", "button on_rack"),
        *("@area packing", "order 3308"),
    )
    lost = [t.id for t in station.share()]
    entries = {e.id: e for e in station.ledger.entries()}
    holds = {*WAIT[: WAIT.index("pass_on")], "recount_place"}
    assert [entries[id_].kind for id_ in lost] == [kind for kind in WAIT if kind not in holds]
    for id_ in lost:
        assert station.ledger.verdict(id_) == "look"
        assert station.ledger.view.get(Concern, id_).station == "1"
    other.share()
    assert tables_of(other.ledger) == tables_of(station.ledger)


# cards that screens did not have before
NEW = (
    "more reasons", f"[{button('next_page')}]", "Spoiled", f"[{button('spoiled_piece')}]",
    "All like it: 2", f"[{button('all_alike')}]", "Search", f"[{button('search')}]",
    "Shop's health", f"[{button('health')}]",
    "Bit sizes", f"[{button('list_bit_size')}]", "On its way", f"[{button('list_purchase')}]",
    "Two packs", f"[{button('part_pack')}]",
    "to be said", "may stay empty",  # in a form
    "Nothing of it is wrong so far",  # where the line of faults comes to stand
    "Own pushes", f"[{button('list_push')}]", "Postage", f"[{button('list_postage')}]",
)  # fmt: skip
# what trimming says of sizes stands in rows to touch by now
SIZES = ("Against the master: one in 20", "A along", "299.7 to 300.3 mm", button("row_1"))
# what was taken of a text is kept otherwise by now: of one that was read then it is not told
TAKEN = (
    "Enter 4 to 8 digits that nobody guesses.",  # the same once more
    "Taken as", "Origin: lower left corner of the sheet.", "Z is zero at the face.",
    "A cut may go 0.5 mm into the spoilboard.", "Bit 1: 6 mm.",
    "Back up", f"[{button('backup')}]",  # stands with the shop's health by now
)  # fmt: skip
LATER = f"[{button('lost')}]"  # the code of a card that trimming has on the next page by now
# words that are others by now
OTHER = {
    "Put down; ": "Left; ",
    "there now, mark is ": "there now, minimum ",
    "All of it is in": "All parts are in",
    "\u2009": "\u202f",  # between thousands: no line is broken there
    "1 line, 12 parts": "12 × SIDE, 12 parts",
    "to recount:": "to counted again:",
    "Hold the batch, tell the supervisor.": (
        "Measure it once more. Till then put aside too: rack A 03: 50 and popping, sheet 2: 30."
    ),
    "The same parts, places, time and bits.": "The same parts, places, tabs, time and bits.",
    "> good | Order 3308 is changed | Touch the next row, or work on.": (
        "> attention | Order 3308 is begun or gone: it stays as it is"
        " | What is wanted stands under Needs a look."
    ),
    # questions have a tone of their own by now
    "> attention | Supervisor 07 |": "> ask | Supervisor 07 |",
    "> stop | 5.8 mm read, limits are 6.0 to 6.9 | Scan the reason": (
        "> ask | 5.8 mm read, limits are 6.0 to 6.9 | Scan the reason"
    ),
    "> stop | Why is it settled so?": "> ask | Why is it settled so?",
    "goes at ": "goes ",
    "Press “Start the sheet”": "Press “Start sheet 3”",  # as its key reads
    "720 g ± 36": "720 ± 105 g",  # a lot's own weight is not known before packs were weighed
    "there, -23 by the book": "there, 23 fewer than by the book",
    "there, -13 by the book": "there, 13 fewer than by the book",
    # the office stays in its list, and answers about a count as the floor does by now
    "Left; nothing was counted | Scan the next piece of work.": (
        "Orders | Touch a row, or add a new one."
    ),
    "Corrected from 7 to 9 | Reason: book was wrong.": (
        "Corrected: 9 there, 2 more than by the book | Touch the next row, or work on."
    ),
}

FIRST_OFF = "It is a first-off"
AGAIN = "Look again"  # among the CSV files by now
PIN_FOR = "Enter your PIN"  # and what it is for
BLIND = "scale may miss one of"  # and the parts of which one that lacks may not

# a line that says more by now
WHOLE = {
    "goes": "why cut",
    "Put down": "Leave it",
    "Put it down": "Leave it",
    "all of it": "read all",
    "Put all of it back": "Put all back",
    "0 packs": "0 packs, last left 08:30",
    "Missing": "Part missing",
    "Next": "Next field",
    "Material new": "Material new, page 1 of 2",
    "The new PIN": "The same PIN once more",  # kept where it was entered once
    "A file tells by its first line which list it is. All of it is taken in, or nothing.": (
        "A file tells by its first line which list it is, or you say so. What it changes is "
        "shown before it counts."
    ),
}


OTHERS = "Or another supervisor"
# a refusal leaves no question open by now
NOTHING_OPEN = {
    ("cart: off the cart", "button put_down"): (
        "> good | Left; nothing was counted | Scan the next piece of work."
    ),
}


def by_now(words: str) -> str:
    """What a screen of before says, in the words of today."""
    words = WHOLE.get(words, words)
    for was, now in OTHER.items():
        words = words.replace(was, now)
    return re.sub(r"(\d\d)\.11\.(?:(\d{4}))?", _name_month, words)


def _name_month(found):
    """The days of these shops are all in November."""
    return " ".join(filter(None, (found[1].lstrip("0"), "Nov", found[2])))


def without_purpose(words):
    """What a screen says but for what a PIN is for and who else may enter one: it tells by now."""
    words = words[: words.index(OTHERS)] if OTHERS in words else words
    if PIN_FOR not in words:
        return words
    at = words.index(PIN_FOR) + 1
    return [*words[:at], *words[at + 1 :]]


def without_caution(words):
    """What a screen says but for its caution, which stands there in other words by now."""
    cautions = [n for n, w in enumerate(words) if w.startswith("Take care")]
    gone = {*cautions, *(n + 1 for n in cautions)}
    return [w for n, w in enumerate(words) if n not in gone and w != f"[{button('care')}]"]


# a reason that popping shows on the next page by now
ON_NEXT_PAGE = ("damaged in handling", f"[{write('reason', '05')}]")


def settle_doubts(station):
    """What differs keeps its batch back by now, until it is right twice in a row."""
    batch = station.ledger.view.get(Batch, station.desk.hand.subject)
    for doubt in batch.doubts:
        eye = ("button master_agrees", "@at 2026-11-25T23:58:00", "button master_agrees")
        right = ("touch A along", "200.0", "200.1") if doubt.size else eye
        for line in right:
            station.send(line)


def ask_for_pin(station, expected):
    """Asks a supervisor who is signed in for the PIN alone by now."""
    worker = station.ledger.view.get(Worker, station.desk.hand.worker)
    if worker and worker.supervisor:
        return expected.replace(str(BADGE_FIRST), str(PIN_AT_ONCE))
    return expected


def answered(station, given, expected):
    """What is said once what today's rules ask back is answered."""
    answers = {"sure": ("button yes",), "reason": ("reason 51",), "supervisor": ("worker 07", PIN)}
    while given.answer.asks and said(given) != expected:
        for line in answers[given.answer.asks]:
            given = station.send(line)
    return said(given)


@pytest.mark.parametrize("name", HANDS)
def test_the_work_in_hand_is_resumed(station, name):
    kept = HANDS[name]
    station.ledger.keep(kept["draft"])
    station.desk = station.at(kept["area"], kept["router"], kept["bench"])
    assert station.desk.resumed
    bootstrap.set_up_shop(station.ledger, CLOCK)  # reasons say by now what follows from them
    shown = screen(station.desk.face())
    before = [by_now(words) for words in kept["screen"]]
    if LATER in before:
        del before[before.index(LATER) - 1 : before.index(LATER) + 1]
    if kept["area"] == "trimming":
        assert set(SIZES[:2]) & set(shown) == set(SIZES[:2]) & set(before)
        shown, before = ([w for w in words if w not in SIZES] for words in (shown, before))
    if before[0] == "Handover":  # it tells more by now: of open packs, and what is on each bed
        same = before.index("Print")
        assert any("on it" in words for words in shown[same:])
        before, shown = before[:same], shown[:same]
    if kept["area"] == "packing":  # products stand above their parts by now
        shown = [w for w in shown if not re.search(r"× SIDE: | whole$", w)]
        if BLIND in shown:  # and what the scale may not notice under its weight
            del shown[shown.index(BLIND) : shown.index(BLIND) + 2]
    if FIRST_OFF in shown and FIRST_OFF not in before:  # it is told before the sheet by now
        del shown[shown.index(FIRST_OFF) : shown.index(FIRST_OFF) + 2]
    if AGAIN in shown and AGAIN not in before:  # its code is that of a card of the office's
        del shown[shown.index(AGAIN) : shown.index(AGAIN) + 2]
    shown = without_purpose(shown)
    shown = [words for words in without_caution(shown) if words not in (*NEW, *ON_NEXT_PAGE)]
    gone = (*ON_NEXT_PAGE, *TAKEN, "●")  # the chosen list bears no dot by now
    assert shown == [words for words in without_caution(before) if words not in gone]
    for line, answer in kept["next"]:
        if line == "button on_rack":
            settle_doubts(station)
        expected = ask_for_pin(station, NOTHING_OPEN.get((name, line)) or by_now(answer))
        assert answered(station, station.send(line), expected) == expected


def test_the_file_itself_holds_work_in_hand(station):
    desk = station.at("packing", bench="4")
    assert (desk.resumed, desk.hand.subject, desk.hand.worker) == (True, "3308", "05")


def test_every_case_is_kept():
    assert list(HANDS) == [c.name for c in cases((HERE / "hands.txt").read_text("utf-8"))]
