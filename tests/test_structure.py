"""What `tests.structure` counts, on a small made-up package."""

import runpy
import sys

import pytest

from tests import structure

FILES = {
    "__init__.py": "",
    "top.py": """
import shop.room.face
from . import low

def run_all():
    return _once(low.add(1, 2))

def _once(value):
    return value
""",
    "low.py": """
class Sheet:
    def __init__(self): self._size = 0
    def add(self): return _twice(_twice(self))

def add(a, b):
    return a + b

def _twice(value):
    return value
""",
    "room/__init__.py": '"""Only words."""\n',
    "room/rules.py": "from .. import low\nclass Sheet: ...\n",
    "room/face.py": """
from shop.room import rules
from shop.room.parts import draw

def draw_all():
    from shop.room import back  # in a circle with it
    return draw(rules.Sheet())
""",
    "room/back.py": "from shop.room.face import draw_all\n",
    "room/parts.py": "def draw(x): return x\n",
    "other/__init__.py": "LISTED = 'shop.top'\n",
    "other/rules.py": "",
    "other/parts.py": "",
}


@pytest.fixture
def root(tmp_path):
    for name, text in FILES.items():
        file = tmp_path / "shop" / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, encoding="utf-8")
    return tmp_path / "shop"


@pytest.fixture
def modules(root):
    return structure.read_package(root)


def test_files_without_code_are_none(modules):
    assert sorted(modules) == [
        "shop.low", "shop.other", "shop.room.back", "shop.room.face", "shop.room.parts",
        "shop.room.rules", "shop.top",
    ]  # fmt: skip


def test_imports_of_every_kind(modules):
    assert modules["shop.top"].imports == {"shop.room.face", "shop.low"}
    assert modules["shop.room.rules"].imports == {"shop.low"}
    assert modules["shop.room.face"].imports == {
        "shop.room.rules", "shop.room.parts", "shop.room.back",
    }  # fmt: skip
    assert modules["shop.other"].imports == {"shop.top"}


def test_a_circle_stands_on_one_floor(modules):
    graph = structure.imports_of(modules)
    assert {"shop.room.face", "shop.room.back"} in structure.circles(graph)
    assert structure.floors(graph) == 5  # low, rules, face and back, top, other
    assert structure.rooms(modules)["shop.room"] == (4, 2)


def test_figures(root):
    told = structure.figures(root)
    assert told["files"] == "7"
    assert told["files in the hall"] == "2"
    assert told["import circles"] == "1"
    assert told["functions and methods"] == "8"
    assert told["one-word names"] == "71%"  # add, add, draw, _once, _twice of seven
    assert told["private functions"] == "2"
    assert told["private functions used once"] == "50%"
    assert told["class names twice"] == "1"
    assert told["module names twice"] == "0"
    assert (told["median function, lines"], told["longest function, lines"]) == ("2", "3")
    assert told["largest file, lines"] == "10"


def test_module_names_twice_are_not_those_of_every_room(root):
    for room in ("room", "other"):
        for name in ("rules.py", "parts.py"):
            (root / room / name).write_text("x = 1\n", encoding="utf-8")
    assert structure.module_names_twice(structure.read_package(root)) == ["parts"]


def test_calls_are_followed(root, monkeypatch):
    monkeypatch.syspath_prepend(root.parent)
    run = runpy.run_path(str(root / "top.py"), run_name="shop.top")["run_all"]
    way = structure.follow(root, run)
    assert {(name, file.rpartition("/")[2]) for file, name, _ in way.functions} == {
        ("run_all", "top.py"), ("add", "low.py"), ("_once", "top.py"),
    }  # fmt: skip
    assert way.hops == 1
    assert str(way) == "3 functions in 2 files, 1 hops"
    for name in [n for n in sys.modules if n.partition(".")[0] == "shop"]:
        del sys.modules[name]


@pytest.mark.slow
def test_the_house_stays_as_simple_as_it_is():
    told = structure.figures(structure.HERE)
    for name in ("files in the hall", "import circles", "one-word names", "class names twice",
                 "functions past 40 lines"):  # fmt: skip
        assert int(told[name].strip("%")) <= int(structure.WANTED[name].strip("%")), name


@pytest.mark.slow
def test_a_slip_is_answered_and_painted_on_a_short_way():
    (_, desk), (_, window) = structure.ways()
    assert 100 < desk.hops < window.hops <= 900


def test_a_package_by_its_name():
    assert structure.folder_of("_pytest").name == "_pytest"
    with pytest.raises(SystemExit, match="neither a folder nor a package"):
        structure.folder_of("nosuch_package")
