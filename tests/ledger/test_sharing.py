import sqlite3
from collections import Counter
from contextlib import suppress
from dataclasses import replace
from time import monotonic

import pytest

from station.ledger import absorb, rebase
from station.ledger.faults import Fault
from station.ledger.ledger import Ledger
from station.ledger.shop_link import SharedRow
from station.ledger.statements import DERIVED
from station.ledger.supply import NoNumbers
from station.ledger.talk import News, exchange
from station.sharing import loop as loop_of_station
from station.sharing.loop import Loop
from station.shop.acts import good
from station.shop.facts import Batch, Concern, Numbers
from station.shop.moves import Held
from station.shop.words import say
from tests.ledger.stations import Station, same
from tests.ledger.toy import AT, EVERY, ToyArgs, act, new_batch, tables_of, toy_rule
from tests.simulate.shop import MemoryShop


@pytest.fixture
def shop():
    return MemoryShop()


@pytest.fixture
def two(tmp_path, shop):
    made = [Station(tmp_path / n, n, shop) for n in "12"]
    for station in (*made, *made):
        station.share()
    yield made
    for station in made:
        assert station.ledger.check() == []


def settled(*stations):
    for station in (*stations, *stations, *stations):
        assert station.share() == "shared"
    assert same(*stations)
    assert all(s.ledger.not_shared() == 0 for s in stations)


def test_an_act_counts_at_once_and_is_shared(two):
    a, b = two
    a.ledger.record(act("x"))
    assert a.ledger.not_shared() == 1
    assert a.ledger.view.get(Batch, "00412").cut == 1
    assert a.ledger.view.past("x").act.id == "x"
    assert a.ledger.view.last("batch/00412").act.id == "x"
    assert [e.id for e in a.ledger.entries(subject="batch/00412")] == ["x"]
    assert len(a.ledger.flow("2026", "2027")) == 1
    assert a.ledger.verdict("x") == "asking"
    assert a.ledger.record(act("x")).entry == "x"
    settled(a, b)
    assert a.ledger.verdict("x") == "holds"
    assert b.ledger.view.stock(batch="00412") == (Held("popping/1", "00412", "014", 6),)
    assert b.ledger.view.past("x").act == act("x")


def test_acts_on_other_things_are_not_decided_again(two, shop):
    a, b = two
    a.link.cut = True
    a.ledger.record(act("x", batch="00412"))
    b.ledger.record(act("y", batch="00413"))
    b.share()
    (before,) = (entry for entry in a.ledger._store.run("SELECT body FROM pending").fetchone())
    a.link.cut = False
    a.share()
    assert [e.id for e in shop.entries if e.id in "xy"] == ["y", "x"]
    assert before == next(e.body for e in shop.entries if e.id == "x")
    settled(a, b)


def test_two_at_once_both_count_where_both_hold(two):
    a, b = two
    for station in two:
        station.link.cut = True
    a.ledger.record(act("x"))
    b.ledger.record(act("y"))
    for station in two:
        station.link.cut = False
    settled(a, b)
    assert a.ledger.view.get(Batch, "00412").cut == 2
    assert a.ledger.view.stock(batch="00412")[0].qty == 12


def together(a, b, first, second):
    """Two acts done while neither station knows of the other's."""
    for station in (a, b):
        station.link.cut = True
    assert a.ledger.record(first).entry
    assert b.ledger.record(second).entry
    for station in (a, b):
        station.link.cut = False
    a.share()
    b.share()


def test_what_holds_no_longer_needs_a_look(two):
    a, b = two
    a.ledger.record(act("x"))
    settled(a, b)
    together(a, b, act("p1", "pop"), act("p2", "pop"))
    assert a.ledger.verdict("p1") == "holds"
    assert b.ledger.verdict("p2") == "look"
    (lost,) = b.turned
    assert (lost.id, str(lost.answer.said)) == ("p2", "Nothing waits")
    settled(a, b)
    (concern,) = a.ledger.facts(Concern)
    assert (concern.id, concern.what, concern.station, concern.worker) == (
        "p2", "no-longer", "1", "03"
    )  # fmt: skip
    assert (str(concern.first), str(concern.now)) == ("Passed on", "Nothing waits")
    assert a.ledger.view.stock(batch="00412") == (Held("trimming", "00412", "014", 6),)
    assert not a.ledger.view.past("p2").moves
    refused = b.ledger.undo("p2", act("u", "undo"))
    assert refused.entry is None
    assert "not counted" in str(refused.answer.said)


