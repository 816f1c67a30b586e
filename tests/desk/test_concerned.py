"""The screen of a question shows what it is about."""

import pytest

from station.desk.asking import question
from station.desk.draft import OpenQuestion
from station.floor.loading.acts import EndSheet
from station.floor.packing.acts import ClosePack
from station.floor.popping.acts import PassOn
from station.floor.shared.recounts import RecountPlace
from station.shop.acts import Args
from station.shop.faces import Header, PartDrawing, SheetDrawing, Table
from station.shop.facts import Line, Order
from station.shop.moves import move
from station.shop.rooms import Do
from station.shop.words import say
from tests.floor.shop_small import COMB, COMBS, SHUTTLE, at, batch, hand, small_shop

ORDER = Order(id="3306", lines=(Line(product="P1", quantity=1),), due=at("14:00"))
IN_PACK = (move(COMB, 2, "cut", "packing/3306", "00412"),)
FIGURES = {COMB: {"good": 70, "spoiled/03": 1, "spoiled/11": 1}, SHUTTLE: {"good": 9}}
COUNTED = RecountPlace(part=COMB, counted=400)


@pytest.mark.parametrize(
    ("subject", "args", "seen"),
    [
        ("batch/00412", Args(), (Header, SheetDrawing)),
        ("slip/00412-3", EndSheet(router="1", sheet=3), (Header, SheetDrawing)),
        ("batch/00412", PassOn(slips=(), parts=FIGURES), (Header, Table)),
        ("order/3306", ClosePack(scale_g=100.0), (Header, Table)),
        (f"part/{COMB}", COUNTED, (Header, PartDrawing)),
        ("batch/99999", Args(), ()),
        ("order/9999", Args(), ()),
        ("part/999", COUNTED, ()),
        (f"part/{COMB}", Args(), ()),
        ("worker/07", Args(), ()),
    ],
)
def test_what_is_shown(subject, args, seen):
    assert tuple(type(block) for block in blocks(subject, args)) == seen


def test_the_figures_are_those_that_would_be_recorded():
    _, table = blocks("batch/00412", PassOn(slips=(), parts=FIGURES))
    assert isinstance(table, Table)
    shown = [[str(cell.text) for cell in row.cells] for row in table.rows]
    assert shown == [["70", "2", "0", "0"], ["9", "0", "0", "0"]]


@pytest.mark.parametrize(
    ("subject", "args", "texts"),
    [
        ("slip/00412-3", Args(), ("00412", "3 of 4")),
        ("order/3306", Args(), ("3306", "2 parts")),
        (f"part/{COMB}", COUNTED, ("400", "HC-300")),
    ],
)
def test_its_head_says_what_it_is(subject, args, texts):
    header = blocks(subject, args)[0]
    assert isinstance(header, Header)
    said = [str(t) for t in (header.number, header.title, header.right)]
    assert set(texts) <= set(said)


def blocks(subject, args):
    """What stands under the question, before it is answered."""
    view = small_shop(batch(COMBS), ORDER, moves=IN_PACK)
    held = hand("loading")
    waiting = OpenQuestion(do=Do(subject, args, held), asks="sure", said=say("Sure?"))
    return question(held, waiting, view, say("Loading")).main[1:]
