"""Answers cut files with the program that stands first in ``PYTHONPATH``.

Standard input is JSON: a list of cut files, each its name, its text and what is known beside it.
A line each: all that is worked out of it, and the processor time in seconds. Run as a file, so
that `tests.compare_cut_files` can ask an older program as well.
"""

import json
import sys
from dataclasses import fields, is_dataclass
from time import process_time

import numpy as np

from station.cutting.analyse.drawing import draw_path
from station.cutting.model import Program, Setting
from station.cutting.report import analyse_program, make_report, read_program
from station.shop.facts import Router
from station.shop.words import Say

ROUTER = Router(id="1", name="Router 1")


def main() -> None:
    """Answers each cut file of standard input."""
    for file in json.load(sys.stdin):
        print(json.dumps(answer(file["text"], file["known"])), flush=True)


def answer(text: str, known: dict[str, object]) -> dict[str, object]:
    """Answers one cut file: what the command prints, then every value of what was found."""
    bits = {int(number): size for number, size in known.pop("bit_mm", {}).items()}
    setting = Setting(router=ROUTER, bit_mm=bits, **known)
    program = read_program(text.encode(), setting)
    if program.refused:
        return {"printed": str(program.refused), "values": [], "seconds": 0.0}
    begin = process_time()
    found = analyse_program(program, setting)
    seconds = process_time() - begin
    path = draw_path(found, ROUTER)
    return {
        "printed": make_report(found),
        "values": [take_apart(found), take_apart(path)],
        "seconds": seconds,
    }


def take_apart(value: object) -> object:
    """Takes a value apart to lists, texts and numbers; the path as it was read is left out."""
    if isinstance(value, Program):
        return []
    if isinstance(value, Say):
        return str(value)
    if is_dataclass(value):
        return [take_apart(getattr(value, field.name)) for field in fields(value)]
    if isinstance(value, np.ndarray):
        return value.tolist()
    if isinstance(value, np.generic):
        return value.item()
    if isinstance(value, list | tuple):
        return [take_apart(each) for each in value]
    names = getattr(value, "__struct_fields__", None)
    return value if names is None else [take_apart(getattr(value, name)) for name in names]


if __name__ == "__main__":
    main()