@pytest.fixture
def parted(two, monkeypatch):
    """A page of sixty entries waits, to be taken in by twenties; the thirtieth passes p1 on."""
    a, b = two
    monkeypatch.setattr(absorb, "AT_ONCE", 20)
    a.ledger.record(act("x"))
    settled(a, b)
    b.link.cut = True
    for n in range(60):
        a.ledger.record(act("p1", "pop") if n == 30 else act(f"a{n}", batch=f"{n % 7:05d}"))
    assert a.share() == "shared"
    for mine in (act("p2", "pop"), act("b1", batch="00003"), act("b2", batch="00077")):
        b.ledger.record(mine)
    b.link.cut = False
    return a, b


def test_a_page_is_taken_in_by_parts(parted):
    a, b = parted
    news = exchange(b.link, b.ledger.offer())
    assert len(news.entries) == 60
    assert [t.id for t in b.ledger.take_news(news)] == ["p2"]
    assert [b.ledger.verdict(id_) for id_ in ("p1", "p2", "b1")] == ["holds", "look", "asking"]
    settled(a, b)
    assert b.ledger.view.get(Batch, "00003").cut == 10


def test_a_page_that_stops_in_a_later_part_is_not_taken_in_at_all(parted, monkeypatch):
    a, b = parted
    before, parts = tables_of(b.ledger), []
    keep = absorb._keep

    def stopping(*given):
        keep(*given)
        parts.append(given)
        if len(parts) == 5:  # two of each part: what came back as pending, and the rest
            raise sqlite3.OperationalError("disk I/O error")

    monkeypatch.setattr(absorb, "_keep", stopping)
    news = exchange(b.link, b.ledger.offer())
    with pytest.raises(Fault):
        b.ledger.take_news(news)
    assert tables_of(b.ledger) == before
    monkeypatch.undo()
    settled(a, b)


def test_what_is_lost_is_not_decided_again(two, shop):
    a, b = two
    a.ledger.record(act("x"))
    settled(a, b)
    for station in two:
        station.link.cut = True
    a.ledger.record(act("p1", "pop"))
    b.ledger.record(act("p2", "pop"))
    a.link.cut = b.link.cut = False
    a.share()
    assert [t.id for t in b.ledger.take_news(exchange(b.link, b.ledger.offer()))] == ["p2"]
    b.ledger.record(act("mine"))  # makes way for what comes, and with it what was lost
    b.link.cut = True
    a.ledger.record(act("more"))
    a.share()
    b.link.cut = False
    settled(a, b)
    assert b.ledger.verdict("p2") == "look"
    assert a.ledger.view.get(Concern, "p2").meant[0].qty == 6
    assert b.ledger.view.stock(batch="00412", place="popping/1")[0].qty == 12


def test_other_pieces_than_were_moved_are_no_longer_the_same_act(two):
    a, b = two
    a.ledger.record(act("x"))
    settled(a, b)
    together(a, b, act("y"), act("p", "pop"))  # 6 were passed on, 12 would be now
    assert b.ledger.verdict("p") == "look"
    settled(a, b)


def test_an_undo_that_lost(two):
    a, b = two
    a.ledger.record(act("x"))
    settled(a, b)
    for station in two:
        station.link.cut = True
    a.ledger.record(act("p", "pop"))
    assert b.ledger.undo("x", act("u", "undo")).entry
    a.link.cut = b.link.cut = False
    a.share()
    settled(a, b)
    assert b.ledger.verdict("u") == "look"
    assert not a.ledger.view.past("x").undone


def test_both_take_the_same_act_back(two):
    a, b = two
    a.ledger.record(act("x"))
    settled(a, b)
    for station in two:
        station.link.cut = True
        assert station.ledger.undo("x", act(f"u{station.number}", "undo")).entry
    a.link.cut = b.link.cut = False
    settled(a, b)
    assert [s.ledger.verdict(f"u{s.number}") for s in two] == ["holds", "look"]
    assert a.ledger.view.stock(batch="00412") == ()


