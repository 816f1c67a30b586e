"""``python -m tests.middle``: somebody stands between a PC and the shop's server.

It has a certificate of its own, or none, and asks for a password in every way that the protocol
knows, or for none at all (PostgreSQL, "Message Formats"). It is met by who founds a shop with the
owner's password, who joins with a card's code and a station with its own password; by every way
of giving an address. Nothing secret may come to it in clear, nor as MD5, nor any statement; and
what is told calls it by its name.
"""

import contextlib
import socket
import ssl
import struct
import subprocess
import sys
import tempfile
import threading
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import product
from pathlib import Path

from station.bootstrap import FILE
from station.ledger.faults import Fault
from station.ledger.ledger import Ledger
from station.sharing import secret
from station.sharing.address import MODES, read
from station.sharing.founding import share
from station.sharing.joining import join
from station.sharing.link import PostgresLink
from station.sharing.roles import SIGNS_OF_CODE
from tests.ledger.toy import RULES, act
from tests.measured import note

OWNER, CARD, STATION = "owners-own-word", "K7M2P9QX4TWB3H6N"[:SIGNS_OF_CODE], "of-station-two"
SECRETS = (OWNER, CARD, STATION)
ASKS = ("clear", "md5", "scram", "scram plus", "nothing")
LOCAL = ("localhost", "127.0.0.1")
ASK_TLS = 80877103  # the number of a request for encryption
CONDITIONS = [f"?sslmode={mode}" for mode in MODES]
SALT = b"c2FsdHNhbHRzYWx0c2FsdA=="


@dataclass
class Middle:
    """The one in between: how it asks, whether it encrypts, and what came to it."""

    certificate: Path
    asks: str = "clear"
    encrypts: bool = True
    came: bytearray = field(default_factory=bytearray)
    answers: int = 0  # to a request for a password in clear or as MD5
    statements: int = 0

    @contextlib.contextmanager
    def listening(self) -> Iterator[int]:
        """Listens on every address of this machine; gives the port."""
        with socket.create_server(("", 0)) as server:
            threading.Thread(target=self._serve, args=(server,), daemon=True).start()
            yield server.getsockname()[1]

    def _serve(self, server: socket.socket) -> None:
        while True:
            try:
                client, _ = server.accept()
            except OSError:
                return
            client.settimeout(3)
            with contextlib.suppress(OSError, struct.error, ValueError):
                self._meet(client)
            client.close()

    def _meet(self, client: socket.socket) -> None:
        """Goes through one talk, as far as the other side goes along."""
        head = self._take(client, 8)
        if struct.unpack(">II", head)[1] == ASK_TLS:
            client.sendall(b"S" if self.encrypts else b"N")
            if self.encrypts:
                context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
                context.load_cert_chain(self.certificate)
                client = context.wrap_socket(client, server_side=True)
            head = self._take(client, 8)
        self._take(client, struct.unpack(">II", head)[0] - 8)
        self._ask(client)

    def _ask(self, client: socket.socket) -> None:
        if self.asks == "clear":
            _say(client, b"R", struct.pack(">I", 3))
        elif self.asks == "md5":
            _say(client, b"R", struct.pack(">I", 5) + b"salt")
        elif self.asks.startswith("scram"):
            names = b"SCRAM-SHA-256-PLUS\0" if self.asks == "scram plus" else b""
            _say(client, b"R", struct.pack(">I", 10) + names + b"SCRAM-SHA-256\0\0")
            first = self._message(client)[1]
            nonce = first.rpartition(b"r=")[2]
            server_first = b"r=" + nonce + b"middle,s=" + SALT + b",i=4096"
            _say(client, b"R", struct.pack(">I", 11) + server_first)
            self._message(client)
        if self.asks in ("clear", "md5"):
            self.answers += self._message(client)[0] == b"p"
        _say(client, b"R", struct.pack(">I", 0))
        for name, value in ((b"server_version", b"16.0"), (b"client_encoding", b"UTF8")):
            _say(client, b"S", name + b"\0" + value + b"\0")
        _say(client, b"Z", b"I")
        while True:
            kind, _ = self._message(client)
            self.statements += kind in (b"Q", b"P")

    def _message(self, client: socket.socket) -> tuple[bytes, bytes]:
        head = self._take(client, 5)
        return head[:1], self._take(client, struct.unpack(">I", head[1:])[0] - 4)

    def _take(self, client: socket.socket, size: int) -> bytes:
        taken = bytearray()
        while len(taken) < size:
            more = client.recv(size - len(taken))
            if not more:
                raise OSError("gone")
            taken += more
        self.came += taken
        return bytes(taken)


