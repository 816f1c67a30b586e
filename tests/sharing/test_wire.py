"""Over a wire, as the server's page sets one up: TLS with a certificate of its own, and SCRAM.

The server of the other tests was built without TLS, so this takes the system's PostgreSQL 15 or
newer, where it is installed, and this machine's own address on the network.
"""

import re
import shlex
import shutil
import socket
import subprocess
from contextlib import suppress
from dataclasses import replace
from pathlib import Path

import psycopg
import pytest

from station import bootstrap
from station.ledger.ledger import Ledger
from station.sharing import membership, secret
from station.sharing.address import Address
from station.sharing.founding import NotShared, share
from station.sharing.joining import NotJoined, join
from tests import server as servers
from tests.ledger.toy import RULES, act
from tests.server import ADMIN, PASSWORD, Server
from tests.sharing.manual import typed

INSTALLED = sorted(Path("/usr/lib/postgresql").glob("*/bin/initdb"))


def own_address():
    """This machine's address on its network; nothing is sent."""
    with suppress(OSError), socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asked:
        asked.connect(("192.0.2.1", 9))
        return str(asked.getsockname()[0])
    return ""


def let_in():
    """The lines of the server's page for pg_hba.conf, of this PC instead of the example's."""
    lines = [re.sub(r"192\.168\.1\.\d+/\d+", f"{HOST}/32", line) for line in typed("hostssl ")]
    return "".join(f"{line}\n" for line in lines)


HOST = own_address()
pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(
        not (INSTALLED and HOST and shutil.which("openssl")), reason="no PostgreSQL with TLS here"
    ),
]


@pytest.fixture(scope="module")
def wired():
    """A server that listens on the network, without TLS, and lets in who comes without."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(servers, "programs", lambda: INSTALLED[-1].parent)
        server = Server()
        data = server.folder / "data"
        server.stop()
        server.host = f"{HOST},127.0.0.1"
        append(data / "pg_hba.conf", let_in().replace("hostssl", "host"))
        server.start()
        yield server
        server.remove()


def append(file, words):
    with file.open("a", encoding="utf-8") as out:
        out.write(words)


def encrypt(server):
    """As the server's page says, line by line."""
    data = server.folder / "data"
    certificate = shlex.split(typed("openssl req")[0])
    subprocess.run(certificate, cwd=data, check=True, capture_output=True)
    for name in ("server.key", "server.crt"):
        (data / name).chmod(0o600)
        if servers.is_root():
            shutil.chown(data / name, servers.NOBODY)
    append(data / "postgresql.conf", "\n".join(["", *typed("[a-z_]+ = "), ""]))
    hba = data / "pg_hba.conf"
    hba.write_text(hba.read_text().replace(let_in().replace("hostssl", "host"), let_in()))
    server.stop()
    server.start()


@pytest.fixture
def ledger(tmp_path, monkeypatch):
    monkeypatch.setattr(secret, "_in_keyring", lambda *_: False)
    (tmp_path / "one").mkdir()
    (tmp_path / "two").mkdir()
    ledger = Ledger(tmp_path / "one" / bootstrap.FILE, RULES)
    ledger.record(act("a"))
    yield ledger
    ledger.close()


def test_over_a_wire_all_is_encrypted_or_nothing_is_shared(wired, ledger, tmp_path):
    address = Address(HOST, wired.port, user=ADMIN)
    with pytest.raises(NotShared, match="does not encrypt"):
        share(tmp_path / "one", ledger, address, PASSWORD, 1)
    encrypt(wired)
    with wired.connect() as admin:
        admin.execute("CREATE ROLE owner LOGIN CREATEROLE CREATEDB PASSWORD 'o'")
    owner = Address(HOST, wired.port, user="owner")
    with pytest.raises(NotShared, match="lets nobody into that database"):
        share(tmp_path / "one", ledger, replace(owner, database="other"), "o", 1)
    card = share(tmp_path / "one", ledger, owner, "o", 1)[0]
    with pytest.raises(NotJoined, match="lets nobody into that database"):
        join(tmp_path / "two", Address(HOST, wired.port, "other"), card.code)
    join(tmp_path / "two", Address(HOST, wired.port), card.code)
    link = membership.of(tmp_path / "two").link(tmp_path / "two")
    assert [e.id for e in link.pull(0, 9)] == ["a"]
    row = link._ask("SELECT ssl, version FROM pg_stat_ssl WHERE pid = pg_backend_pid()", ())
    assert row == [(True, "TLSv1.3")]
    assert link._connection.pgconn.used_password
    assert link.address.options["channel_binding"] == "require"
    link.close()
    mine = membership.of(tmp_path / "two")
    own = {"user": mine.role, "password": secret.read(tmp_path / "two", mine.account)}
    for database, mode in (("postgres", "require"), ("shop", "disable")):
        at = {"host": HOST, "port": wired.port, "dbname": database, "sslmode": mode}
        with pytest.raises(psycopg.OperationalError, match="no pg_hba"):
            psycopg.connect(**at, **own)
