"""A new PC joins a shop with years of history: from a closing, until it is ready for a scan."""

import tempfile
from pathlib import Path
from time import perf_counter, process_time

from station.ledger.ledger import Ledger
from station.sharing.closings import begin_with, make
from station.sharing.founding import copy
from station.sharing.loop import catch_up
from tests.bench import Bench
from tests.bench_shared import link_of
from tests.ledger.toy import RULES
from tests.server import Server
from tests.sharing.shop import Shop, found


def run(bench: Bench) -> None:
    """The closing is made, then a PC begins with it and catches up."""
    server = Server(durable=True)
    try:
        shop = found(server)
        now = _years(bench, shop)
        began = perf_counter()
        with shop.admin() as admin:
            number = make(admin, shop.names, now, lambda _words: None).number
            size, head = admin.execute(
                "SELECT length(c.books), s.number FROM shop.closing c, shop.site s"
            ).fetchall()[0]
        made, years = perf_counter() - began, f"{head:,} entries"
        bench.add(f"a closing of {years} is made, from the start", made, unit="s")
        bench.add("the same: its size", size / 2**20, unit="MB")
        bench.add("the same: entries behind it", head - number, unit="")
        _join(bench, shop, years)
    finally:
        server.remove()


def _years(bench: Bench, shop: Shop) -> str:
    """Copies a long history into the shop; gives the time of its last entry."""
    ledger = Ledger(bench.history(bench.long), RULES)
    with shop.admin() as admin:
        head = copy(admin, shop.names.site, ledger.chain(0), "bench")
        admin.execute("UPDATE shop.site SET number = %s, digest = %s", head)
    now = ledger._history.at
    ledger.close()
    return now


def _join(bench: Bench, shop: Shop, years: str) -> None:
    folder = Path(tempfile.mkdtemp(dir=bench.folder))
    link = link_of(shop, "2")
    began, worked = perf_counter(), process_time()
    ledger = Ledger(folder / "station.db", RULES, station="2")
    ledger.share_with(shop.names.site)
    begin_with(ledger, link)
    ledger.ask_ahead()
    assert catch_up(ledger, link).state == "shared"
    ready, work = perf_counter() - began, process_time() - worked
    bench.add(f"a new PC is ready, {years} in the shop", ready, unit="s", limit=60)
    bench.add("the same, of it processor time", work, unit="s")
    assert ledger.check() == []
    link.close()
    ledger.close()