def _say(client: socket.socket, kind: bytes, content: bytes) -> None:
    client.sendall(kind + struct.pack(">I", len(content) + 4) + content)


def make_certificate(folder: Path) -> Path:
    """Makes the certificate of who stands in between, for any name."""
    key, file = folder / "key.pem", folder / "middle.pem"
    made = ["openssl", "req", "-x509", "-newkey", "rsa:2048", "-nodes", "-days", "2",
            "-subj", "/CN=shop-server", "-keyout", str(key), "-out", str(file)]  # fmt: skip
    subprocess.run(made, check=True, capture_output=True)
    file.write_text(file.read_text() + key.read_text())
    return file


def list_hosts() -> list[str]:
    """Lists the ways to name this machine: over no wire, by its address, by its name."""
    hosts = [*LOCAL]
    with contextlib.suppress(OSError), socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asked:
        asked.connect(("192.0.2.1", 9))  # nothing is sent
        hosts.append(str(asked.getsockname()[0]))
    with contextlib.suppress(OSError):
        socket.getaddrinfo(socket.gethostname(), 0)
        hosts.append(socket.gethostname())
    return list(dict.fromkeys(hosts))


def meet(who: str, text: str, folder: Path) -> str:
    """Lets somebody go to the address; gives what was told."""
    ledger = None
    try:
        address = read(text)
        if who == "owner":
            ledger = Ledger(folder / FILE, RULES)
            if not ledger.count():
                ledger.record(act("a"))
            share(folder, ledger, read(f"postgresql://owner@{text}"), OWNER, 2)
        elif who == "card":
            join(folder, address, CARD)
        else:
            PostgresLink(address, "station_2", lambda: STATION).head()
    except Fault as fault:
        return str(fault)
    finally:
        if ledger is not None:
            ledger.close()
    return ""


def run(every: int = 1) -> tuple[int, list[str]]:
    """Tries every so many of all ways; gives how many were tried, and what came out."""
    wrong, tried = list[str](), 0
    with tempfile.TemporaryDirectory(prefix="middle-") as made:
        folder = Path(made)
        secret._in_keyring = lambda *_: False  # type: ignore[assignment, attr-defined]
        middle = Middle(make_certificate(folder))
        (folder / "pc").mkdir()
        with middle.listening() as port:
            ways = product(list_hosts(), ["", *CONDITIONS], (True, False), ASKS,
                           ("owner", "card", "station"))  # fmt: skip
            for host, condition, encrypts, asks, who in list(ways)[::every]:
                tried += 1
                middle.asks, middle.encrypts = asks, encrypts
                middle.came.clear()
                middle.answers = middle.statements = 0
                told = meet(who, f"{host}:{port}/shop{condition}", folder / "pc")
                name = f"{who} at {host}{condition}, {'TLS' if encrypts else 'open'}, asks {asks}"
                named = name_fault(host, condition, asks, encrypts=encrypts)
                wrong += [f"{name}: {why}" for why in _judge(middle, told, named)]
    return tried, wrong


def name_fault(host: str, condition: str, asks: str, *, encrypts: bool) -> str:
    """Gives the words by which a talk that cannot be must be called."""
    wanted = condition.rpartition("=")[2]
    if not encrypts and (wanted in MODES[2:] or host not in LOCAL):
        return "does not encrypt"
    if asks in ("clear", "md5") and not wanted.startswith("verify"):
        return "asks for the password in a way that gives it away"
    return "does not prove that it is the shop's"


def _judge(middle: Middle, told: str, named: str) -> Iterator[str]:
    for word in SECRETS:
        if word.encode() in middle.came:
            yield f"{word} came in clear"
    if middle.answers:
        yield "a password was answered"
    if middle.statements:
        yield f"{middle.statements} statements came"
    if named not in told:
        yield f"it is not called by its name: {told or 'nothing was told'}"


def main() -> int:
    """Runs the campaign and prints what came of it."""
    tried, wrong = run(int(sys.argv[1]) if len(sys.argv) > 1 else 1)
    for why in wrong[:40]:
        print(why)
    came = f"{tried} talks with somebody in between, {len(wrong)} problems"
    print(came)
    note("somebody in between", came, "0 problems")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
