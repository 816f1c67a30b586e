"""A shop's own export comes in: columns said once, what would happen shown before it counts.

The files are written as shops' own programs commonly write them: common practice, no source.
"""

import pytest

from station.files import lists
from station.shop.cards import button
from station.shop.codes import write
from station.shop.faces import Listing
from station.shop.facts import Bit, Mailer, Matching, Order, Part, Product
from tests.replay import PIN, Stage
from tests.touch import find_touch

ENGLISH = (
    "Order ID,Order date,Customer,Country,SKU,Item name,Qty,Ship by\n"
    "#1042,2026-11-28,Customer 42,US,{a},Comb,2,2026-11-30\n"
    "#1043,2026-11-28,Customer 43,US,{b},Gauge,6,12/01/2026\n"
    "#1043,2026-11-28,Customer 43,US,{a},Comb,1,12/01/2026\n"
)
GERMAN = (
    "Bestellnummer;Bestelldatum;Kundenname;Land;Artikelnummer;Artikelbezeichnung;Menge;Preis;"
    "Versand bis\n"
    'WS-10231;28.11.2026;Käufer, Süd 17;DE;{a};Kamm "Groß";2;24,90;30.11.2026\n'
    "WS-10232;28.11.2026;Køber Ås 4;DK;{a};Kamm;1;24,90;01.12.2026\n"
    "WS-10232;28.11.2026;Køber Ås 4;DK;{b};Lehre;3;9,90;01.12.2026\n"
)


@pytest.fixture
def stage(tmp_path):
    made = Stage(tmp_path)
    for text in (button("area_office"), write("worker", "07")):
        made.desk.take(text)
    yield made
    assert made.ledger.check() == []
    made.ledger.close()


def name_products(stage):
    a, b = sorted(stage.ledger.facts(Product), key=lambda p: p.id)[:2]
    return a, b


def put(stage, name, text, encoding="utf-8"):
    folder = stage.ledger.path.parent / "files"
    folder.mkdir(exist_ok=True)
    (folder / name).write_bytes(text.encode(encoding))


def touch(stage, words):
    return stage.desk.take(find_touch(stage.desk.face(), words)).answer


def open_file(stage, name):
    stage.desk.take(button("read_csv"))
    return touch(stage, name)


def approve(stage):
    """Enters the PIN of the supervisor who is signed in."""
    if stage.desk.question() == "pin":
        stage.desk.take(PIN)


@pytest.mark.parametrize(
    ("text", "encoding", "number"),
    [
        (ENGLISH, "utf-8", "1043"),
        (GERMAN, "utf-8-sig", "WS-10232"),
        (GERMAN, "cp1252", "WS-10232"),
    ],
)
def test_an_export_of_orders_comes_in_by_its_own_columns(stage, text, encoding, number):
    a, b = name_products(stage)
    put(stage, "export.csv", text.format(a=a.name, b=b.name), encoding)
    assert str(open_file(stage, "export.csv").said) == "Which column is which in export.csv?"
    shown = touch(stage, "Go on")
    assert str(shown.said) == "2 new, 0 changed, 0 as they are"
    assert stage.ledger.view.get(Order, number) is None, "nothing counts before it is said"
    touch(stage, "Take it in")
    approve(stage)
    order = stage.ledger.view.get(Order, number)
    assert {line.product for line in order.lines} == {a.id, b.id}
    assert order.due.startswith("2026-12-01T")
    assert stage.ledger.view.get(Matching, "order")


def test_what_was_said_of_the_columns_is_kept_for_the_next_file(stage):
    a, b = name_products(stage)
    put(stage, "one.csv", ENGLISH.format(a=a.name, b=b.name))
    open_file(stage, "one.csv")
    touch(stage, "Go on")
    touch(stage, "Take it in")
    approve(stage)
    put(stage, "two.csv", ENGLISH.format(a=a.name, b=b.name).replace("1042", "2042"))
    assert str(open_file(stage, "two.csv").said) == "1 new, 0 changed, 1 as they are"


def test_a_column_is_said_by_touch_and_the_list_too(stage):
    put(stage, "bought.csv", "Sorte;Innen L;Innen B;Stückpreis\nLuftikus;310;220;0,35\n")
    assert str(open_file(stage, "bought.csv").said) == "Which list is bought.csv?"
    touch(stage, "Mailers")
    for field, column in (("name", "Sorte"), ("length, mm", "Innen L"), ("width, mm", "Innen B")):
        touch(stage, field)
        touch(stage, column)
    assert str(touch(stage, "Go on").said) == "1 new, 0 changed, 0 as they are"
    touch(stage, "Take it in")
    approve(stage)
    made = next(m for m in stage.ledger.facts(Mailer) if m.name == "Luftikus")
    assert (made.length_mm, made.width_mm) == (310.0, 220.0)


def test_a_file_that_changed_after_it_was_shown_is_shown_again(stage):
    a, b = name_products(stage)
    put(stage, "export.csv", ENGLISH.format(a=a.name, b=b.name))
    open_file(stage, "export.csv")
    touch(stage, "Go on")
    put(stage, "export.csv", ENGLISH.format(a=a.name, b=b.name).replace("1042", "3042"))
    assert touch(stage, "Take it in").refused
    assert stage.ledger.view.get(Order, "3042") is None
    assert any("3042" in str(line) for line in stage.desk.hand.work.columns.would)


