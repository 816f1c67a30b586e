"""What a room is: its rules, its dialogue (`handle_input`), what its `screen` shows.

A hand is the work in hand at one station: who works, where, what was picked up and
counted so far. It is plain data, kept through a power cut, and changed only by
`handle_input`.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Any, Generic, NamedTuple, Protocol, Self, TypeVar

from station.shop import lengths
from station.shop.acts import Answer, Args
from station.shop.codes import Code
from station.shop.faces import Face
from station.shop.views import Rules, View
from station.shop.words import Say

LONGEST_MM = 100_000  # a number that is longer is a code that was misread


class Doing(NamedTuple):
    """Work that runs beside the screen: what is being done, and the part of it done, 0 to 1."""

    what: Say
    share: float
    title: Say = Say()  # what it is as a whole
    note: Say = Say()
    stop: Say = Say()  # what the button says that stops it


@dataclass(frozen=True, kw_only=True)
class Work:
    """What a room holds of the work in hand, besides its subject; each room has its own type.

    Every field has a default, which means that nothing is held there. A draft keeps the others
    under their names: a field that is named or written anew reads what older programs kept.
    """

    @classmethod
    def renamed(cls, kept: Mapping[str, Any]) -> Mapping[str, Any]:
        """What an older program kept, under the names and values of today."""
        return kept

    @property
    def takes_text(self) -> bool:
        """Whether a text is asked for now, so that what is no sound code may be one."""
        return False

    @property
    def is_begun(self) -> bool:
        """Whether something is begun, so that the hands are not free."""
        return self != type(self)()

    def disarm(self) -> Self:
        """Gives the work after a refusal: nothing that the next scan or number would go to."""
        return self

    def tell_counted(self, view: View) -> Say:  # noqa: ARG002 a room that counts asks it
        """Tells what was counted so far and is recorded nowhere yet; empty: nothing was."""
        return Say()


@dataclass(frozen=True, kw_only=True)
class Aside:
    """The dialogue that belongs to no room and is open beside the work; the work waits.

    `what` names it, `batch`, `part`, `place` and `subject`, the key of what several parts are of,
    are what was answered so far; `code` is the one whose page is open, `page` the page of a list
    on it, from 0.
    """

    what: str = ""  # empty: none is open
    batch: str = ""
    part: str = ""
    place: str = ""
    subject: str = ""
    code: str = ""
    page: int = 0


W_co = TypeVar("W_co", covariant=True)


@dataclass(frozen=True, kw_only=True)
class Hand(Generic[W_co]):
    """The work in hand at a station.

    `area`, `router`, `bench` say where; `worker` who. `subject` is the id of the batch,
    order or cart in hand (empty: nothing). Everything else that the room needs stands in
    `work`; `aside` is what lies above it. `digits` is a number being put together from digit
    cards. `now` is the shop's clock at this input; `opened` is the
    supervisor who has opened a supervised area on this screen, `doing` what runs beside it,
    `thought` what its room has thought about by itself, `listed` the rows that a long list has on
    this screen (0: as on the smallest), `language` what it speaks (empty: English); none of the
    six is kept in a draft.
    """

    area: str
    work: W_co
    router: str = ""
    facing: str = ""  # the one of several routers looked at; stays when work is put down
    bench: str = ""
    worker: str = ""
    station: str = ""
    subject: str = ""
    aside: Aside = Aside()
    digits: str = ""
    now: str = ""
    opened: str = ""
    listed: int = 0
    language: str = ""
    doing: Doing | None = None
    thought: object = None  # an outcome of `station.jobs.messages`; None: it is not known yet

    @property
    def has_work(self) -> bool:
        """Whether the room holds anything besides the subject."""
        return self.work != type(self.work)()

    @property
    def is_free(self) -> bool:
        """Whether nothing is in hand: a code that the room has no use for is a question."""
        return not self.subject and not (isinstance(self.work, Work) and self.work.is_begun)

    def idle(self) -> "Hand[W_co]":
        """The same subject with no work begun on it, and nothing open beside it."""
        fresh = type(self.work)()
        return replace(self, work=fresh, aside=Aside())

    def disarm(self) -> "Hand[W_co]":
        """The same work, but nothing that the next scan or number would go to."""
        work = self.work.disarm() if isinstance(self.work, Work) else self.work
        return self if work == self.work else replace(self, work=work)

    def empty(self) -> "Hand[W_co]":
        """Nothing in hand; who and where stay."""
        return replace(self.idle(), subject="", digits="")


class Number(NamedTuple):
    """A number that was typed, or put together from digit cards: text as entered."""

    text: str

    @property
    def whole(self) -> int | None:
        """As a count: 0 to 999 999, else None."""
        return int(self.text) if self.text.isdecimal() and len(self.text) <= 6 else None

    @property
    def reading(self) -> float | None:
        """As a reading in mm, point or comma; None when it is no number below 100 000."""
        text = self.text.replace(",", ".")
        body = text.removeprefix("-")
        if not body.replace(".", "", 1).isdecimal() or not body.isascii() or len(body) > 9:
            return None
        return float(text)

    @property
    def length(self) -> float | None:
        """As a length in mm, typed in the shop's unit; None when it is none below 100 m."""
        read = lengths.read(self.text)
        return read if read is not None and abs(read) < LONGEST_MM else None


