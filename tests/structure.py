"""``python -m tests.structure [ROOT …]``: how this program is built, in figures.

One column for this tree, and one for each ROOT: the folder of a Python package, or the name of
one that is installed; so a tree of before and well-kept libraries stand beside. Below it what
the figures of this tree are made of. A figure is a question, not an aim: nothing is glued
together to meet one.

- *files*: the package's modules; an `__init__` without code is none. Its *hall* is what lies
  directly in the package's folder.
- *import floors*: a module that imports no other of the package stands on floor 1, any other
  one above the highest that it imports. Modules that import each other are a *circle* and stand
  on one floor. An import counts wherever it stands, in a function or for types alone, and so
  does a module's full name in a text, by which it may be imported.
- *one-word names*: of all functions and methods but Python's own (`__init__`), those without a
  `_` inside.
- *private functions used once*: of all functions and methods whose name begins with one `_`,
  those whose name stands once in their file besides where they are defined.
- *names twice*: in more than one place of the package. The modules that every room has under the
  same name are left out.
- *lines*: of a function from `def` to its end, of a file all of them.

One scan is followed besides, in this tree alone: a slip scanned at loading takes a sheet off the
bed, first through the desk, then through the window until it is painted. What is told is how many
functions of the program are called, in how many files, and how many *hops*: calls from a file
into another one of the program.
"""

import ast
import importlib.util
import os
import sys
import tempfile
from collections import Counter
from collections.abc import Callable, Container, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from itertools import chain
from pathlib import Path
from statistics import median
from types import FrameType
from typing import NamedTuple

from tests.measured import note

HERE = Path(__file__).resolve().parent.parent / "station"
EVERY_ROOM = {"acts", "rules", "dialogue", "face", "screen"}
BESIDE = ("demo_db", "tests")  # folders of the same tree that have classes too
Graph = Mapping[str, set[str]]


class Function(NamedTuple):
    """A function or method, the module it is in, and its lines."""

    name: str
    module: str
    lines: int


@dataclass(kw_only=True)
class Module:
    """One file, as far as its text tells. `refers` counts every name that its code uses."""

    name: str  # station.desk.desk
    is_folder: bool  # an `__init__`
    lines: int
    functions: list[Function] = field(default_factory=list)
    classes: list[str] = field(default_factory=list)
    imports: set[str] = field(default_factory=set)
    refers: Counter[str] = field(default_factory=Counter)


# --- read from the text


def read_package(root: Path) -> dict[str, Module]:
    """Reads every module of a package, by its full name."""
    texts = {file: file.read_text(encoding="utf-8") for file in sorted(root.rglob("*.py"))}
    trees = {file: ast.parse(text) for file, text in texts.items()}
    names = {_name_of(file, root): file for file, tree in trees.items() if not _is_empty(tree)}
    return {
        name: _read(Module(
            name=name, is_folder=file.stem == "__init__", lines=len(texts[file].splitlines())
        ), trees[file], names.keys())
        for name, file in names.items()
    }  # fmt: skip


def _is_empty(tree: ast.Module) -> bool:
    """Whether there is nothing but a docstring."""
    return all(isinstance(e, ast.Expr) and isinstance(e.value, ast.Constant) for e in tree.body)


def _name_of(file: Path, root: Path) -> str:
    parts = file.relative_to(root.parent).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def _read(made: Module, tree: ast.Module, known: Container[str]) -> Module:
    """Fills a module in from its text."""
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            lines = (node.end_lineno or node.lineno) - node.lineno + 1
            made.functions.append(Function(node.name, made.name, lines))
        elif isinstance(node, ast.ClassDef):
            made.classes.append(node.name)
        elif isinstance(node, ast.Name):
            made.refers[node.id] += 1
        elif isinstance(node, ast.Attribute):
            made.refers[node.attr] += 1
        made.imports |= {name for name in _imported(node, made, known) if name in known}
    made.imports -= {made.name}
    return made


def _imported(node: ast.AST, of: Module, known: Container[str]) -> Iterator[str]:
    """Names of modules that a node may import, of the package or not."""
    if isinstance(node, ast.Import):
        yield from (alias.name for alias in node.names)
    elif isinstance(node, ast.Constant) and isinstance(node.value, str):
        yield node.value
    elif isinstance(node, ast.ImportFrom):
        above = of.name.split(".")
        above = above[: len(above) - node.level + of.is_folder] if node.level else []
        base = ".".join([*above, *filter(None, [node.module])])
        for alias in node.names:
            full = f"{base}.{alias.name}"
            yield full if full in known else base


# --- floors and circles


