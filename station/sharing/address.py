"""Where the shop's database is: read from what a person types, never with a password in it."""

from dataclasses import dataclass
from ipaddress import ip_address
from urllib.parse import parse_qsl, unquote, urlsplit

from station.ledger.faults import Fault

PORT = 5432
DATABASE = "shop"
# An application may not name anything else: no files of passwords, no options to the server.
KNOWN = frozenset({"sslmode", "sslrootcert"})
FULL = "verify-full"
MODES = ("disable", "prefer", "require", "verify-ca", FULL)


class AddressWrong(Fault):
    """What was typed is no address of a shop's database."""


@dataclass(frozen=True)
class Address:
    """A database on a server. `user` is only given where an owner set it up."""

    host: str
    port: int = PORT
    database: str = DATABASE
    user: str = ""
    sslmode: str = ""
    sslrootcert: str = ""

    @property
    def local(self) -> bool:
        """Whether the server is this very PC: nothing goes over a wire."""
        if self.host in ("", "localhost"):
            return True
        try:
            return ip_address(self.host).is_loopback
        except ValueError:
            return False

    @property
    def behind(self) -> str:
        """What is typed behind the host's name; nothing where all is as usual."""
        port = f":{self.port}" if self.port != PORT else ""
        return port + (f"/{self.database}" if self.database != DATABASE else "")

    @property
    def options(self) -> dict[str, str]:
        """How to connect: encrypted wherever a wire is between, whatever the address says.

        A password is proved by SCRAM alone: no other request for one is answered, nor a server
        that asks for none. Over TLS, binding both together proves the server too, for whoever
        stands between has no verifier of the password; else its certificate is verified in full.
        """
        mode = self.sslmode or "prefer"
        if not self.local and mode in ("disable", "prefer"):
            mode = "require"
        binding = "prefer" if self.local or mode == FULL else "require"
        given = {
            "host": self.host or "localhost",
            "port": str(self.port),
            "dbname": self.database,
            "sslmode": mode,
            "channel_binding": binding,
            "require_auth": "scram-sha-256",
        }
        return given | ({"sslrootcert": self.sslrootcert} if self.sslrootcert else {})

    def __str__(self) -> str:
        at = f"[{self.host}]" if ":" in self.host else self.host
        return f"{at or 'localhost'}:{self.port}/{self.database}"


def read(text: str) -> Address:
    """An address: ``postgresql://user@host:port/database?sslmode=…``, or only its middle.

    Raises AddressWrong with a sentence; a password in it is refused, for it would stay in
    the list of processes and in the history of the command line.
    """
    typed = text.strip()
    parts = urlsplit(typed if "://" in typed else f"postgresql://{typed}")
    if parts.scheme not in ("postgresql", "postgres"):
        raise AddressWrong("An address begins with postgresql:// and names a host.")
    options = dict(parse_qsl(parts.query))
    if parts.password is not None or "password=" in typed.lower():
        raise AddressWrong("Leave the password out of the address: it is asked for.")
    _known(options)
    try:
        port = parts.port or PORT
    except ValueError:
        raise AddressWrong("The port in the address is no number.") from None
    return Address(
        host=parts.hostname or "",
        port=port,
        database=unquote(parts.path.strip("/")) or DATABASE,
        user=unquote(parts.username or ""),
        **options,
    )


def _known(options: dict[str, str]) -> None:
    if strange := options.keys() - KNOWN:
        raise AddressWrong(f"The address may not say {min(strange)}; only sslmode, sslrootcert.")
    if options.get("sslmode", MODES[0]) not in MODES:
        raise AddressWrong(f"sslmode is one of {', '.join(MODES)}.")