def test_an_undo_taken_back_and_decided_again_leaves_no_count_of_nothing(two):
    a, b = two
    a.ledger.record(act("x"))
    settled(a, b)
    a.ledger.undo("x", act("u", "undo"))
    a.ledger.undo("u", act("v", "undo"))
    b.ledger.record(act("y"))
    b.share()
    settled(a, b)  # the tables are as rebuilt: the fixture looks


def test_the_reply_to_a_push_is_lost(two, shop):
    a, b = two
    a.ledger.record(act("x"))
    a.link.deaf = True
    assert a.share() == "away"
    a.ledger.record(act("y"))
    a.link.deaf = False
    settled(a, b)
    assert [e.id for e in shop.entries].count("x") == 1


def test_away_is_told_with_count_and_since(two):
    a, _ = two
    a.link.cut = True
    a.ledger.record(act("x", at="2026-11-25T10:00:00"))
    a.ledger.record(act("y", at="2026-11-25T10:05:00"))
    assert a.share() == "away"
    assert (a.ledger.not_shared(), a.ledger.oldest_not_shared()) == (2, "2026-11-25T10:00:00")


def test_a_station_that_dies_keeps_what_waits(two):
    a, b = two
    a.link.cut = True
    a.ledger.record(act("x"))
    a.crash()
    assert a.ledger.not_shared() == 1
    assert a.ledger.check() == []
    a.link.cut = False
    settled(a, b)


def test_the_database_is_put_back_to_an_older_day(two, shop, caplog):
    a, b = two
    for n in range(5):
        a.ledger.record(act(f"x{n}", batch=f"0000{n}"))
        settled(a, b)
    shop.put_back(len(shop.entries) - 3)
    b.ledger.record(act("later"))
    assert (a.share(), b.share()) == ("differs", "differs")
    assert b.ledger.record(act("later2")).entry
    shop.epoch += 1
    settled(a, b)
    ids = [e.id for e in shop.entries]
    assert len(set(ids)) == len(ids)
    assert {"x0", "x1", "x2", "x3", "x4", "later", "later2"} <= set(ids)
    told = [line for line in caplog.messages if "put back" in line]
    assert told
    assert not any("Mark(" in line for line in told)


def test_the_database_went_on_after_it_was_put_back(two, shop):
    a, b = two
    for n in range(5):
        a.ledger.record(act(f"x{n}", batch=f"0000{n}"))
        a.share()
    shop.put_back(len(shop.entries) - 3)
    b.share()
    for n in range(6):
        b.ledger.record(act(f"y{n}", batch=f"0000{n}"))
    b.share()
    assert a.share() == "differs"
    shop.epoch += 1
    settled(a, b)
    assert {f"x{n}" for n in range(5)} < {e.id for e in shop.entries}
    assert a.ledger.view.get(Batch, "00004").cut == 2


def test_another_shop_is_refused(two):
    a, _ = two
    a.ledger.record(act("x"))
    a.link.shop = MemoryShop(site="other")
    assert a.share() == "another"
    assert a.link.shop.entries == []


def test_an_old_program_keeps_what_it_has(two, shop):
    a, _ = two
    shop.format = 2
    a.ledger.record(act("x"))
    assert a.share() == "too old"
    assert a.ledger.not_shared() == 1


def number_of(station):
    """A batch number, once more word has come from the shop, or has not."""
    station.share()
    return station.ledger.take_number("batch")


def test_numbers_come_from_blocks_that_are_shared(two):
    a, b = two
    taken = {"1": [], "2": []}
    for station in two:
        station.link.cut = True
        for _ in range(5):
            taken[station.number].append(station.ledger.take_number("batch"))
            assert station.share() == "away"
    assert not set(taken["1"]) & set(taken["2"])
    for station in two:
        with pytest.raises(NoNumbers, match="No batch numbers are left"):
            taken[station.number] += iter(lambda: number_of(station), "")  # noqa: B023
        station.link.cut = False
    settled(a, b)
    for station in two:
        taken[station.number] += [station.ledger.take_number("batch") for _ in range(3)]
    assert len({*taken["1"], *taken["2"]}) == len(taken["1"]) + len(taken["2"])
    assert a.ledger.view.get(Numbers, "batch").next > 60


def test_an_old_copy_of_a_station_gives_its_numbers_up(two, tmp_path):
    a, b = two
    a.ledger.close()
    old = a.path.read_bytes()
    a.open()
    taken = [a.ledger.take_number("pack") for _ in range(5)]
    a.ledger.record(act("x"))
    a.share()
    a.ledger.close()
    a.path.write_bytes(old)
    a.open()
    a.share()
    again = [a.ledger.take_number("pack") for _ in range(5)]
    assert not set(taken) & set(again)
    settled(a, b)