class Weighed(NamedTuple):
    """What a scale shows, in g: it stands still."""

    grams: float


class Point(NamedTuple):
    """A place on the drawn sheet that was touched, mm from its lower left.

    A finger hits what lies within `near_mm` of it, as closely as the sheet is drawn; 0: not told.
    """

    x_mm: float
    y_mm: float
    near_mm: float = 0.0

    @property
    def place(self) -> tuple[float, float]:
        """Gives x and y."""
        return self.x_mm, self.y_mm


class Typed(NamedTuple):
    """A text that is neither a code nor a number: only a form takes it."""

    text: str


class Dropped(NamedTuple):
    """Files that were dropped on the window, by their paths; "" for what is no file here."""

    paths: tuple[str, ...]


Input = Code | Number | Weighed | Point | Typed | Dropped


class Do(NamedTuple):
    """What `handle_input` asks for: an act, and the hand once it is done.

    Refused or asked back, the hand is the one that is named for it, or stays as it is.
    """

    subject: str
    args: Args
    after: Hand[Any]
    numbers: tuple[str, ...] = ()  # the kinds of new number that it needs, into its `numbers`
    refused: Hand[Any] | None = None  # without what the next button must not use

    @property
    def kind(self) -> str:
        """The kind of act."""
        return self.args.kind

    def find_hand_after(self, answer: Answer, hand: Hand[Any]) -> Hand[Any]:
        """Finds what is in hand once it was not done; a notice changes nothing."""
        wrong = answer.tone == "stop" or bool(answer.asks)
        return self.refused if wrong and self.refused else hand


class Took(NamedTuple):
    """The hand changed and nothing was recorded; the answer tells what was understood."""

    hand: Hand[Any]
    answer: Answer


class FileJob(NamedTuple):
    """What `handle_input` asks for that needs the files of this PC: a copy, a list as CSV.

    `request` is one of `station.shop.file_requests`.
    """

    request: object
    hand: Hand[Any]


class LongJob(NamedTuple):
    """Work that takes long: it runs beside the screen, which stays live.

    `request` is one of `station.jobs.messages`, and so is the outcome that `end` is handed.
    It goes on as long as the hand stays as it is here; `end` says what came of it.
    """

    request: object
    hand: Hand[Any]
    title: Say  # what it is as a whole
    note: Say
    stop: Say  # what the button says that stops it
    begun: Answer
    stopped: Answer
    stages: Mapping[str, Say]  # what is being done, by the name of a stage
    end: Callable[[Hand[Any], object], Do | Took]
    is_over: Callable[[], None] = lambda: None  # called once it runs no more, however it ended


class RunningJob(Protocol):
    """A long job that was begun."""

    def progress(self) -> tuple[str, float]:
        """Tells the stage it is in, and the part done, 0 to 1."""

    def is_over(self) -> bool:
        """Tells whether it has ended, well or not."""

    def outcome(self) -> object:
        """Gives what came of it, once it is over. Raises RuntimeError when it broke off."""

    def stop(self) -> None:
        """Ends it at once; nothing comes of it."""


Begin = Callable[[Any], RunningJob]  # begins what a request of `station.jobs.messages` asks for
# Does what a request of `station.shop.file_requests` asks for, with the hand that asked. What it
# gives may be another FileJob, which goes on.
DoFileJob = Callable[[Any, Hand[Any]], "Do | Took | LongJob | FileJob"]
HandleInput = Callable[[Hand[Any], Input, View], "Do | Took | FileJob | None"]


@dataclass
class RoomMemory:
    """What a room keeps between two thoughts while it is shown; gone with the program.

    `is_time_up` tells that the screen must go on: what is not read by then is read the next time.
    """

    kept: object = None
    is_time_up: Callable[[], bool] = lambda: False


class Room(NamedTuple):
    """A work area. `handle_input` gives None for a code that means nothing in this room.

    `think` gives what the room thinks about by itself while it is shown: a request of
    `station.jobs.messages`, whose outcome its hand holds as `thought`. None: it has to read on.
    """

    title: Say  # over its screen
    rules: Rules
    handle_input: HandleInput
    screen: Callable[[Hand[Any], View], Face]
    work: type[Work]  # what its hand holds; made anew, nothing
    think: Callable[[Hand[Any], View, RoomMemory], object] | None = None
