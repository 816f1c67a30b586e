"""The drill of the server's page, its own lines run: a spare server takes the lost one's place."""

import os
import re
import shlex
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import psycopg
import pytest

from station import bootstrap
from station.ledger.ledger import Ledger
from station.sharing import membership, secret
from station.sharing.address import Address
from station.sharing.founding import share
from station.sharing.joining import join
from station.sharing.loop import catch_up
from tests import server as servers
from tests.ledger.toy import RULES, act
from tests.server import ADMIN, PASSWORD, Server, programs
from tests.sharing.manual import ROOT, lines

pytestmark = pytest.mark.slow


@pytest.fixture(autouse=True)
def no_keyring(monkeypatch):
    monkeypatch.setattr(secret, "_in_keyring", lambda *_: False)


def run(server, folder, line, data):
    """One line of the page, at this server."""
    program, *given = shlex.split(line.replace("URL", server.url("shop")))
    command = (
        [sys.executable, "-m", "station", "--data", str(data)]
        if program == "station"
        else [str(programs() / program)]
    )
    where = {"PGHOST": "127.0.0.1", "PGPORT": str(server.port), "PGUSER": ADMIN}
    return subprocess.run(
        [*command, *given],
        input=PASSWORD,
        cwd=folder,
        env=os.environ | where | {"PGPASSWORD": PASSWORD, "PYTHONPATH": str(ROOT)},
        capture_output=True,
        text=True,
        check=True,
    ).stdout


class Pc:
    """One PC of the shop."""

    def __init__(self, folder):
        self.folder, self.count = folder, 0
        joined = membership.of(folder)
        self.ledger = Ledger(folder / bootstrap.FILE, RULES, station=joined.station)
        self.link = joined.link(folder)
        if not self.ledger.shared:
            self.ledger.share_with(joined.site)

    def do(self, id):
        self.ledger.record(replace(act(id), station=self.ledger.station))

    def share(self):
        return catch_up(self.ledger, self.link)

    def ids(self):
        return sorted(e.id for e in self.ledger.entries())

    def close(self):
        self.link.close()
        self.ledger.close()


@pytest.fixture
def lost():
    server = Server()
    yield server
    server.remove()


@pytest.fixture
def spare(lost):
    server = Server()
    yield server
    server.remove()


@pytest.fixture
def pcs(lost, tmp_path):
    """Two PCs of a shop on the server that will be lost."""
    folders = [tmp_path / name for name in ("one", "two")]
    for folder in folders:
        folder.mkdir()
    ledger = Ledger(folders[0] / bootstrap.FILE, RULES)
    ledger.record(act("first"))
    address = Address("127.0.0.1", lost.port, user=ADMIN)
    card = share(folders[0], ledger, address, PASSWORD, 1)[0]
    ledger.close()
    join(folders[1], Address("127.0.0.1", lost.port), card.code)
    made = [Pc(folder) for folder in folders]
    yield made
    for pc in made:
        pc.close()


REFUSED = (
    *("DELETE FROM shop.entry", "CREATE TEMP TABLE x ()", "CREATE TABLE public.x ()"),
    *("SELECT lo_create(0)", "SELECT pg_logical_emit_message(false, 'x', 'x')"),
)


def test_the_server_is_lost_and_nothing_with_it(lost, spare, pcs, tmp_path):
    one, two = pcs
    two.do("before")
    for pc in (two, one):
        assert pc.share().state == "shared"
    for line in lines("Every night"):
        run(lost, tmp_path, line, tmp_path)
    one.do("after the backup")
    for pc in (one, two):
        assert pc.share().state == "shared"
    two.do("not shared when it broke")
    lost.remove()
    assert one.share().state == "away"
    told = [run(spare, tmp_path, line, tmp_path) for line in lines("Try it before")]
    assert re.search(r"^\s+2$", told[-1], re.MULTILINE), told
    spare.stop()
    spare.port = lost.port  # it takes the name and address of the one that was lost
    spare.start()
    assert one.share().state == "differs"
    one.do("scanning goes on")
    for line in lines("The stations then"):
        run(spare, tmp_path, line, tmp_path)
    for pc in (two, one, two, one):  # what the first did, the second leaves for it to bring
        assert pc.share().state == "shared"
    everything = ["after the backup", "before", "first", "not shared when it broke"]
    assert one.ids() == two.ids() == [*everything, "scanning goes on"]
    assert one.ledger.check() == two.ledger.check() == []


def not_refused(server, folder):
    """What a PC's station may do nonetheless."""
    mine, done = membership.of(folder), []
    with server.connect("shop", mine.role, secret.read(folder, mine.account)) as link:
        for statement in REFUSED:
            try:
                link.execute(statement)
            except psycopg.errors.InsufficientPrivilege:
                continue
            done.append(statement)
    return done


def test_what_was_put_back_is_as_closed_as_it_was(lost, spare, pcs, tmp_path):
    for line in lines("Every night"):
        run(lost, tmp_path, line, tmp_path)
    for line in lines("Try it before"):
        run(spare, tmp_path, line, tmp_path)
    assert not_refused(spare, pcs[1].folder) == []
    with spare.connect("shop") as admin, pytest.raises(psycopg.Error, match="never changed"):
        admin.execute("DELETE FROM shop.entry")


@pytest.fixture
def older(monkeypatch):
    """The oldest PostgreSQL that is installed beside the tests' own."""
    installed = sorted(Path("/usr/lib/postgresql").glob("1[56]/bin/initdb"))
    if not installed:
        pytest.skip("no PostgreSQL 15 or 16 is installed here")
    with monkeypatch.context() as patch:
        patch.setattr(servers, "programs", lambda: installed[0].parent)
        server = Server()
    yield server
    server.remove()


def missed(server, folder, line):
    """How many statements did not fit the newer version: all of them of the one function."""
    with pytest.raises(subprocess.CalledProcessError) as told:
        run(server, folder, line, folder)
    errors = re.findall("ERROR: .*", told.value.stderr)
    assert all("pg_logical_emit_message" in error for error in errors)
    return len(errors)


def test_a_backup_goes_to_a_newer_postgresql(older, spare, tmp_path):
    ledger = Ledger(tmp_path / bootstrap.FILE, RULES)
    ledger.record(act("first"))
    share(tmp_path, ledger, Address("127.0.0.1", older.port, user=ADMIN), PASSWORD, 0)
    ledger.close()
    for line in lines("Every night"):
        run(older, tmp_path, line, tmp_path)
    roles, strict, _ = lines("Try it before")
    lenient, update = lines("To a newer version")
    run(spare, tmp_path, roles, tmp_path)
    assert missed(spare, tmp_path, strict) == 1
    with spare.connect() as admin:
        admin.execute("DROP DATABASE shop")
    assert missed(spare, tmp_path, lenient) == 2
    assert not_refused(spare, tmp_path) == [REFUSED[-1]]
    run(spare, tmp_path, update, tmp_path)
    assert not_refused(spare, tmp_path) == []
    with spare.connect("shop") as admin:
        assert admin.execute("SELECT id FROM shop.entry").fetchall() == [("first",)]
