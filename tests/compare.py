"""``python -m tests.compare OLD NEW [--listed FILE] [--out FOLDER]``: what looks different.

OLD and NEW are folders that ``station tour`` has left. Every picture is compared pixel by pixel,
every paper page by page as it would be printed. For each that differs, its name, the share of
its pixels and the box that holds them are printed, and a picture with both side by side (old,
new, and new with what differs marked) is written to FOLDER, ``NEW/compared`` unless told.

FILE lists what may differ, a line each: the name, a space, and the reason. What is not listed
there, or is missing on one side, makes the exit code 1; so does a line that names nothing that
differs, for the list must stay true.
"""

import argparse
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

import numpy as np
import pypdfium2
from PIL import Image, ImageDraw

DOTS = 1.5  # pixels for each point of a paper
GAP = 12  # pixels between two pictures side by side


class Difference(NamedTuple):
    """What differs in one picture or page; `box` is left, top, right, bottom in pixels."""

    name: str
    what: str
    share: float = 0.0
    box: tuple[int, int, int, int] = (0, 0, 0, 0)

    def __str__(self) -> str:
        if not self.share:
            return f"{self.name}: {self.what}"
        return f"{self.name}: {self.share:.3%} of the pixels, within {self.box}"


def pictures(file: Path) -> Iterator[tuple[str, Image.Image]]:
    """A picture file as it is, or a paper's pages, each with what is added to the name."""
    if file.suffix == ".png":
        with Image.open(file) as picture:
            yield "", picture.convert("RGB")
        return
    with pypdfium2.PdfDocument(file) as paper:
        for number in range(len(paper)):
            yield f" page {number + 1}", paper[number].render(scale=DOTS).to_pil().convert("RGB")


def unlike(old: Image.Image, new: Image.Image) -> tuple[float, tuple[int, int, int, int]] | None:
    """The share of pixels that differ and the box around them; None where all are equal."""
    if old.size != new.size:
        return 1.0, (0, 0, *new.size)
    differs = (np.asarray(old) != np.asarray(new)).any(axis=2)
    if not differs.any():
        return None
    down, along = np.nonzero(differs.any(axis=1))[0], np.nonzero(differs.any(axis=0))[0]
    box = int(along[0]), int(down[0]), int(along[-1]) + 1, int(down[-1]) + 1
    return float(differs.mean()), box


def beside(old: Image.Image, new: Image.Image, box: tuple[int, int, int, int]) -> Image.Image:
    """Old, new, and new again with a frame around what differs."""
    marked = new.copy()
    left, top, right, bottom = box
    ImageDraw.Draw(marked).rectangle((left - 3, top - 3, right + 2, bottom + 2), outline="red",
                                     width=3)  # fmt: skip
    whole = Image.new("RGB", (old.width + 2 * new.width + 2 * GAP, max(old.height, new.height)))
    for x, picture in zip((0, old.width + GAP, old.width + new.width + 2 * GAP),
                          (old, new, marked), strict=True):  # fmt: skip
        whole.paste(picture, (x, 0))
    return whole


def names(folder: Path) -> set[str]:
    """The pictures and papers below a folder."""
    found = (f for f in folder.rglob("*") if f.suffix in (".png", ".pdf"))
    return {f.relative_to(folder).as_posix() for f in found if "compared" not in f.parts}


def compare(old: Path, new: Path, out: Path) -> Iterator[Difference]:
    """Everything that differs between two folders; side by side pictures go to `out`."""
    for name in sorted(names(old) | names(new)):
        if not (new / name).exists() or not (old / name).exists():
            yield Difference(name, f"only in {old if (old / name).exists() else new}")
        elif (old / name).read_bytes() != (new / name).read_bytes():
            yield from _page_by_page(name, old / name, new / name, out)


def _page_by_page(name: str, old: Path, new: Path, out: Path) -> Iterator[Difference]:
    before, after = list(pictures(old)), list(pictures(new))
    if len(before) != len(after):
        yield Difference(name, f"{len(before)} pages were {len(after)}")
    for (page, one), (_, two) in zip(before, after, strict=False):
        if found := unlike(one, two):
            out.mkdir(parents=True, exist_ok=True)
            file = (name + page).replace("/", "-").replace(" ", "-").removesuffix(".png")
            beside(one, two, found[1]).save(out / f"{file}.png")
            yield Difference(name, f"differs{page}", *found)


def listed(file: Path | None) -> dict[str, str]:
    """What may differ, and why."""
    lines = file.read_text(encoding="utf-8").splitlines() if file else []
    parts = (line.partition(" ") for line in lines if line.strip() and not line.startswith("#"))
    return {name: reason.strip() for name, _, reason in parts}


def main() -> int:
    """Compares, prints what differs, and ends with 1 where that is not listed."""
    given = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    given.add_argument("old", type=Path)
    given.add_argument("new", type=Path)
    given.add_argument("--listed", type=Path, help="what may differ: a name and a reason a line")
    given.add_argument("--out", type=Path, help="where the pictures side by side go")
    args = given.parse_args()
    may = listed(args.listed)
    found = list(compare(args.old, args.new, args.out or args.new / "compared"))
    for one in found:
        print(f"{one}  (listed: {may[one.name]})" if one.name in may else one)
    idle = may.keys() - {one.name for one in found}
    for name in sorted(idle):
        print(f"{name}: listed, but equal")
    wrong = [one for one in found if one.name not in may]
    print(f"{len(names(args.old))} compared, {len({o.name for o in found})} differ, "
          f"{len({o.name for o in wrong})} of them not listed")  # fmt: skip
    return 1 if wrong or idle else 0


if __name__ == "__main__":
    sys.exit(main())
