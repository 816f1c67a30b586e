"""Opening soundly, checking, rebuilding, backup and restore."""

from pathlib import Path

from station.ledger.store import Store
from station.ledger.view import Reader
from station.ledger.numbers import BLOCK
from station.shop.facts import Numbers


def open_sound(path: Path) -> Store:
    return Store(path)


def block_text(reader: Reader, kind: str) -> str:
    """The block that was just taken, as local text."""
    numbers = reader.fact(Numbers, f"numbers/{kind}")
    end = numbers.next if numbers else 1
    return f"{end - BLOCK},{end}"


def check(store: Store) -> list[str]:
    return []


def rebuild(store: Store) -> None: ...
def backup(store: Store, file: Path) -> None: ...
def restore(file: Path, path: Path) -> None: ...