def test_only_acts_that_news_touch_are_decided_again(two, monkeypatch):
    """A station that was cut off for long held each scan up, once for every page."""
    a, b = two
    for n in range(5):
        a.ledger.record(act(f"first{n}", batch=f"{n:05d}"))
    settled(a, b)
    a.link.cut = True
    for n in range(100):
        a.ledger.record(act(f"x{n}", batch=f"{n % 5:05d}"))
    b.ledger.record(act("news", batch="00003"))
    b.share()
    a.link.cut = False
    again, decide = [], absorb.decide_again

    def count(history, rules, acts):
        again.append(len(acts))
        return decide(history, rules, acts)

    monkeypatch.setattr(absorb, "decide_again", count)
    settled(a, b)
    assert max(again) == 20  # those of that batch
    assert same(a, b)


def test_two_pcs_from_one_folder_do_not_both_go_on(two, shop, tmp_path):
    """The first number was printed twice, and nobody was told."""
    a, b = two
    a.ledger.record(act("x"))
    settled(a, b)
    a.ledger.close()
    copy = tmp_path / "copy"
    copy.mkdir()
    (copy / a.path.name).write_bytes(a.path.read_bytes())
    a.open()
    second = Station(copy, a.number, shop)
    settled(a, b)
    assert second.share() == "shared"
    a.ledger.record(act("of the first"))
    settled(a, b)
    assert (a.ledger.has_twin, second.ledger.has_twin) == (False, False)
    second.share()
    assert second.ledger.has_twin
    assert not a.ledger.has_twin
    second.crash()
    assert second.ledger.has_twin  # until it has a number of its own
    second.number = "7"
    second.crash()
    assert not second.ledger.has_twin
    second.number = a.number  # the first PC is broken: this one is to take its place
    second.crash()
    assert not second.ledger.has_twin


def test_an_older_file_alone_is_no_second_pc(two, tmp_path):
    a, b = two
    settled(a, b)
    a.ledger.close()
    old = a.path.read_bytes()
    a.open()
    a.ledger.record(act("x"))
    settled(a, b)
    a.ledger.close()
    a.path.write_bytes(old)
    a.open()
    settled(a, b)
    a.ledger.record(act("y"))
    settled(a, b)
    assert not a.ledger.has_twin
    assert a.ledger.older_at == AT  # that is told: nobody can tell it from what follows


def test_copies_of_a_folder_that_are_used_in_turn_are_told(two, tmp_path):
    """Each took the other's work in at its start without a word."""
    a, b = two
    settled(a, b)
    first, second = a.path, tmp_path / "stick" / a.path.name
    second.parent.mkdir()
    a.ledger.close()
    second.write_bytes(first.read_bytes())
    told = []
    for turn, folder in enumerate((first, second, first)):
        a.path = folder
        a.open()
        settled(a, b)
        told.append(a.ledger.older_at)
        a.ledger.record(act(f"turn {turn}", at=f"2026-11-25T1{turn}:00:00"))
        settled(a, b)
        a.ledger.close()
    a.open()
    assert told == ["", "2026-11-25T10:00:00", "2026-11-25T11:00:00"]
    assert not a.ledger.has_twin


def test_a_pc_that_takes_a_number_over_is_no_older_one(two, shop, tmp_path):
    """Its number's work of before is new to it, as all is."""
    a, b = two
    a.ledger.record(act("x"))
    settled(a, b)
    (tmp_path / "new").mkdir()
    new = Station(tmp_path / "new", a.number, shop)
    settled(new, b)
    assert (new.ledger.older_at, new.ledger.has_twin) == ("", False)


def numbers_of(station):
    """All numbers that are left."""
    found = []
    with suppress(NoNumbers):
        found.extend(iter(lambda: station.ledger.take_number("pack"), ""))
    return found


def test_a_database_put_back_gives_no_numbers_out_twice(two, shop):
    """It forgot that a block was given out, and gives the same one to another station."""
    a, b = two
    spent = numbers_of(a)
    a.ledger.record(act("x"))
    before = len(shop.entries)
    a.share()
    shop.put_back(before)
    shop.epoch += 1
    spent += numbers_of(b)
    settled(b, a)
    left = [*numbers_of(a), *numbers_of(b)]
    assert len(left) > 20
    assert max(Counter([*spent, *left]).values()) == 1


