"""The pages for developers show the house as it is: links, files, floors and commands."""

import re
import tomllib
from importlib.util import find_spec
from itertools import chain
from pathlib import Path

import pytest

HOME = Path(__file__).resolve().parent.parent
GUIDE = HOME / "resources" / "guide"
TOLD = "measured.md"  # what was measured, when files had other names
PAGES = [HOME / "README.md", HOME / "DEVELOPERS.md", *sorted(GUIDE.glob("*.md"))]
READ = [page for page in PAGES if page.name != TOLD]
MAIN = '\nif __name__ == "__main__":\n'
ROOTS = ("", "station", "station/floor", "station/ledger", "station/shop")


def names(pages):
    return [page.name for page in pages]


def anchors(page):
    """The anchors of a page's headings."""
    heads = re.findall(r"^#+ (.*)$", page.read_text(encoding="utf-8"), re.MULTILINE)
    return {re.sub(r"[^\w\- ]", "", head).lower().replace(" ", "-") for head in heads}


@pytest.mark.parametrize("page", PAGES, ids=names(PAGES))
def test_every_link_leads_somewhere(page):
    for link in re.findall(r"\]\(([^)]+)\)", page.read_text(encoding="utf-8")):
        file, _, anchor = link.partition("#")
        target = page.parent / file if file else page
        assert target.exists(), link
        assert not anchor or anchor in anchors(target), link


@pytest.mark.parametrize("page", READ, ids=names(READ))
def test_every_file_that_a_page_names_is_there(page):
    text = re.sub(r"(new|empty) file `[^`]+`", "", page.read_text(encoding="utf-8"))
    spans = re.findall(r"`([^`\n]+)`", text)
    files = [s for s in spans if re.fullmatch(r"[\w./-]+(\.(py|md|toml|nc)|/)", s)]
    missing = [f for f in files if not any((HOME / root / f).exists() for root in ROOTS)]
    assert missing == []


@pytest.mark.parametrize("page", READ, ids=names(READ))
def test_every_module_that_a_page_runs_is_there(page):
    text = page.read_text(encoding="utf-8")
    modules = set(re.findall(r"python3? -m ((?:tests|resources|station|demo_db)[\w.]*)", text))
    assert [m for m in sorted(modules) if not find_spec(m)] == []


def test_the_picture_of_the_layers_is_the_import_contract():
    text = (HOME / "DEVELOPERS.md").read_text(encoding="utf-8")
    picture = text.partition("## The layers")[2].split("```")[1]
    rows = [re.split(r"  +", line)[:-1] for line in picture.strip().splitlines()]
    config = tomllib.loads((HOME / "pyproject.toml").read_text(encoding="utf-8"))
    contracts = config["tool"]["importlinter"]["contracts"]
    (whole,) = (c for c in contracts if c["type"] == "layers" and c["containers"] == ["station"])
    layers = [re.split(r" [|:] ", layer) for layer in whole["layers"] if layer != "__main__"]
    drawn = chain.from_iterable(rows)  # a floor may take two rows
    assert [{next(drawn, "") for _ in layer} for layer in layers] == [set(la) for la in layers]
    assert list(drawn) == []


def test_the_page_for_developers_stays_two_pages():
    lines = (HOME / "DEVELOPERS.md").read_text(encoding="utf-8").splitlines()
    assert len(lines) <= 130
    assert [line for line in lines if len(line) > 120] == []


def test_every_command_of_the_tests_is_told():
    told = (GUIDE / "campaigns.md").read_text(encoding="utf-8")
    spec = chain((HOME / "tests").glob("*.py"), (HOME / "tests").glob("*/__main__.py"))
    run = [f for f in spec if MAIN in f.read_text(encoding="utf-8")]
    commands = {f.parent.name if f.name == "__main__.py" else f.stem for f in run}
    children = {"__main__", "tests", "many_station", "bench_shared"}
    assert sorted(c for c in commands - children if f"tests.{c}" not in told) == []