def circles(graph: Graph) -> list[set[str]]:
    """Groups of modules that import each other, and every other module alone, lowest first."""
    groups: list[set[str]] = []
    order: dict[str, int] = {}
    low: dict[str, int] = {}
    path: list[str] = []

    def visit(one: str) -> None:
        order[one] = low[one] = len(order)
        path.append(one)
        for other in sorted(graph[one]):
            if other not in order:
                visit(other)
            if other in path:
                low[one] = min(low[one], low[other])
        if low[one] == order[one]:
            groups.append(set(path[path.index(one) :]))
            del path[path.index(one) :]

    for one in sorted(graph):
        if one not in order:
            visit(one)
    return groups


def floors(graph: Graph) -> int:
    """On how many floors the modules stand."""
    floor: dict[str, int] = {}
    for group in circles(graph):
        below = {other for one in group for other in graph[one]} - group
        here = 1 + max((floor[other] for other in below), default=0)
        floor |= dict.fromkeys(group, here)
    return max(floor.values(), default=0)


def imports_of(modules: Mapping[str, Module], within: str = "") -> Graph:
    """Who imports whom among the modules, or among those of one folder."""
    inside = {n for n in modules if not within or n == within or n.startswith(f"{within}.")}
    return {name: modules[name].imports & inside for name in inside}


# --- figures


def figures(root: Path) -> dict[str, str]:
    """What is told of one package, by what it is."""
    modules = read_package(root)
    functions = [f for m in modules.values() for f in m.functions]
    named = [f for f in functions if not f.name.startswith("__")]
    private = [f for f in named if f.name.startswith("_")]
    once = [f for f in private if modules[f.module].refers[f.name] == 1]
    graph = imports_of(modules)
    lines = [m.lines for m in modules.values()]
    long = [f.lines for f in functions]
    return {
        "files": f"{len(modules)}",
        "files in the hall": f"{len(hall(modules))}",
        "import floors": f"{floors(graph)}",
        "import circles": f"{sum(len(group) > 1 for group in circles(graph))}",
        "functions and methods": f"{len(functions)}",
        "one-word names": _share(sum("_" not in f.name.strip("_") for f in named), len(named)),
        "private functions": f"{len(private)}",
        "private functions used once": _share(len(once), len(private)),
        "module names twice": f"{len(module_names_twice(modules))}",
        "class names twice": f"{len(twice(classes(modules)))}",
        "class names twice, with tests": _with_tests(root, modules),
        "median function, lines": f"{median(long):g}",
        "longest function, lines": f"{max(long)}",
        "functions past 40 lines": f"{sum(n > 40 for n in long)}",
        "median file, lines": f"{median(lines):g}",
        "largest file, lines": f"{max(lines)}",
    }


def _share(some: int, of: int) -> str:
    return f"{some / of:.0%}" if of else "none"


def hall(modules: Mapping[str, Module]) -> list[str]:
    """The modules that lie directly in the package's folder."""
    return [name for name, m in modules.items() if name.count(".") == 1 and not m.is_folder]


def classes(modules: Mapping[str, Module]) -> list[str]:
    """The name of every class, as often as it is defined."""
    return [name for m in modules.values() for name in m.classes]


def module_names_twice(modules: Mapping[str, Module]) -> list[str]:
    """Names of more than one module, those that every room has left out."""
    last = [name.rpartition(".")[2] for name, m in modules.items() if not m.is_folder]
    return [name for name in twice(last) if name not in EVERY_ROOM]


def twice(names: Iterable[str]) -> list[str]:
    """The names that are there more than once, in their order."""
    return sorted(name for name, count in Counter(names).items() if count > 1)


def _with_tests(root: Path, modules: Mapping[str, Module]) -> str:
    """Class names twice where the classes of a tree's tests count too."""
    if root.name != HERE.name:
        return ""
    beside = (classes(read_package(root.parent / name)) for name in BESIDE)
    return f"{len(twice(chain(classes(modules), *beside)))}"


def rooms(modules: Mapping[str, Module]) -> dict[str, tuple[int, int]]:
    """Files and import floors of every folder of the package that holds more than one module."""
    folders = Counter(name.rpartition(".")[0] for name in modules)
    return {
        folder: (count, floors(imports_of(modules, folder)))
        for folder, count in sorted(folders.items())
        if count > 1 and "." in folder
    }


# --- one scan, followed

# of the house's own figures; tests hold all but the files of a scan, which are one idea each
WANTED = {
    "files in the hall": "15",
    "import circles": "0",
    "one-word names": "45%",
    "class names twice": "5",
    "functions past 40 lines": "0",
    "through the window, painted": "40 files, 900 hops",
}


@dataclass
class Way:
    """What one scan went through."""

    functions: set[tuple[str, str, int]] = field(default_factory=set)
    hops: int = 0

    def __str__(self) -> str:
        files = {file for file, _, _ in self.functions}
        return f"{len(self.functions)} functions in {len(files)} files, {self.hops} hops"


