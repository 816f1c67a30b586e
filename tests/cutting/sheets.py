"""Long cut files as a router runs them, for measuring: pieces, pockets, engraving, holes."""

from __future__ import annotations

import math
import random

HEAD = ["G21 G90 G17", "T1 M6", "S18000 M3", "G0 X0 Y0 Z5"]
LONG, WIDE = 2440, 1220


def sheet(lines: int, seed: int = 1) -> str:
    """A fifth arcs, bare modal lines, feed changes, cycles; pieces with tabs on a grid."""
    rng = random.Random(seed)
    out = list(HEAD)
    pieces = [(x, y) for y in range(60, WIDE - 100, 100) for x in range(60, LONG - 120, 120)]
    every = max(80, lines // (len(pieces) + 1))
    due = every
    while len(out) < lines:
        out += _engraved(rng, rng.randint(20, 60))
        out += _holes(rng)
        if len(out) >= due and pieces:
            out += _piece(*pieces.pop())
            due += every
    return "\n".join(out[:lines]) + "\n"


def _engraved(rng: random.Random, count: int) -> list[str]:
    """Lines and arcs two millimetres deep, from a random place."""
    x, y = rng.uniform(100, LONG - 100), rng.uniform(100, WIDE - 100)
    out = [f"G0 X{x:.4f} Y{y:.4f}", "G1 Z-2 F800"]
    code = ""
    for _ in range(count):
        if rng.random() < 0.1:
            out.append(f"F{rng.randint(2000, 5000)}")
        if rng.random() < 0.25:
            x, y, line = _arc(rng, x, y)
            out.append(line)
            code = "G1 "
        else:
            x = min(max(x + rng.uniform(-20, 20), 20), LONG - 20)
            y = min(max(y + rng.uniform(-20, 20), 20), WIDE - 20)
            out.append(f"{code}X{x:.4f} Y{y:.4f}")
            code = ""
    return [*out, "G0 Z5"]


def _arc(rng: random.Random, x: float, y: float) -> tuple[float, float, str]:
    r, a = rng.uniform(3, 9), rng.uniform(0, math.tau)
    b = a + rng.uniform(0.3, 2)
    i, j = -r * math.cos(a), -r * math.sin(a)
    x2, y2 = x + i + r * math.cos(b), y + j + r * math.sin(b)
    return x2, y2, f"G3 X{x2:.4f} Y{y2:.4f} I{i:.4f} J{j:.4f}"


def _holes(rng: random.Random) -> list[str]:
    if rng.random() < 0.7:
        return []
    x, y = rng.uniform(100, LONG - 100), rng.uniform(100, WIDE - 100)
    more = [f"X{x + 8 * n:.3f}" for n in range(1, rng.randint(3, 6))]
    return [f"G81 X{x:.3f} Y{y:.3f} Z-4 R1 F500", *more, "G80"]


def _piece(x: float, y: float, w: float = 86, h: float = 66, r: float = 8) -> list[str]:
    """A plate with round corners in two laps, the last through it but for two tabs."""
    x2, y2, a, b = x + w, y + h, x + w / 2 - 6, x + w / 2 + 6
    out = [f"G0 X{x + r} Y{y}"]
    for deep in (-3.1, -6.2):
        tab = [f"X{{}}\nZ-4\nX{{}}\nZ{deep}"] if deep < -6 else []
        out += [
            f"G1 Z{deep} F900", "F3000", *[t.format(a, b) for t in tab], f"X{x2 - r}",
            f"G3 X{x2} Y{y + r} I0 J{r}", f"G1 Y{y2 - r}", f"G3 X{x2 - r} Y{y2} I-{r} J0", "G1",
            *[t.format(b, a) for t in tab], f"X{x + r}", f"G3 X{x} Y{y2 - r} I0 J-{r}",
            f"G1 Y{y + r}", f"G3 X{x + r} Y{y} I{r} J0",
        ]  # fmt: skip
    return "\n".join([*out, "G0 Z5"]).split("\n")


def outlines(lines: int) -> str:
    """Nothing but cuts through the sheet: 450 wavy outlines, a tab on each."""
    corners = max(60, lines // 450)
    tab = math.ceil(corners * 18 / 200)  # 18 of 200 mm
    out = [*HEAD, "G1 F3000"]
    for n in range(450):
        cx, cy = 40 + n % 30 * 80, 40 + n // 30 * 80
        ring = [_wavy(cx, cy, k / corners) for k in range(corners + 1)]
        out += [f"G0 {ring[0]}", "G1 Z-6.2", *ring[1 : tab + 1], "Z-4"]
        out += [*ring[tab + 1 : 2 * tab + 1], "Z-6.2", *ring[2 * tab + 1 :], "G0 Z5"]
    return "\n".join(out[:lines]) + "\n"


def _wavy(cx: float, cy: float, t: float) -> str:
    a = math.tau * t
    r = 30 + 2 * math.cos(5 * a)
    return f"X{cx + r * math.cos(a):.4f} Y{cy + r * math.sin(a):.4f}"
