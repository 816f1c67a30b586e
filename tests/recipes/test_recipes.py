"""Each recipe of the guide, carried out in a copy of the program."""

import json
import re

import pytest

from tests.recipes.carry import PAGE, Copy, steps_of

pytestmark = pytest.mark.slow

CARRIED_OUT = (
    *("A work area", "A rule", "A reason", "A command", "A paper"),
    *("A cut-file dialect", "A field"),
)

GERMAN = "resources/translations/station_de.ts"


@pytest.fixture
def copy(tmp_path):
    return Copy(tmp_path / "copy")


def test_every_recipe_with_code_is_carried_out():
    page = PAGE.read_text(encoding="utf-8")
    titles = [m[1] for m in re.finditer(r"^## (.*)$", page, re.MULTILINE)]
    sections = [page.partition(f"\n## {t}\n")[2].partition("\n## ")[0] for t in titles]
    assert tuple(t for t, s in zip(titles, sections, strict=True) if "```" in s) == CARRIED_OUT


def test_a_work_area(copy):
    copy.carry_out("A work area")
    copy.check()
    more, screen, card = json.loads(
        copy.look("""
        import json, tempfile
        from pathlib import Path
        from station.printing import gathering
        from station.shop.cards import button
        from tests.readback import codes
        from tests.replay import Stage
        stage = Stage(Path(tempfile.mkdtemp()))
        stage.send("W012")
        stage.send("button menu")
        menu = str(stage.desk.face())
        stage.send("button area_drying")
        cards = gathering.make_paper(stage.ledger, "button_cards", "anywhere", stage.clock())
        printed = {mark.code for page in cards.pages for mark in codes(page)}
        print(json.dumps([button("area_drying") in menu, str(stage.desk.face().title),
                          button("area_drying") in printed]))
    """)
    )
    assert (more, screen, card) == (True, "Drying", True)
    assert "drying" in copy.run("-m", "station", "scan", "--help")
    german = (copy.folder / GERMAN).read_text(encoding="utf-8")
    assert "<source>Nothing dries yet</source>" in german


def test_a_rule(copy):
    copy.carry_out("A rule")
    copy.check()
    shown, said, kinds, printed = json.loads(
        copy.look("""
        import json, tempfile
        from pathlib import Path
        from station.printing import gathering
        from station.shop.cards import button
        from tests.readback import codes
        from tests.replay import Stage
        stage = Stage(Path(tempfile.mkdtemp()))
        for line in ("@area cart", "worker 02", "cart 1"):
            stage.send(line)
        face = stage.desk.face()
        given = stage.send("button wheels")
        assert not stage.check()
        cards = gathering.make_paper(stage.ledger, "button_cards", "cart", stage.clock())
        printed = {mark.code for page in cards.pages for mark in codes(page)}
        print(json.dumps([button("wheels") in str(face.presses), str(given.answer.said),
                          [e.kind for e in stage.ledger.entries()], button("wheels") in printed]))
    """)
    )
    assert (shown, printed) == (True, True)
    assert said == "The wheels of Cart 1 are checked"
    assert kinds[-1] == "check_wheels"
    copy.run("-m", "pytest", "-q", "-p", "no:cacheprovider", "tests/shop/test_kinds.py")
    assert "Wheels checked" in (copy.folder / GERMAN).read_text(encoding="utf-8")


def test_a_reason(copy):
    copy.carry_out("A reason")
    copy.check()
    own, first, problems, offered, printed, listed = json.loads(
        copy.look("""
        import json, tempfile
        from pathlib import Path
        from station.files import lists
        from station.printing import gathering
        from station.shop.codes import write
        from station.shop.facts import Reason
        from tests.readback import codes
        from tests.replay import Stage
        stage = Stage(Path(tempfile.mkdtemp()))
        problems = lists.read(stage.ledger, Reason, Path("reasons.csv"), "07", stage.clock(), "r")
        for line in ("@area trimming", "worker 02", "traveller 00900"):
            stage.send(line)
        cards = gathering.make_paper(stage.ledger, "button_cards", "trimming", stage.clock())
        printed = {mark.code for page in cards.pages for mark in codes(page)}
        own, first = write("reason", "06"), write("reason", "07")
        print(json.dumps([own, first, len(problems), own in str(stage.desk.face()),
                          sorted(printed & {own, first}), lists.write(stage.ledger, Reason)]))
    """)
    )
    assert (problems, offered, printed) == (0, True, sorted([own, first]))
    assert "06,burnt edge,spoiled" in listed
    assert "07,dropped,spoiled" in listed


