"""``station pack``: the cheapest way to pack and send what a file describes, as JSON."""

import argparse
import json
from pathlib import Path
from typing import Annotated, Literal

import msgspec

from station.commands.common import CommandError, read_plain_file
from station.packs.messages import PackMailer, PackPart
from station.packs.ship import (
    ShipContainer,
    ShipPack,
    ShipPart,
    ShipProblem,
    ShipService,
    find_cheapest,
    find_lower_bound,
)

Json = dict[str, object]
Above = Annotated[float, msgspec.Meta(gt=0)]
NotBelow = Annotated[float, msgspec.Meta(ge=0)]


class PartOfProblem(msgspec.Struct):
    """Pieces of one part: mm, g of one, how many; `small`: it must be protected."""

    part: str
    length: Above
    width: Above
    thickness: Above
    mass: NotBelow
    count: Annotated[int, msgspec.Meta(ge=0)]
    small: bool = False


class ContainerOfProblem(msgspec.Struct):
    """A container: inside mm lying flat and empty, what it closes over, g, price."""

    container: str
    kind: Literal["mailer", "sleeve", "box"]
    length: Above
    width: Above
    thickness: Above
    mass: NotBelow
    price: NotBelow
    flap: NotBelow | None = 0.0
    allowance: NotBelow | None = 0.0


class StepOfService(msgspec.Struct):
    """A price for all that is billed up to so many g."""

    to_g: float
    price: float


class ServiceOfProblem(msgspec.Struct):
    """A service: limits in mm (None: none), cm³ for a kg, its steps."""

    service: str
    steps: list[StepOfService]
    length: float | None = None
    width: float | None = None
    thickness: float | None = None
    length_girth: float | None = None
    divisor: Above | None = None


class PackingProblem(msgspec.Struct):
    """What is to be packed, in what, sent how."""

    parts: list[PartOfProblem]
    containers: list[ContainerOfProblem]
    services: list[ServiceOfProblem]
    max_packs: Annotated[int, msgspec.Meta(ge=1, le=2)] = 1


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the arguments of the command."""
    parser.add_argument("--json", action="store_true", help="the only form")
    parser.add_argument("--problem", type=Path, required=True, help="one problem, or a list")


def run(options: argparse.Namespace) -> int:
    """Prints an answer for each problem of the file, a line each."""
    for problem in read_problems(options.problem):
        print(json.dumps(solve_problem(problem), ensure_ascii=False), flush=True)
    return 0


def read_problems(path: Path) -> list[PackingProblem]:
    """Reads one problem, or several. Raises CommandError where it is none."""
    try:
        raw = read_plain_file(path)
        if raw.lstrip().startswith(b"["):
            return msgspec.json.decode(raw, type=list[PackingProblem])
        return [msgspec.json.decode(raw, type=PackingProblem)]
    except OSError as error:
        raise CommandError(f"{path} cannot be read: {error.strerror}.") from error
    except msgspec.DecodeError as error:
        raise CommandError(f"{path} is no packing problem: {error}.") from error


def solve_problem(problem: PackingProblem) -> Json:
    """Finds the cheapest packs, as one object."""
    asked = _lay_problem(problem)
    packs = find_cheapest(asked)
    if not packs:
        why = "no container takes the pieces in a stack that may be sent by one of the services"
        if not asked.parts:
            why = "there is nothing to pack"
        return {"cost": None, "packs": [], "why": why}
    thick = {p.part: p.thickness for p in problem.parts}
    return {
        "cost": sum(p.cost for p in packs),
        "lower_bound": find_lower_bound(asked),
        "packs": [_describe_pack(pack, thick) for pack in packs],
    }


def _lay_problem(problem: PackingProblem) -> ShipProblem:
    return ShipProblem(
        parts=tuple(
            ShipPart(PackPart(p.part, p.length, p.width, p.thickness, p.count, p.small), p.mass)
            for p in problem.parts
            if p.count > 0
        ),
        containers=tuple(
            ShipContainer(
                PackMailer(
                    c.container, c.length, c.width, c.thickness, c.mass, c.kind, c.flap or 0.0
                ),
                c.allowance or 0.0,
                c.price,
            )
            for c in problem.containers
        ),
        services=tuple(
            ShipService(
                s.service,
                s.length,
                s.width,
                s.thickness,
                s.length_girth,
                s.divisor,
                tuple((step.to_g, step.price) for step in s.steps),
            )
            for s in problem.services
        ),
        most_packs=problem.max_packs,
    )


def _describe_pack(pack: ShipPack, thick: dict[str, float]) -> Json:
    length, width, high = pack.size_mm
    layers, z = [], 0.0
    for layer in pack.layers:
        items = [
            {
                "part": p.part,
                "x": p.x_mm,
                "y": p.y_mm,
                "l": p.length_mm,
                "w": p.width_mm,
                "count": p.pieces,
            }
            for p in layer.piles
        ]
        layers.append({"z": z, "items": items})
        z += max(p.pieces * thick[p.part] for p in layer.piles)
    return {
        "container": pack.container,
        "service": pack.service,
        "length": length,
        "width": width,
        "thickness": high,
        "mass": pack.mass_g,
        "cost": pack.cost,
        "layers": layers,
    }
