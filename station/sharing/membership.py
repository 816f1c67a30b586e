"""What a station that shares knows of its shop's database: all but the password."""

import json
import logging
import os
from contextlib import suppress
from dataclasses import asdict, dataclass
from pathlib import Path
from secrets import token_urlsafe
from typing import TYPE_CHECKING

from station.ledger.faults import NoMembership
from station.ledger.renaming import replace_file
from station.sharing.address import Address

if TYPE_CHECKING:
    from station.sharing.link import PostgresLink

FILE = "shop.json"
COPY = f"{FILE}.copy"  # the same once more: damaged, it would cost the whole station
log = logging.getLogger(__name__)


@dataclass(frozen=True)
class Membership:
    """Which shop, which station, where, and by which role."""

    site: str
    station: str
    role: str
    address: Address

    @property
    def account(self) -> str:
        """The name under which the password is kept."""
        return f"{self.role}@{self.address}"

    def keep(self, folder: Path) -> None:
        """Writes it down: from now on this PC is a station of that shop."""
        for name in (COPY, FILE):
            self.write(folder / name)

    def write(self, file: Path) -> None:
        """Writes the file anew; what stood there stays until the disk has all of it."""
        new = file.with_name(f"{file.name}.new")
        with new.open("w", encoding="utf-8") as out:
            json.dump(asdict(self), out, indent=1)
            out.flush()
            os.fsync(out.fileno())
        replace_file(new, file)

    def link(self, folder: Path) -> "PostgresLink":
        """The way to the shop's database; the password is read when it is first needed."""
        from station.sharing import secret  # noqa: PLC0415 - the driver loads off the way
        from station.sharing.link import PostgresLink  # noqa: PLC0415 - to the first window

        return PostgresLink(self.address, self.role, lambda: secret.read(folder, self.account))


def of(folder: Path) -> Membership | None:
    """The membership kept in a data folder; None on a PC that shares with nobody.

    A damaged file is written anew from its copy. Raises NoMembership where that is damaged too.
    """
    file, copy = folder / FILE, folder / COPY
    if not file.exists() and not copy.exists():
        return None
    kept, again = _read(file), _read(copy)
    if (found := kept or again) is None:
        raise NoMembership(file)
    for one, known in ((file, kept), (copy, again)):
        if known is None:
            log.warning("%s is written anew", one.name)
            with suppress(OSError):
                found.write(one)
    return found


def _read(file: Path) -> Membership | None:
    """Reads a membership; None where none can be read."""
    try:
        kept = json.loads(file.read_text(encoding="utf-8"))
        found = Membership(**{**kept, "address": Address(**kept["address"])})
    except (OSError, ValueError, TypeError, KeyError):
        return None
    return found if isinstance(found.site, str) and isinstance(found.station, str) else None


def new_password() -> str:
    """A password that no person ever sees."""
    return token_urlsafe(32)