def follow(root: Path, scan: Callable[[], object]) -> Way:
    """Does something and notes every call of a function of the package."""
    way, inside = Way(), str(root)

    def note(frame: FrameType, event: str, _arg: object) -> None:
        file = frame.f_code.co_filename
        if event == "call" and file.startswith(inside):
            code, caller = frame.f_code, frame.f_back
            way.functions.add((file, code.co_qualname, code.co_firstlineno))
            came = caller.f_code.co_filename if caller else ""
            way.hops += came != file and came.startswith(inside)

    sys.setprofile(note)
    try:
        scan()
    finally:
        sys.setprofile(None)
    return way


RELEASED = """
@worker 07
@area office
button list_cutfile
'ST200-SET
button release_batch
router 2
4
worker 07
2468
@worker 02
@area loading
@router R2
traveller 00001
lot 0931
6.4
button held_down
button bit_good
button file_right
button zeroed
button start
@at 2026-11-25T07:22:00
"""


def ways() -> Iterator[tuple[str, Way]]:
    """The way of a slip that takes a sheet off the bed: through the desk, through the window."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    from station.look.window import Window  # noqa: PLC0415 - the same
    from station.window.session import Session  # noqa: PLC0415 - Qt only where it is wanted
    from station.window.show import find_application  # noqa: PLC0415 - the same
    from tests.replay import Stage, code_of  # noqa: PLC0415 - the static figures need no station

    def scanned(open_: Callable[[Stage], Callable[[str], object]]) -> Way:
        with tempfile.TemporaryDirectory() as folder:
            stage = Stage(Path(folder))
            for line in RELEASED.split("\n")[1:-1]:
                stage.desk.take(line[1:]) if line[0] == "'" else stage.send(line)
            take, code = open_(stage), code_of("slip 00001 1", stage.ledger)
            before = stage.ledger.count()
            way = follow(HERE, lambda: take(code))
            assert stage.ledger.count() == before + 1, "the slip recorded nothing"
            stage.close()
        return way

    yield "through the desk", scanned(lambda stage: stage.desk.take)
    application = find_application()

    def at_window(stage: Stage) -> Callable[[str], object]:
        window = Window()
        window.resize(1366, 768)
        session = Session(window, stage.desk)
        window.show()
        session.start()
        application.processEvents()
        return lambda code: (session.take(code), application.processEvents(), session.stop())

    yield "through the window, painted", scanned(at_window)


# --- printed


def folder_of(given: str) -> Path:
    """The folder of a package, from its path or its name."""
    if Path(given).is_dir():
        return Path(given).resolve()
    spec = importlib.util.find_spec(given)
    if spec is None or not spec.submodule_search_locations:
        sys.exit(f"{given} is neither a folder nor a package that is installed")
    return Path(spec.submodule_search_locations[0])


def table(roots: list[Path]) -> Iterator[str]:
    """A line a figure, a column a package."""
    told = [figures(root) for root in roots]
    heads = [str(root) if root.name == HERE.name else root.name for root in roots]
    heads = [
        "this tree" if root == HERE else head for root, head in zip(roots, heads, strict=True)
    ]
    wide = [max(len(head), 10) for head in heads]
    rows = [("", heads), *((name, [one[name] for one in told]) for name in told[0])]
    for name, cells in rows:
        yield f"{name:32}" + "  ".join(f"{c:>{w}}" for c, w in zip(cells, wide, strict=True))


def details(root: Path) -> Iterator[str]:
    """What the figures of a package are made of."""
    modules = read_package(root)
    functions = [f for m in modules.values() for f in m.functions]
    yield "Import circles:"
    yield from (
        f"  {' '.join(sorted(group))}" for group in circles(imports_of(modules)) if len(group) > 1
    )
    yield "Files and import floors of a folder:"
    yield from (f"  {name}: {count} on {high}" for name, (count, high) in rooms(modules).items())
    yield f"In the hall: {' '.join(n.rpartition('.')[2] for n in hall(modules))}"
    yield f"Class names twice: {' '.join(twice(classes(modules)))}"
    yield f"Module names twice: {' '.join(module_names_twice(modules))}"
    yield "Largest files:"
    for m in sorted(modules.values(), key=lambda m: -m.lines)[:8]:
        yield f"  {m.name}: {m.lines}"
    yield "Functions past 40 lines:"
    for f in sorted(functions, key=lambda f: -f.lines):
        if f.lines > 40:
            yield f"  {f.module}.{f.name}: {f.lines}"


def main() -> int:
    """Prints everything, and notes what is wanted of this tree."""
    print("\n".join(table([HERE, *map(folder_of, sys.argv[1:])])))
    print()
    print("\n".join(details(HERE)))
    print("A slip that takes a sheet off the bed:")
    for name, way in ways():
        print(f"  {name}: {way}", flush=True)
        note(f"a slip {name}", str(way), WANTED.get(name, "–"))
    for name, figure in figures(HERE).items():
        note(name, figure, WANTED.get(name, "–"))
    return 0


if __name__ == "__main__":
    sys.exit(main())
