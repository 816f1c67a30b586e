"""A supervisor's PIN on the screen: the first one of a shop, a changed one, a refused one."""

import pytest

from station import bootstrap
from station.bootstrap import Where
from station.clock import Clock
from station.commands.text_station import take_line
from station.desk.pin import agrees
from station.floor.office.acts import SetFact
from station.floor.office.lists import list_facts
from station.ledger.ledger import Ledger
from station.shop.acts import Act
from station.shop.cards import button
from station.shop.codes import write
from station.shop.facts import Worker
from tests.replay import PIN

AT = "2026-11-25T07:00:00"


class FirstMorning:
    """A shop that was only just founded, at its office."""

    def __init__(self, folder):
        self.clock = Clock(AT)
        self.ledger = Ledger(folder / bootstrap.FILE, bootstrap.load_rules(), station="1")
        bootstrap.set_up_shop(self.ledger, AT)
        self.desk = bootstrap.make_desk(self.ledger, Where(area="office"), self.clock)

    def send(self, *lines):
        for line in lines:
            kind, _, name = line.partition(" ")
            code = button(name) if kind == "button" else write(kind, name) if name else line
            given = take_line(self.desk, self.clock, code)
        return given.answer.tone, str(given.answer.said)


@pytest.fixture
def morning(tmp_path):
    made = FirstMorning(tmp_path)
    yield made
    assert made.ledger.check() == []
    made.ledger.close()


def saving(morning):
    """Up to the supervisor's badge for a first fact: a new one of the first list."""
    morning.send("worker 01", "button list_worker", "button new", "no")
    return morning.send("button save")


@pytest.mark.slow
def test_the_first_supervisor_chooses_a_pin(morning):
    assert saving(morning)[0] == "ask"
    assert morning.send("worker 01") == ("ask", "A new PIN for worker 01")
    assert morning.send("13") == ("stop", "A PIN has 4 to 8 digits")
    assert morning.send("135790") == ("ask", "Once more")
    assert morning.send("135791") == ("stop", "The two are not the same")
    morning.send("135790")
    assert morning.send("135790")[0] == "good"
    assert morning.desk.question() == ""
    assert agrees(morning.ledger.view.get(Worker, "01").pin, "135790")


def test_a_supervisor_types_the_number_in_place_of_the_badge(morning):
    saving(morning)
    assert morning.send("7391") == ("stop", "No worker has that number")
    assert morning.desk.secret, "it may be the PIN: the strip does not show it"
    assert morning.desk.question() == "supervisor"
    assert morning.send("01") == ("ask", "A new PIN for worker 01")


@pytest.mark.parametrize("easy", ["1234", "87654321", "0000", "777777"])
def test_a_pin_that_anybody_guesses_is_refused(morning, easy):
    saving(morning)
    morning.send("worker 01")
    assert morning.send(easy) == ("stop", "Anybody guesses that PIN")
    assert morning.send("135790") == ("ask", "Once more")


@pytest.mark.parametrize("cut", [False, True])
@pytest.mark.slow
def test_what_asked_for_the_first_pin_goes_on(morning, cut):
    """The worker's own form is saved without a second Save, through a power cut, too."""
    before = set(list_facts(Worker, morning.ledger.view))
    saving(morning)
    morning.send("worker 01", "135790")
    if cut:
        morning.desk = bootstrap.make_desk(morning.ledger, Where(area="office"), morning.clock)
    assert morning.send("135790")[0] == "good"
    assert agrees(morning.ledger.view.get(Worker, "01").pin, "135790")
    made = set(list_facts(Worker, morning.ledger.view)) - before
    assert [w.supervisor for w in made if w.id != "01"] == [False]


def test_digits_of_a_new_pin_are_not_shown(morning):
    saving(morning)
    morning.send("worker 01")
    assert morning.send("digit 7") == ("ask", "Number: •")


def test_nobody_else_sets_a_first_pin_once_there_is_one(stage):
    """A second supervisor without a PIN needs the first one's."""
    for line in ("@worker 07", "@area office", "button next_kind", "touch ST200-SET"):
        stage.send(line)
    for line in ("button release_batch", "router 2", "4"):
        stage.send(line)
    stage.ledger.record(second_supervisor(stage))
    assert stage.send("worker 08").answer.asks == "supervisor"
    assert stage.ledger.view.get(Worker, "08").pin == ""
    stage.send("worker 07")
    assert str(stage.send(PIN).answer.said) == "A new PIN for worker 08"


def second_supervisor(stage):
    value = {"id": "08", "supervisor": True}
    return Act(
        id=stage.new_id(),
        kind=SetFact.kind,
        at=stage.clock(),
        worker="07",
        station="1",
        subject="worker/08",
        args=SetFact(of="worker", value=value, approved="07"),
    )


def test_a_wrong_pin_leaves_what_it_is_for_on_the_screen_and_no_point_to_touch(stage):
    for line in ("@worker 07", "@area office", "button next_kind", "touch ST200-SET"):
        stage.send(line)
    for line in ("button release_batch", "router 2", "4"):
        asked = str(stage.send(line).answer.said)
    stage.send("worker 07")
    before = stage.desk.face()
    what, pad = before.main
    assert (str(what.title), str(what.note)) == ("Enter your PIN", asked)
    assert pad.whole
    assert str(stage.send("1111").answer.said) == "That PIN is not right"
    assert stage.desk.face().main[0] == what


def ask_release(stage, worker):
    """Up to what is asked of a supervisor before a batch is released, by this worker."""
    for line in (f"@worker {worker}", "@area office", "button next_kind", "touch ST200-SET",
                 "button release_batch", "router 2"):  # fmt: skip
        stage.send(line)
    return stage.send("4").answer


def test_a_supervisor_who_is_signed_in_is_asked_for_the_pin_alone(stage):
    asked = ask_release(stage, "07")
    assert str(asked.do) == "Enter your PIN; or another supervisor: scan your badge."
    assert stage.desk.question() == "pin"
    assert stage.send(PIN).entry


def test_another_supervisor_answers_in_place_of_the_one_who_is_signed_in(stage):
    stage.ledger.record(second_supervisor(stage))
    ask_release(stage, "07")
    assert stage.send("touch 08").answer.asks == "supervisor", "who has no PIN yet"
    stage.send("worker 07")
    assert stage.send(PIN).answer.asks == "new_pin"


def test_a_worker_who_is_signed_in_is_asked_which_supervisor(stage):
    ask_release(stage, "03")
    assert stage.desk.question() == "supervisor"
