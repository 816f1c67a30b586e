"""How controllers read where they differ. Needs no numpy: the command line lists the names."""

from __future__ import annotations

from dataclasses import asdict, dataclass, replace


@dataclass(frozen=True)
class Dialect:
    """Tells how a controller reads where controllers differ; the defaults are the report's.

    `dwell_ms`: P of G4 and of cycles is milliseconds. `semicolon`: ``;`` starts a comment.
    `skip_deleted`: lines that start with ``/`` are not run. `peck_back_mm`: how far above
    the last depth G83 comes back, and by how much G73 draws back to break the chip (common
    practice, no source). `return_first`: G98 goes back to where a series of
    cycles began, not to where each one began. `relative_r`: under G91, R counts from the
    height before the cycle. `home_named`: G28 and G30 home the axes on the line alone.
    """

    name: str = "report"
    dwell_ms: bool = False
    semicolon: bool = True
    skip_deleted: bool = True
    peck_back_mm: float = 0.254
    return_first: bool = False
    relative_r: bool = True
    home_named: bool = False


DIALECTS: dict[str, Dialect] = {
    "report": Dialect(),
    "milliseconds": Dialect("milliseconds", dwell_ms=True),
    "no-semicolon": Dialect("no-semicolon", semicolon=False),
    "run-deleted": Dialect("run-deleted", skip_deleted=False),
    "return-first": Dialect("return-first", return_first=True),
    "absolute-r": Dialect("absolute-r", relative_r=False),
    "peck-1mm": Dialect("peck-1mm", peck_back_mm=1.0),
    "home-named": Dialect("home-named", home_named=True),
}


def find_dialect(name: str) -> Dialect:
    """Finds the dialect of that name, or of several joined by ``+``.

    An unknown name is a ValueError with the names there are.
    """
    parts = name.split("+")
    if unknown := next((part for part in parts if part not in DIALECTS), None):
        raise ValueError(f"There is no dialect {unknown}. Take one of: {', '.join(DIALECTS)}.")
    found = Dialect()
    for part in parts:
        own = {k: v for k, v in asdict(DIALECTS[part]).items() if v != getattr(Dialect, k)}
        found = replace(found, **own)
    return replace(found, name=name)


def turn_skipping(name: str) -> str:
    """Gives the name of a dialect that runs the lines which this one skips, and the other way."""
    parts = name.split("+")
    turned = [p for p in parts if p != "run-deleted"]
    return "+".join(turned if len(turned) < len(parts) else [*parts, "run-deleted"]) or "report"
