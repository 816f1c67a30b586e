"""What a station that shares knows of its shop's database: all but the password."""

import json
from dataclasses import asdict, dataclass
from pathlib import Path
from secrets import token_urlsafe
from typing import TYPE_CHECKING

from station.ledger.renaming import replace_file
from station.sharing.address import Address

if TYPE_CHECKING:
    from station.sharing.link import PostgresLink

FILE = "shop.json"


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
        new = folder / f"{FILE}.new"
        new.write_text(json.dumps(asdict(self), indent=1), encoding="utf-8")
        replace_file(new, folder / FILE)

    def link(self, folder: Path) -> "PostgresLink":
        """The way to the shop's database; the password is read when it is first needed."""
        from station.sharing import secret  # noqa: PLC0415 - the driver loads off the way
        from station.sharing.link import PostgresLink  # noqa: PLC0415 - to the first window

        return PostgresLink(self.address, self.role, lambda: secret.read(folder, self.account))


def of(folder: Path) -> Membership | None:
    """The membership kept in a data folder; None on a PC that shares with nobody."""
    file = folder / FILE
    if not file.exists():
        return None
    kept = json.loads(file.read_text(encoding="utf-8"))
    return Membership(**{**kept, "address": Address(**kept["address"])})


def new_password() -> str:
    """A password that no person ever sees."""
    return token_urlsafe(32)
