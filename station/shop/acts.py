"""What a person does (an act) and what the rules say to it (an answer)."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from station.shop.facts import Fact
from station.shop.moves import Move
from station.shop.words import Say

Tone = Literal["good", "attention", "stop"]
Asks = Literal["", "sure", "supervisor", "reason", "new_pin"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Act:
    """One thing done by one worker at one station.

    `id` is random and unique; `at` is the shop's clock as ``YYYY-MM-DDTHH:MM:SS``;
    `subject` is what it is about (a batch, a slip, an order …: ``batch/00412``); `args`
    holds plain JSON values.
    """

    id: str
    kind: str
    at: str
    worker: str = ""
    station: str = ""
    subject: str = ""
    args: Mapping[str, object] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What is said, what to do now, and the effects.

    Moves and facts are recorded whatever the tone, unless `refused`: a refusal records
    nothing. `asks` names what would turn a refusal into a yes: ``sure`` (scan it again),
    ``supervisor`` (badge and PIN), ``reason`` (a reason card), ``new_pin`` (a PIN, twice).
    `certain`: two stations must not both do it. ``told``: the strip waits for the shop's
    word; ``needed``: without the shop it is refused.
    """

    tone: Tone
    said: Say
    do: Say = Say()
    moves: tuple[Move, ...] = ()
    sets: tuple[Fact, ...] = ()
    refused: bool = False
    asks: Asks = ""
    prints: tuple[tuple[str, str], ...] = ()  # papers to print: ("traveller", "00412")
    certain: Literal["", "told", "needed"] = ""


def good(
    said: Say,
    do: Say = Say(),
    *,
    moves: tuple[Move, ...] = (),
    sets: tuple[Fact, ...] = (),
    prints: tuple[tuple[str, str], ...] = (),
) -> Answer:
    """Done, and nothing to worry about."""
    return Answer(tone="good", said=said, do=do, moves=moves, sets=sets, prints=prints)


def attention(
    said: Say,
    do: Say = Say(),
    *,
    moves: tuple[Move, ...] = (),
    sets: tuple[Fact, ...] = (),
    prints: tuple[tuple[str, str], ...] = (),
) -> Answer:
    """Done, and somebody should look."""
    return Answer(tone="attention", said=said, do=do, moves=moves, sets=sets, prints=prints)


def ask(said: Say, do: Say, asks: Asks) -> Answer:
    """Not done yet: done when the person answers what is asked."""
    tone: Tone = "attention" if asks in ("sure", "new_pin") else "stop"
    return Answer(tone=tone, said=said, do=do, refused=True, asks=asks)


def refuse(said: Say, do: Say = Say()) -> Answer:
    """Not done, with the reason and the way on."""
    return Answer(tone="stop", said=said, do=do, refused=True)


def notice(said: Say, do: Say = Say()) -> Answer:
    """Nothing to record, but not wrong: already done, or only to know."""
    return Answer(tone="attention", said=said, do=do, refused=True)


def new_number(act: Act, kind: str) -> str:
    """The number that the desk took for this act, of one kind of code."""
    numbers = act.args.get("numbers")
    assert isinstance(numbers, Mapping), f"{act.kind} was not given numbers"
    return str(numbers[kind])