def test_a_number_on_a_paper_that_was_not_counted_stays_spent(two):
    """After an older day was put back it lies in the block that another station was given."""
    a, b = two
    a.ledger.record(act("x"))
    settled(a, b)
    number = copy_of(b).take_number("pack")
    lost = replace(act("p2", "pop"), args=ToyArgs(batch="00412", numbers={"pack": number}))
    together(b, a, act("p1", "pop"), lost)
    settled(a, b)
    assert a.ledger.verdict("p2") == "look"
    assert b.ledger.take_number("pack") == str(int(number) + 1).zfill(len(number))


def test_a_number_of_an_act_that_was_taken_back_stays_spent(two):
    a, b = two
    number = copy_of(b).take_number("pack")
    args = ToyArgs(batch="1", qty=6, numbers={"pack": number})
    a.ledger.record(replace(act("x"), args=args))
    a.ledger.undo("x", act("u", "undo"))
    settled(a, b)
    assert b.ledger.take_number("pack") == str(int(number) + 1).zfill(len(number))


def copy_of(station):
    """Another program with the same file, of which nothing is kept."""
    copy = station.path.with_name("copy.station")
    station.ledger.backup(copy)
    return Ledger(copy, station.rules)


def test_numbers_are_given_up_before_what_shows_why_is_taken_in(two, tmp_path, monkeypatch):
    """The program dies in between: the next life would not notice any more."""
    a, _ = two
    a.ledger.close()
    old = a.path.read_bytes()
    a.open()
    taken = [a.ledger.take_number("pack") for _ in range(5)]
    a.ledger.record(act("x"))
    a.share()
    a.ledger.close()
    a.path.write_bytes(old)
    a.open()
    monkeypatch.setattr(a.ledger, "_write_local", dies_once(a.ledger._write_local))
    with pytest.raises(ZeroDivisionError):
        a.share()
    a.crash()
    a.share()
    assert not set(taken) & {a.ledger.take_number("pack") for _ in range(5)}


def dies_once(run):
    """Stops at the first call, as by a power cut."""
    calls = []

    def dies(changed):
        calls.append(1)
        if len(calls) == 1:
            raise ZeroDivisionError
        return run(changed)

    return dies


def news_under_many(two, others):
    """Sixty acts of station 1 wait, on ten batches, and what station 2 did meanwhile comes."""
    a, b = two
    a.link.cut = True
    for n in range(60):
        a.ledger.record(act(f"mine{n}", batch=f"{n % 10:05d}"))
    for other in others:
        b.ledger.record(other)
    b.share()
    a.link.cut = False
    return list(exchange(a.link, a.ledger.offer()).entries)


@pytest.fixture
def decided(monkeypatch):
    """How many acts were decided again, by how often entries were taken in under them."""
    counts, decide = [], absorb.decide_again

    def counted(history, rules, acts):
        counts.append(len(acts))
        return decide(history, rules, acts)

    monkeypatch.setattr(absorb, "decide_again", counted)
    return counts


def taken_by_steps(a, between=lambda steps: None):
    """A loop takes all in that the shop has; gives how many entries each page took in."""
    loop, pages, steps = Loop(a.ledger, lambda: a.link), [], 0
    end, number = monotonic() + 30, a.ledger._history.number
    while a.ledger.is_taking_in or a.ledger.not_shared() or loop.state != "shared":
        loop.step()
        if a.ledger._history.number > number:
            pages.append(a.ledger._history.number - number)
            number += pages[-1]
        steps += 1
        between(steps)
        assert monotonic() < end
    loop.close()
    return pages


def test_what_waits_here_is_decided_again_a_few_times_however_much_comes(two, decided):
    """Each of two hundred entries touches all sixty acts."""
    a, b = two
    b.rules["all"] = toy_rule(EVERY, touch_all)
    news_under_many(two, [replace(act(f"all{n}", "all"), station="2") for n in range(200)])
    taken_by_steps(a)
    assert sum(decided) <= 3 * 60
    settled(a, b)