def test_what_is_wrong_in_an_export_is_told_by_its_line_and_read_again(stage):
    a, _ = name_products(stage)
    text = ENGLISH.format(a=a.name, b="Nothing of ours")
    put(stage, "export.csv", text)
    open_file(stage, "export.csv")
    answer = touch(stage, "Go on")
    assert "line 3: There is no product Nothing of ours" in str(answer.do)
    put(stage, "export.csv", text.replace("Nothing of ours", a.name).replace("#1043", "#1044", 1))
    assert str(touch(stage, "Read again").said) == "3 new, 0 changed, 0 as they are"


@pytest.mark.parametrize(
    ("rows", "due"),
    [
        (("1/12/2026", "25/12/2026"), "2026-12-01"),  # no month has 25 of them
        (("12/1/2026", "12/25/2026"), "2026-12-01"),
        (("1.12.2026", "2026-12-25"), "2026-12-01"),
    ],
)
def test_days_with_strokes_are_read_as_the_whole_file_has_them(stage, rows, due):
    a, _ = name_products(stage)
    text = "no;sku;qty;due\n" + "".join(f"77{n};{a.name};1;{day}\n" for n, day in enumerate(rows))
    matched = (("id", "no"), ("lines.0", "sku"), ("lines.1", "qty"), ("due", "due"))
    found = lists.read_text(stage.ledger.view, text, Order, matched=matched)
    assert not found.problems
    assert [value["due"][:10] for value in found.values] == [due, "2026-12-25"]


@pytest.mark.parametrize("lines", ["2 x {a}", "{a} x 2", "2 × {a}"])
def test_lines_may_be_written_as_a_screen_says_them(stage, lines):
    a, _ = name_products(stage)
    text = f"id,lines,due\n7700,{lines.format(a=a.name)},2026-12-01\n"
    found = lists.read_text(stage.ledger.view, text)
    assert not found.problems
    assert found.values[0]["lines"][0] | {"short": 0} == {
        "product": a.id, "quantity": 2, "short": 0
    }  # fmt: skip


def test_a_file_of_a_known_list_is_shown_before_it_counts(stage):
    mailer = next(iter(stage.ledger.facts(Mailer)))
    put(stage, "mailers.csv", lists.write(stage.ledger, Mailer).replace(mailer.name, "Renamed"))
    assert str(open_file(stage, "mailers.csv").said).startswith("0 new, 1 changed")
    assert "Renamed" in str(stage.desk.hand.work.columns.would[0])
    touch(stage, "Take it in")
    approve(stage)
    assert stage.ledger.view.get(Mailer, mailer.id).name == "Renamed"


PARTS = "Article,Called,Shelf\nK-150,Comb 150,{shelf}\nS-210,Shuttle 210,{shelf}\n"


def say_columns(stage, *pairs):
    for field, column in pairs:
        touch(stage, field)
        touch(stage, column)


def test_columns_that_were_said_stay_said_where_the_file_has_a_problem(stage):
    put(stage, "parts.csv", PARTS.format(shelf="Z9"))
    open_file(stage, "parts.csv")
    touch(stage, "Parts")
    say_columns(stage, ("number", "Article"), ("name", "Called"), ("rack", "Shelf"))
    assert "There is no rack Z9" in str(touch(stage, "Go on").do)
    assert str(touch(stage, "Change its columns").said) == "Which column is which in parts.csv?"
    say_columns(stage, ("rack", "In no column"))
    assert str(touch(stage, "Go on").said) == "2 new, 0 changed, 0 as they are"
    touch(stage, "Take it in")
    approve(stage)
    part = stage.ledger.view.get(Part, "K-150")
    assert (part.name, part.words) == ("Comb 150", "Comb 150")


def test_a_new_thing_without_a_name_is_named_by_its_number(stage):
    put(stage, "bits.csv", "Tool,Dia\nF-01,3.175\n")
    open_file(stage, "bits.csv")
    touch(stage, "Bits")
    say_columns(stage, ("number", "Tool"), ("diameter, mm", "Dia"))
    assert str(touch(stage, "Go on").said) == "1 new, 0 changed, 0 as they are"
    touch(stage, "Take it in")
    approve(stage)
    assert stage.ledger.view.get(Bit, "F-01").words == "F-01"


def test_a_field_that_a_new_thing_needs_says_so_and_its_page_stays(stage):
    put(stage, "bits.csv", "Tool,Dia,State\nF-01,3.175,good\n")
    open_file(stage, "bits.csv")
    touch(stage, "Bits")
    (table,) = stage.desk.face().main
    cells = {str(row.title): str(row.cells[0].text) for row in table.rows}
    assert cells["diameter, mm"] == "to be said"
    assert cells["description"] == "–"
    stage.desk.take(button("next_page"))
    last = str(stage.desk.face().main[0].rows[-1].title)
    say_columns(stage, (last, "State"))
    assert last in [str(row.title) for row in stage.desk.face().main[0].rows]


def test_files_that_came_meanwhile_are_found_by_looking_again(stage):
    stage.desk.take(button("read_csv"))
    put(stage, "bits.csv", "Tool,Dia\nF-01,3.175\n")
    assert str(touch(stage, "Look again").said) == "1 CSV file"


def test_what_a_file_brings_of_a_new_thing_is_shown_before_it_counts(stage):
    put(stage, "parts.csv", "Article;Called;Gram\nK-150;Comb 150;26,5\n")
    open_file(stage, "parts.csv")
    touch(stage, "Parts")
    say_columns(stage, ("number", "Article"), ("name", "Called"))
    say_columns(stage, ("mass, g", "Gram"))
    touch(stage, "Go on")
    (listing,) = [b for b in stage.desk.face().main if isinstance(b, Listing)]
    assert "mass, g 26.5" in str(listing.rows[0][0][0].text)
