"""Setting a supervisor's PIN from the command line, where a first shop has none yet."""

import getpass

from station.bootstrap import new_id
from station.desk.pin import agrees, hashed
from station.ledger.ledger import Ledger
from station.shop.acts import Act
from station.shop.facts import Worker


def ask_and_set_pin(ledger: Ledger, worker: str, at: str) -> str:
    """Asks for the PIN twice, without showing it, and sets it; gives what to say."""
    known = ledger.view.get(Worker, worker)
    if known is None:
        return f"There is no worker {worker}."
    if any(w.pin and w.active for w in ledger.facts(Worker)):
        return "This shop has a supervisor's PIN: others are set in the office."
    first, second = getpass.getpass("New PIN: "), getpass.getpass("Again: ")
    if first != second:
        return "The two are not the same: nothing was changed."
    try:
        return set_pin(ledger, worker, first, at)
    except ValueError as wrong:
        return str(wrong)


def set_pin(ledger: Ledger, worker: str, pin: str, at: str) -> str:
    """Sets a PIN; gives what to say. Raises ValueError for a PIN that is none."""
    act = Act(
        id=new_id(),
        kind="set_pin",
        at=at,
        worker=worker,
        station=ledger.station,
        subject=f"worker/{worker}",
        args={"hash": hashed(pin)},
    )
    return str(ledger.record(act).answer.said)


def supervisor(ledger: Ledger, worker: str) -> bool:
    """Whether this worker is a supervisor and gives the PIN, asked for without showing it."""
    known = ledger.view.get(Worker, worker)
    if known is None or not known.supervisor:
        return False
    return agrees(known.pin, getpass.getpass(f"PIN of supervisor {worker}: "))