def test_less_is_taken_in_at_once_where_scans_put_it_off(two, decided, monkeypatch):
    """Each time all sixty acts are decided again, and a scan comes in between."""
    a, b = two
    monkeypatch.setattr(loop_of_station, "STEP", 0.0)  # an act a step
    monkeypatch.setattr(loop_of_station, "LONG_STEP", 0.0)
    b.rules["all"] = toy_rule(EVERY, touch_all)
    news_under_many(two, [replace(act(f"all{n}", "all"), station="2") for n in range(300)])

    def scan(steps):
        if steps % 150 == 0 and steps < 1200:
            made = act(f"scan{steps}", batch=f"{90000 + steps}")
            assert a.ledger.record(made).entry == made.id

    pages = taken_by_steps(a, scan)
    assert min(pages) < loop_of_station.SLICE < max(pages)
    settled(a, b)


def touch_all(_act, view):
    """A sheet more of each of the ten batches."""
    batches = [view.get(Batch, f"{n:05d}") or new_batch(f"{n:05d}") for n in range(10)]
    return good(say("All"), sets=tuple(replace(b, cut=b.cut + 1) for b in batches))


@pytest.fixture
def under_all(two):
    """Sixty acts of station 1 wait, and one entry comes that touches all of them."""
    two[1].rules["all"] = toy_rule(EVERY, touch_all)
    other = replace(act("all", "all"), station="2")
    return News("shared", tuple(news_under_many(two, [other])))


def take_some(a, news, acts):
    """Takes news in as far as so many acts, undone or decided again; it is not all in then."""
    for _ in range(acts):
        assert a.ledger.take_news_until(news, 0.0) is None
    assert a.ledger.is_taking_in


def test_news_half_taken_in_go_on_act_by_act(two, under_all):
    a, b = two
    steps = 0
    while a.ledger.take_news_until(under_all, 0.0) is None:
        steps += 1
    assert steps > 2 * 60  # each act is undone, and decided again
    assert not a.ledger.is_taking_in
    assert a.ledger.view.past("all")
    settled(a, b)


def test_what_waits_is_held_against_news_some_acts_at_a_time(two, under_all, monkeypatch):
    """Of thousands it takes long: a scan may come in between, and finds all as it was."""
    a, b = two
    monkeypatch.setattr(absorb, "MOST_AT_ONCE", 10)
    asked, read = [], rebase.Waiting.reads.fget
    reads = property(lambda waits: asked.append(waits.id) or read(waits))
    monkeypatch.setattr(rebase.Waiting, "reads", reads)
    most, steps = 0, 0
    while a.ledger.take_news_until(under_all, 0.0) is None:
        most, steps = max(most, len(asked)), steps + 1
        asked.clear()
        if steps == 3:
            assert a.ledger.record(act("scan", batch="90000")).entry == "scan"
    assert 0 < most <= 10
    settled(a, b)


@pytest.mark.parametrize("acts", [1, 3, 30, 64, 90, 120])
def test_a_scan_finds_all_as_it_was_while_news_is_half_taken_in(two, under_all, acts):
    a, b = two
    before, count = tables_of(a.ledger), a.ledger.not_shared()
    take_some(a, under_all, acts)
    cut = a.ledger.view.get(Batch, "00003").cut
    assert a.ledger.view.past("all") is None
    assert not a.ledger.is_taking_in  # it was put off by who asked for that
    assert tables_of(a.ledger) == before
    take_some(a, under_all, acts)
    assert a.ledger.record(act("scan", batch="00003")).entry == "scan"
    assert a.ledger.view.get(Batch, "00003").cut == cut + 1
    assert a.ledger.not_shared() == count + 1
    take_some(a, under_all, acts)
    a.ledger.take_news(under_all)
    assert a.ledger.view.get(Batch, "00003").cut == cut + 2
    assert a.ledger.view.past("all")
    settled(a, b)


@pytest.mark.parametrize("acts", [3, 90])
def test_a_power_cut_while_news_is_half_taken_in_loses_nothing(two, under_all, acts):
    a, b = two
    before = tables_of(a.ledger)
    take_some(a, under_all, acts)
    a.crash()
    assert tables_of(a.ledger) == before
    settled(a, b)


@pytest.mark.parametrize("acts", [3, 90])
def test_a_backup_while_news_is_half_taken_in_is_whole(two, under_all, tmp_path, acts):
    a, b = two
    before = tables_of(a.ledger)
    take_some(a, under_all, acts)
    copy = copy_of(a)
    assert tables_of(copy) == before
    assert copy.check() == []
    copy.close()
    settled(a, b)


