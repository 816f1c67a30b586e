"""What a person does (an act) and what the rules say to it (an answer).

The arguments of an act are kept for ever: each kind of act has a frozen type of its own, under a
kind that is written down there. A type may grow by fields that have a default; a kind, a field's
name and what it holds never change (`tests/shop/kinds.txt`).
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import ClassVar, Generic, Literal, TypeVar

import msgspec

from station.shop.facts import Fact
from station.shop.moves import Move
from station.shop.readings import Reading
from station.shop.words import Say, say

Tone = Literal["good", "ask", "attention", "stop"]
Asks = Literal["", "sure", "supervisor", "reason", "new_pin"]


class Args(msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True):
    """The arguments of an act; each kind of act writes its own down, with its kind.

    What stands here the desk adds to any act: that the person is `sure`, the supervisor who
    `approved` it, the `reason` that was scanned, and new `numbers` by the kind of code.
    """

    kind: ClassVar[str] = ""

    sure: bool = False
    approved: str = ""
    reason: str = ""
    numbers: dict[str, str] = {}


class UnreadArgs(Args, frozen=True, kw_only=True):
    """Arguments of a kind that this program does not know, or that do not fit their kind."""

    kept: Mapping[str, object] = {}


class TakeBack(Args, frozen=True, kw_only=True):
    """Takes an entry back."""

    kind: ClassVar[str] = "undo"

    entry: str = ""  # id of its act


class SetPin(Args, frozen=True, kw_only=True):
    """Gives a supervisor a new PIN."""

    kind: ClassVar[str] = "set_pin"

    hash: str = ""  # of the PIN, as argon2 writes it
    # the old one is, and nobody else has one: set by who looks after the shop's first PC
    forgotten: bool = False


A_co = TypeVar("A_co", covariant=True)
T = TypeVar("T")
G = TypeVar("G", bound=Args)


@dataclass(frozen=True, slots=True, kw_only=True)
class Act(Generic[A_co]):
    """One thing done by one worker at one station.

    `id` is random and unique; `at` is the shop's clock as ``YYYY-MM-DDTHH:MM:SS``;
    `subject` is what it is about (a batch, a slip, an order …: ``batch/00412``); `args`
    are of the type that its `kind` has.
    """

    id: str
    kind: str
    at: str
    worker: str = ""
    station: str = ""
    subject: str = ""
    args: A_co = Args()  # type: ignore[assignment] # none of its own

    @property
    def again(self) -> bool:
        """Whether it was done before, and is decided anew on top of what others did."""
        return isinstance(self, ActAgain)


class ActAgain(Act[A_co]):
    """An act that was done before and is decided anew: nobody is there to be asked."""


def with_args(act: Act[object], args: T) -> Act[T]:
    """The same act with other arguments."""
    return Act(
        id=act.id,
        kind=act.kind,
        at=act.at,
        worker=act.worker,
        station=act.station,
        subject=act.subject,
        args=args,
    )


def add_known(args: G, known: Args) -> G:
    """Adds what the desk has found out to the arguments: where it knows something, that counts."""
    found = {n: v for n in _ADDED if (v := getattr(known, n))}
    return msgspec.structs.replace(args, **found)


def known_of(args: Args) -> Args:
    """What the desk adds to any act, as far as these arguments say it."""
    return Args(**{name: getattr(args, name) for name in _ADDED})


def plain_of(args: Args) -> Mapping[str, object]:
    """The arguments as plain JSON values; what stands at its default is left out."""
    plain: Mapping[str, object]
    plain = args.kept if isinstance(args, UnreadArgs) else msgspec.to_builtins(args)
    return plain


_ADDED = ("sure", "approved", "reason", "numbers")


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What is said, what to do now, and the effects.

    Moves and facts are recorded whatever the tone, unless `refused`: a refusal records
    nothing. `asks` names what would turn a refusal into a yes: ``sure`` (scan it again),
    ``supervisor`` (badge and PIN), ``reason`` (a reason card), ``new_pin`` (a PIN, twice).
    `certain`: two stations must not both do it. ``told``: the strip waits for the shop's
    word; ``needed``: without the shop it is refused. `router` cut what is moved, which is
    kept in the sums by hour; empty where it is not known, or where there are several.
    `readings` are what was measured or seen. `uses`: a reason is asked for, of these uses.
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
    router: str = ""
    readings: tuple[Reading, ...] = ()
    uses: tuple[str, ...] = ()


def good(
    said: Say,
    do: Say = Say(),
    *,
    moves: tuple[Move, ...] = (),
    sets: tuple[Fact, ...] = (),
    prints: tuple[tuple[str, str], ...] = (),
    readings: tuple[Reading, ...] = (),
) -> Answer:
    """Done, and nothing to worry about."""
    return Answer(
        tone="good",
        said=said,
        do=do,
        moves=moves,
        sets=sets,
        prints=prints,
        readings=readings,
    )


def attention(
    said: Say,
    do: Say = Say(),
    *,
    moves: tuple[Move, ...] = (),
    sets: tuple[Fact, ...] = (),
    prints: tuple[tuple[str, str], ...] = (),
    readings: tuple[Reading, ...] = (),
) -> Answer:
    """Done, and somebody should look."""
    return Answer(
        tone="attention",
        said=said,
        do=do,
        moves=moves,
        sets=sets,
        prints=prints,
        readings=readings,
    )


def ask(said: Say, do: Say, asks: Asks) -> Answer:
    """Not done yet: done when the person answers what is asked.

    What only a supervisor can overrule is refused to everybody else, and says so by its tone.
    """
    tone: Tone = "stop" if asks == "supervisor" else "ask"
    return Answer(tone=tone, said=said, do=do, refused=True, asks=asks)


BADGE_FIRST = say("Supervisor: scan your badge, then enter your PIN.")


def ask_approval(said: Say) -> Answer:
    """Not done yet: nothing is wrong, and a supervisor has to say yes to it."""
    return Answer(tone="ask", said=said, do=BADGE_FIRST, refused=True, asks="supervisor")


def ask_why(said: Say, use: str) -> Answer:
    """Not done yet: done when a reason of this use is scanned."""
    do = say("Why? Scan or touch a reason.")
    return Answer(tone="ask", said=said, do=do, refused=True, asks="reason", uses=(use,))


def question(said: Say, do: Say) -> Answer:
    """Nothing to record yet: what is scanned, touched or entered next answers it."""
    return Answer(tone="ask", said=said, do=do, refused=True)


def refuse(said: Say, do: Say = Say()) -> Answer:
    """Not done, with the reason and the way on."""
    return Answer(tone="stop", said=said, do=do, refused=True)


def calm(said: Say, do: Say = Say()) -> Answer:
    """Nothing to record, for it is so already, and all is well."""
    return Answer(tone="good", said=said, do=do, refused=True)


def notice(said: Say, do: Say = Say()) -> Answer:
    """Nothing to record, but not wrong: already done, or only to know."""
    return Answer(tone="attention", said=said, do=do, refused=True)


def new_number(act: Act[Args], kind: str) -> str:
    """The number that the desk took for this act, of one kind of code."""
    assert act.args.numbers, f"{act.kind} was not given numbers"
    return act.args.numbers[kind]
