"""The order list: what to order, as a page and as a CSV file in the shop's folder."""

import csv
import io
from collections.abc import Sequence
from typing import Any

from station.files.folder import ShopFolder
from station.files.lists import guard_cell
from station.ledger.ledger import Ledger
from station.ledger.renaming import write_whole
from station.queries.settings import find_shop
from station.shop.acts import good
from station.shop.file_requests import OrderRow, WriteOrderList
from station.shop.rooms import Hand, Took
from station.shop.words import say

COLUMNS = ("what", "quantity", "by", "lasts_days", "lead_days", "lead_known", "on_its_way",
           "price", "cost")  # fmt: skip


def write_csv(rows: Sequence[OrderRow]) -> str:
    """Writes the rows as CSV text, the columns by their names."""
    out = io.StringIO()
    table = csv.writer(out, lineterminator="\n")
    table.writerow(COLUMNS)
    for row in rows:
        known = "yes" if row.lead_known else "no"
        lasts = "" if row.lasts_days is None else f"{row.lasts_days:g}"
        price, cost = (f"{n:.2f}" if n else "" for n in (row.price, row.price * row.quantity))
        cells = (row.quantity, row.by, lasts, row.lead_days, known, row.coming, price, cost)
        table.writerow([guard_cell(row.what), *cells])
    return out.getvalue()


class OrderLists:
    """Writes order lists into the shop's folder."""

    def __init__(self, ledger: Ledger, folder: ShopFolder) -> None:
        self.ledger, self.folder = ledger, folder

    def write(self, request: WriteOrderList, hand: Hand[Any]) -> Took:
        """Writes the page and the file, both under one name. Raises OSError where it cannot."""
        from station.papers.order_list import make_order_list  # noqa: PLC0415 - reportlab is heavy

        paper = find_shop(self.ledger.view).paper
        page = make_order_list(request.rows, at=request.at, paper=paper)
        file = self.folder.name_new("order", "csv")
        write_whole(file, write_csv(request.rows).encode("utf-8-sig"))
        write_whole(file.with_suffix(".pdf"), page.write_pdf())
        said = say("The order list is written: {n} {n|line|lines}", n=len(request.rows))
        return Took(hand, good(said, say("{file}, and as a page beside it.", file=file)))
