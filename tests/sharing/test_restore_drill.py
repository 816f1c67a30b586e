"""The drill of DEVELOPERS.md: back the shop's database up, lose it, put it back, lose nothing."""

import os
import subprocess

from tests.server import ADMIN, PASSWORD, programs
from tests.sharing.two import Station, healed


def run(server, program, *given):
    done = subprocess.run(
        [programs() / program, "-h", "127.0.0.1", "-p", str(server.port), "-U", ADMIN, *given],
        env={**os.environ, "PGPASSWORD": PASSWORD},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr


def test_a_backup_is_put_back_and_nothing_is_lost(server, shop, tmp_path):
    one, two = (Station(tmp_path, shop, n) for n in "23")
    one.do("before")
    healed(one, two)
    file = str(tmp_path / "shop.dump")
    run(server, "pg_dump", "-Fc", "-f", file, shop.database)
    one.do("after the backup")
    healed(one, two)
    two.do("not shared when it broke")
    run(server, "dropdb", "--force", shop.database)
    assert one.talk()[0].state == "away"
    run(server, "createdb", "-T", "template0", shop.database)
    run(server, "pg_restore", "--exit-on-error", "-d", shop.database, file)
    assert one.talk()[0].state == "differs"
    with shop.admin() as admin:
        admin.execute("UPDATE shop.site SET epoch = epoch + 1")
    healed(one, two)
    assert sorted(one.ids()) == ["after the backup", "before", "not shared when it broke"]
    one.close()
    two.close()
