"""``python -m tests.layouts N``: reads N random layouts and compares sizes."""

import sys
from collections import Counter

from station.cutting.report import analyse_program, read_program
from tests.cutting.layouts import STYLES, Layout, make
from tests.measured import note

SIZE, AREA = 0.01, 0.0005


def faults(layout: Layout, text: str) -> list[str]:
    """What was found differently from what was made; empty: all is equal."""
    got = analyse_program(read_program(text.encode(), layout.setting), layout.setting)
    made = [
        (k, c, t) for k, c, t in zip(layout.kinds, layout.counts, layout.tabs, strict=True) if c
    ]
    wrong = []
    if len(got.shapes) != len(made):
        wrong.append(f"{len(got.shapes)} shapes for {len(made)}")
    for kind, count, tabs in made:
        near = min(
            got.shapes,
            key=lambda s: abs(s.area_mm2 - kind.area) + abs(s.width_mm - kind.width),
            default=None,
        )
        if near is None:
            continue
        for name, found, true, slack in (
            ("width", near.width_mm, kind.width, SIZE),
            ("length", near.length_mm, kind.length, SIZE),
            ("area", near.area_mm2, kind.area, AREA * kind.area),
            ("perimeter", near.perimeter_mm, kind.perimeter, AREA * kind.perimeter),
            ("count", len(near.pieces), count, 0),
        ):
            if abs(found - true) > slack:
                wrong.append(f"{kind.name} {name} {found} for {true}")
        counted = Counter(len(got.pieces[i].tabs) for i in near.pieces)
        if counted != Counter({tabs: len(near.pieces)}):
            wrong.append(f"{kind.name} tabs {dict(counted)} for {tabs}")
    return wrong


def main() -> int:
    """Reads as many layouts as asked for, with comments and without, and tells which differ."""
    total = int(sys.argv[1]) if len(sys.argv) > 1 else 500
    bad = 0
    for seed in range(total):
        layout = make(seed)
        wrong = faults(layout, layout.text) + faults(layout, layout.commented)
        if wrong:
            bad += 1
            print(seed, seed % len(STYLES), wrong)
    equal = f"{total - bad} of {total}"
    what = f"random layouts in {len(STYLES)} styles, with comments and without, as they were made"
    print(f"{what}: {equal}")
    note(what, equal, "all")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
