"""Questions about the shop itself: its settings, its people, its reasons."""

from station.shop.facts import Reason, Shop, Worker
from station.shop.views import View

MOST = 500  # people, and reasons of one use


def find_shop(view: View) -> Shop:
    """Finds the shop's settings; the defaults where it is not set up yet."""
    return view.get(Shop, "shop") or Shop(id="shop")


def list_reasons(view: View, use: str) -> tuple[Reason, ...]:
    """Lists the reasons of one use, by number; one that is shelved wrongly is none of them."""
    return tuple(reason for reason in view.shelf(Reason, use, MOST) if reason.use == use)


def find_reason(view: View, number: str, use: str) -> Reason | None:
    """Finds a reason by its number; None where it is not there, or of another use."""
    found = view.get(Reason, number)
    return found if found and found.use == use else None


def list_workers(view: View) -> tuple[Worker, ...]:
    """Lists who works here now, by number."""
    return tuple(w for w in view.shelf(Worker, "all", MOST) if w.active)


def find_worker(view: View, number: str) -> Worker | None:
    """Finds who works here now by number; None: nobody, or not any more."""
    worker = view.get(Worker, number)
    return worker if worker and worker.active else None


def find_supervisor(view: View, number: str) -> Worker | None:
    """Finds a supervisor who works here now."""
    worker = find_worker(view, number)
    return worker if worker and worker.supervisor else None


def list_supervisors(view: View) -> tuple[Worker, ...]:
    """Lists the supervisors who work here now, by number."""
    return tuple(w for w in list_workers(view) if w.supervisor)


def has_pin(view: View) -> bool:
    """Says whether anybody who works here can give a PIN."""
    return any(w.pin for w in list_workers(view))