def test_a_command(copy):
    copy.carry_out("A command")
    copy.check()
    data = str(copy.folder / "shop")
    copy.look(f"""
        from pathlib import Path
        from station import bootstrap
        from station.shop.facts import Batch
        with bootstrap.open_ledger(Path({data!r})) as ledger:
            held = Batch(id="00001", cut_file="1", revision="A", sheets=1, holds=("too thin",))
            bootstrap.seed_shop(ledger, [held], "2026-11-25T07:00:00")
    """)
    assert "the batches that are held, and why" in copy.run("-m", "station", "--help")
    assert copy.run("-m", "station", "--data", data, "held") == "00001: too thin\n"
    assert copy.run("-m", "station", "--data", data, "held", "--count") == "1\n"


def test_a_paper(copy):
    copy.carry_out("A paper")
    copy.check()
    (code,) = json.loads(
        copy.look("""
        import json, tempfile
        from pathlib import Path
        from station import bootstrap
        from station.printing import gathering
        from station.shop.facts import Batch, Shop
        from tests import readback
        with bootstrap.open_ledger(Path(tempfile.mkdtemp())) as ledger:
            held = Batch(id="00900", cut_file="1", revision="A", sheets=1, holds=("chipped",))
            bootstrap.seed_shop(ledger, [Shop(id="shop"), held], "2026-11-25T07:00:00")
            paper = gathering.make_paper(ledger, "held_list", "", "2026-11-25T07:00:00")
        assert paper.write_pdf().startswith(b"%PDF")
        print(json.dumps(sorted(readback.read(readback.rendered(paper)[0]))))
    """)
    )
    assert code.startswith("B00900A")


def test_a_cut_file_dialect(copy):
    copy.carry_out("A cut-file dialect")
    copy.check()
    assert "peck-2mm" in copy.run("-m", "station", "cut-file", "--help")
    heights = copy.look("""
        from station.cutting.model import Setting
        from station.cutting.read.reader_plain import read_plain
        text = b"G21 F100\\nG0 Z2\\nG99 G83 X0 Y0 Z-10 R2 Q4\\nG80\\nM2"
        moves = read_plain(text, Setting(dialect="peck-2mm")).moves
        print(*(f"{z:g}" for z in moves.points[1:, 2]))
    """)
    assert heights == "2 -2 2 0 -6 2 -4 -10 2"


def test_a_field(copy):
    copy.carry_out("A field")
    copy.check()
    shown, problem, saved, listed = json.loads(
        copy.look("""
        import json, tempfile
        from pathlib import Path
        from station.files import lists
        from station.shop.facts import Cart
        from tests.replay import PIN, Stage
        stage = Stage(Path(tempfile.mkdtemp()))
        for line in ("@worker 07", "@area office", "cart 1"):
            stage.send(line)
        rows = [str(row.title) for row in stage.desk.face().main[0].rows]
        place = rows.index("holds, kg") + 1
        stage.send("touch holds, kg")
        problem = str(stage.send("-1").answer.said)
        for line in ("80", "button save", "worker 07", PIN):
            given = stage.send(line)
        print(json.dumps([place, problem, stage.ledger.view.get(Cart, "1").holds_kg,
                          lists.write(stage.ledger, Cart)]))
    """)
    )
    assert (shown, problem, saved) == (4, "holds, kg cannot be below 0", 80.0)
    assert listed.splitlines()[0] == "id,name,goes,holds_kg,active"
    assert "<source>holds</source>" in (copy.folder / GERMAN).read_text(encoding="utf-8")


def test_a_step_that_does_not_fit_is_an_error(copy):
    areas = copy.folder / "station/shop/areas.py"
    areas.write_text("# another file\n", encoding="utf-8")
    with pytest.raises(AssertionError, match="stands 0 times in"):
        copy.carry_out("A work area")
    assert steps_of("A command")[0].code.startswith('"""``station held``')