def test_scans_without_a_pause_put_news_off_a_hundred_times_and_no_longer(
    two, under_all, monkeypatch
):
    a, b = two
    monkeypatch.setattr(loop_of_station, "STEP", 0.0)  # an act a step
    monkeypatch.setattr(loop_of_station, "LONG_STEP", 0.0)
    loop, steps = Loop(a.ledger, lambda: a.link), 0
    end = monotonic() + 20
    while a.ledger.view.past("all") is None:
        loop.step()
        steps += a.ledger.is_taking_in
        assert monotonic() < end
    loop.close()
    assert steps == loop_of_station.MOST_BEGUN
    settled(a, b)


def test_another_page_than_the_one_half_taken_in_is_taken_in_from_its_begin(two, under_all):
    a, b = two
    take_some(a, under_all, 90)
    b.ledger.record(act("later", batch="00001"))
    b.share()
    a.ledger.take_news(exchange(a.link, a.ledger.offer()))
    settled(a, b)


BAD = {
    "rubbish": "{",
    "no object": "7",
    "another id": '{"act":{"id":"zz","kind":"k","at":"2026-11-25T10:00:00"},"tone":"good"}',
    "no time": '{"act":{"id":"bad","kind":"k","at":"soon"},"tone":"good"}',
    "deep": "[" * 100_000,
    "too many": '{"act":{"id":"bad","kind":"k","at":"2026-11-25T10:00:00"},"tone":"good",'
    '"moves":[["014",99,["popping/1","00412"],["trimming","00412"]]]}',
    "a huge number": '{"act":{"id":"bad","kind":"k","at":"2026-11-25T10:00:00"},"tone":"good",'
    '"moves":[["014",9223372036854775807,["cut","00412"],["trimming","00412"]]]}',
    "no fact": '{"act":{"id":"bad","kind":"k","at":"2026-11-25T10:00:00"},"tone":"good",'
    '"sets":[["batch/00412",null,[{"id":5},null,""]]]}',
    "another state before": '{"act":{"id":"bad","kind":"k","at":"2026-11-25T10:00:00"},'
    '"tone":"good","sets":[["worker/09",[{"id":"09"},null,"","x"],[{"id":"09"},null,""]]]}',
    "a strange shelf": '{"act":{"id":"bad","kind":"k","at":"2026-11-25T10:00:00"},"tone":"good",'
    '"sets":[["worker/09",null,[{"id":"09"},"batch/queue/1",""]]]}',
    "a reading of nothing": '{"act":{"id":"bad","kind":"k","at":"2026-11-25T10:00:00"},'
    '"tone":"good","readings":[{"subject":"","kind":"size/A","value":1}]}',
    "a reading that is none": '{"act":{"id":"bad","kind":"k","at":"2026-11-25T10:00:00"},'
    '"tone":"good","readings":[{"subject":"part/1","kind":"size/A","value":1e30}]}',
    "a reading without a value": '{"act":{"id":"bad","kind":"k","at":"2026-11-25T10:00:00"},'
    '"tone":"good","readings":[{"subject":"part/1","kind":"size/A","value":null}]}',
    "words without values": '{"act":{"id":"bad","kind":"k","at":"2026-11-25T10:00:00"},'
    '"tone":"good","said":["{x}",{}]}',
}


@pytest.mark.parametrize("name", BAD)
def test_a_malformed_entry_needs_a_look_and_stops_nobody(name, two, shop):
    a, b = two
    a.ledger.record(act("x"))
    settled(a, b)
    a.link.cut = True
    a.ledger.record(act("mine"))
    shop.add(SharedRow("bad", "", (), BAD[name]))
    b.ledger.record(act("y"))
    a.link.cut = False
    settled(a, b)
    (concern,) = a.ledger.facts(Concern)
    assert (concern.id, concern.what) == ("bad", "left-out")
    assert a.ledger.view.past("bad") is None
    every = [f"SELECT * FROM {table} ORDER BY 1, 2, 3" for table in DERIVED]
    before = [a.ledger._store.run(statement).fetchall() for statement in every]
    a.ledger.rebuild()
    assert before == [a.ledger._store.run(statement).fetchall() for statement in every]
