"""One station's session: takes a code, asks the room, records, answers. No Qt, no SQL."""

import logging
from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import datetime, timedelta
from functools import partial
from typing import Any, NamedTuple

from station.desk import (
    appearance,
    aside,
    asking,
    by_number,
    common,
    mishaps,
    questions,
    replies,
    steps,
)
from station.desk import draft as drafts
from station.desk.ahead import ThinkingAhead
from station.desk.draft import Draft, OpenQuestion
from station.desk.underway import JobUnderway
from station.desk.wrong_pins import WrongPins, keep_wrong_pins, read_wrong_pins
from station.ledger.faults import Fault
from station.ledger.ledger import Ledger, Recorded
from station.ledger.numbers import LEAP
from station.queries.settings import find_shop, find_worker
from station.shop import codes, lengths
from station.shop.acts import (
    Act,
    Answer,
    Args,
    TakeBack,
    add_known,
    ask_approval,
    good,
    known_of,
    refuse,
)
from station.shop.areas import BUTTON, SUPERVISED, find_first
from station.shop.cards import BUTTONS, BY_NUMBER, IN_MENU
from station.shop.codes import Code, Unread
from station.shop.faces import Face
from station.shop.moves import Move
from station.shop.rooms import (
    Aside,
    Begin,
    Do,
    DoFileJob,
    Dropped,
    FileJob,
    Hand,
    Input,
    LongJob,
    Number,
    Point,
    Room,
    Took,
    Typed,
    Weighed,
)
from station.shop.scale import read_weight
from station.shop.views import View
from station.shop.words import Say, say

log = logging.getLogger(__name__)
PASSES = 15  # signs of a time, up to its ten minutes: then it is another time to think about
LEFT_ALONE = timedelta(minutes=10)  # then an opened office asks for the PIN again
PASSING = ("menu", "find")  # what is shown beside the work and asks for nothing
NOTHING = Answer(tone="good", said=Say(), refused=True)


class Given(NamedTuple):
    """What became of one input: the answer, the entry's id (None: none) and its moves.

    `certain`: it only counts once the shop has said so.
    """

    answer: Answer
    entry: str | None = None
    moves: tuple[Move, ...] = ()
    certain: bool = False


class Desk:
    """A station at work.

    `rooms` are the work areas by name, `anywhere` the room whose acts belong to none;
    `clock` gives the shop's time as text, `ids` a new random act id; `printer` is handed
    every paper that an answer asks for, as (kind, id); `file_jobs` do what needs files, by the
    type of what is asked;
    `begin` begins what takes long; `in_slices`: a screen must go on while it is made ready.
    `own` begins the names of what it keeps for itself, where two work on one ledger.
    """

    def __init__(
        self,
        ledger: Ledger,
        rooms: Mapping[str, Room],
        *,
        hand: Hand[Any],
        clock: Callable[[], str],
        ids: Callable[[], str],
        printer: Callable[[str, str], None] = lambda _kind, _id: None,
        file_jobs: Mapping[type, DoFileJob] = {},
        begin: Begin | None = None,
        in_slices: bool = False,
        own: str = "",
    ) -> None:
        self.ledger, self._own = ledger, own
        self.rooms = rooms
        self.clock = clock
        self.ids = ids
        self.printer, self.file_jobs, self.begin = printer, file_jobs, begin
        self.underway: JobUnderway | None = None  # what runs beside the screen
        self.ahead = ThinkingAhead(begin, at_once=not in_slices)  # what the room thinks about
        self.unlocked = ""  # the supervisor who has opened a supervised area on this screen
        self.language = ""  # of this screen; empty: English
        self.listed = 0  # rows that a long list has on this screen; 0: as on the smallest
        self._used = ""  # when the last input came: an office left alone locks itself
        kept = drafts.read(ledger.draft(own), rooms)
        self.resumed = bool(kept and kept.hand.area == hand.area and _something(kept))
        self._draft = _begin_with(kept, hand, ledger.view, resumed=self.resumed)
        leaps = ledger.local(LEAP) or ""  # what was taken before a backup may be used up since
        self._spare = {k: n for k, n in self._draft.spare if k not in leaps.split(",")}
        self._code = ""  # the text of the input being taken
        self.recorded: Given | None = None  # what the newest input has recorded so far

    @property
    def hand(self) -> Hand[Any]:
        """The work in hand."""
        return self._draft.hand

    def at(self, *, area: str = "", router: str | None = None, bench: str | None = None) -> None:
        """Moves this station; what is not said stays. The work in hand is put down.

        What was counted in it is there again when its area is.
        """
        draft = aside.lay_aside(self._draft, self.ledger.view, comes_back=True)
        hand = self.hand.empty()
        area = area or hand.area
        moved = replace(
            hand,
            area=area,
            work=self.rooms[area].work(),
            router=hand.router if router is None else router,
            bench=hand.bench if bench is None else bench,
        )
        draft = replace(draft.with_hand(moved), counted_by=())
        found = aside.find_for_area(draft, area)
        self._keep(aside.take_up(draft, found) if found else draft)

    @property
    def last(self) -> str:
        """The id of this station's newest entry, which undo would take back; or nothing."""
        return self._draft.last

    def greeting(self) -> Answer:
        """The first words on the strip: what was left in hand, or how to begin."""
        counted = aside.tell_counted(self.hand, self.ledger.view)
        told = aside.tell_by(counted, self._draft.counted_by) if counted else counted
        return common.greeting(self._draft, told, resumed=self.resumed)

    def sign_in(self, worker: str) -> None:
        """Who works here from now on; the work in hand stays."""
        self._keep(replace(self._draft, hand=replace(self.hand, worker=worker)))

    def take(self, text: str) -> Given:
        """One input as it came from scanner, touch or keyboard. Never raises on content."""
        self._code = text
        given = self._still(self._safely(lambda: self._dispatch(self._understand(text))))
        self.look_ahead()
        return given

    def touch(self, x_mm: float, y_mm: float, near_mm: float = 0.0) -> Given:
        """A touch on the drawn sheet, and how far a finger reaches there."""
        self._code = ""
        return self._still(self._safely(lambda: self._dispatch(Point(x_mm, y_mm, near_mm))))

    def drop(self, paths: tuple[str, ...]) -> Given:
        """Files dropped on the window; "" stands for what is no file of this PC."""
        self._code = ""
        return self._still(self._safely(lambda: self._dispatch(Dropped(paths))))

    def look_ahead(self) -> bool:
        """Has the room think about the shop as it is now; True where it has a new thought.

        Never raises: what was answered and recorded before counts, thought about or not.
        """
        hand, think = self.hand, self.rooms[self.hand.area].think
        now, request = self.clock(), None
        if think and hand.worker:
            request = partial(think, replace(hand, now=now), self.ledger.view)
        try:
            return self.ahead.look(hand.area, (self.ledger.count(), now[:PASSES]), request)
        except Exception:
            log.exception("thinking ahead at %s", hand.area)
            return False

    def has_ended(self) -> bool:
        """Whether the work beside the screen is over; an open question is answered first."""
        over = self.underway is not None and self.underway.running.is_over()
        return over and not self._draft.waiting

    def went_on(self) -> Given:
        """What came of the work beside the screen. Raises RuntimeError when it broke off."""
        under, self.underway = self.underway, None
        assert under is not None
        outcome = under.outcome()
        return self._safely(lambda: self._carry_out(under.long.end(self.hand, outcome)))

    def _still(self, given: Given) -> Given:
        """The work beside the screen ends with the work in hand that it was begun for."""
        under = self.underway
        if under is None or under.is_wanted(self.hand):
            return given
        self.underway = None
        return given._replace(answer=under.dropped(given.answer))

    def _safely(self, handle: Callable[[], Given]) -> Given:
        """What the surroundings refuse (a full disk, say) is said; the hand stays as it was.

        Once an act is recorded it counts, whatever fails after it.
        """
        self.recorded = None
        before = self._draft, self.unlocked
        try:
            self._set_now()
            self._used = self.hand.now
            before = self._draft, self.unlocked
            return handle()
        except Fault as fault:
            if done := self.recorded:
                log.exception("after %s was recorded", done.entry)
                return done._replace(answer=mishaps.tell_stopped(done.answer))
            self._draft, self.unlocked = before
            return Given(
                refuse(say("{what}", what=str(fault)), say("The work in hand stays as it was."))
            )

    def face(self) -> Face:
        """What the screen shows now."""
        self._set_now()
        title, view = self.rooms[self.hand.area].title, self.ledger.view
        if self._draft.waiting:
            return asking.question(self.hand, self._draft.waiting, view, title)
        if not self.hand.worker and self.hand.area != "today":
            return asking.nobody(view, title)
        if common.elsewhere(self.hand):
            return self.rooms["anywhere"].screen(self.hand, view)
        face = self.rooms[self.hand.area].screen(self.hand, view)
        return replace(face, presses=(*face.presses, asking.MORE))

    def broken_face(self) -> Face:
        """What is shown while `face` raises: a mistake of ours."""
        return mishaps.make_face(self.rooms[self.hand.area].title)

    @property
    def hand_told(self) -> Hand[Any]:
        """The work in hand as it may be written down: without the digits of a PIN."""
        return replace(self.hand, digits="") if self.secret else self.hand

    def question(self) -> str:
        """What is asked back now: sure, supervisor, pin, reason, or nothing."""
        return self._draft.waiting.asks if self._draft.waiting else ""

    @property
    def secret(self) -> bool:
        """Whether a PIN is asked for: what is typed now is shown and written nowhere."""
        return self.question() in common.SECRET

    def _set_now(self) -> None:
        now, shop = self.clock(), find_shop(self.ledger.view)
        lengths.use_units(shop.units, fractions=shop.fractions)
        if self.unlocked and self._used and _gone(self._used, now) >= LEFT_ALONE:
            self.unlocked = ""
        doing = self.underway.doing() if self.underway else self.ahead.doing()
        hand = replace(
            self.hand,
            now=now,
            opened=self.unlocked,
            doing=doing,
            thought=self.ahead.thought,
            listed=self.listed,
            language=self.language,
        )
        self._draft = replace(self._draft, hand=hand)

    def _understand(self, text: str) -> Input | Unread:
        """A number when it can only be one, else a code."""
        number = Number(text.strip())
        if number.reading is not None or number.length is not None or number.whole is not None:
            return number
        if (grams := read_weight(text)) is not None:
            return Weighed(grams)
        if self.hand.work.takes_text and "-" in text:  # a code of ours is printed without one
            return Typed(text)
        return codes.read(text, find_shop(self.ledger.view).prefix)

    def _dispatch(self, given: Input | Unread) -> Given:
        if not isinstance(given, Code) and self._draft.waiting is None:
            given = by_number.read_number(self.hand, given, self.ledger.view) or given
        badge = isinstance(given, Code) and given.kind == "worker"
        if self.hand.worker and not badge and not find_worker(self.ledger.view, self.hand.worker):
            gone = replies.tell_gone(self.hand.worker)
            return self._hold(common.Replied(common.sign_out(self._draft).draft, gone))
        if isinstance(given, Unread):
            typed = given.why == "foreign" or self.hand.work.takes_text
            if self.hand.area == "office" and typed and self.hand.worker:
                return self._ask_room(Typed(given.text))
            return Given(replies.unread(given))
        asked = self._draft.waiting
        if asked and (done := self._answer_question(given)):
            return done
        if isinstance(given, Code) and (done := self._common(given)):
            return done
        return self._ask_room(given, asked)

    def _ask_room(self, given: Input, asked: OpenQuestion | None = None) -> Given:
        """The room knows what the input means with the work in hand.

        What means nothing leaves the question that was `asked` as it is.
        """
        if not self.hand.worker:
            return Given(replies.NOBODY)
        for name, hand in self._order(given):
            if done := self._ask(name, hand, given):
                return done
        if isinstance(given, Code) and (hand := self.hand.disarm()) != self.hand:
            self._keep(self._draft.with_hand(hand))
        if asked:
            self._keep(replace(self._draft, waiting=asked))
        return Given(replies.meaningless(given, self.hand))

    def _ask(self, room: str, hand: Hand[Any], given: Input) -> Given | None:
        """What one room makes of an input with this work in hand; None: nothing."""
        result: Do | Took | LongJob | FileJob | None
        result = self.rooms[room].handle_input(hand, given, self.ledger.view)
        while isinstance(result, FileJob):
            result = self.file_jobs[type(result.request)](result.request, result.hand)
        if isinstance(result, LongJob):
            return self._begin(result)
        return self._carry_out(result) if result else None

    def _carry_out(self, result: Do | Took) -> Given:
        """Does what a room or a job asks for, or holds the hand that it gives."""
        if isinstance(result, Do):
            return self._do(result)
        return self._take(result)

    def _take(self, took: Took) -> Given:
        """Holds the hand that a room gives; what was counted before in this work comes back."""
        view = self.ledger.view
        found = aside.find_for_hand(self._draft, took.hand, view)
        draft, answer = aside.note_counted(self._draft, took.hand, view), took.answer
        if found and not answer.refused:
            draft = aside.take_up(draft, found)
            counted = aside.tell_by(aside.tell_counted(draft.hand, view), found.by)
            answer = replace(answer, do=say("{counted}. Go on from there.", counted=counted))
        self._keep(draft)
        return Given(self._print(answer, recorded=False))

    def _begin(self, long: LongJob) -> Given:
        """Begins work beside the screen; where there is no screen it is done at once."""
        assert self.begin is not None, f"nothing can do {long.request}"
        self.underway = JobUnderway(long, self.begin)
        self._keep(self._draft.with_hand(long.hand))
        return self.went_on() if self.has_ended() else Given(long.begun)

    def _stop(self, under: JobUnderway) -> Given:
        """Stops the work beside the screen; the work in hand stays."""
        under.stop()
        self.underway = None
        return Given(under.long.stopped)

    def _order(self, given: Input) -> tuple[tuple[str, Hand[Any]], ...]:
        """Which rooms are asked in turn, with which hand: a dialogue that is open goes first.

        One that only shows something is left for what the room takes. With free hands a code
        that the room has no use for is a question, which no room is needed for.
        """
        hand, left = self.hand, replace(self.hand, aside=Aside())
        if hand.aside.what in PASSING and not _is_left_alone(hand, given):
            return (("anywhere", hand), (hand.area, left), ("anywhere", left))
        if common.elsewhere(hand):
            return (("anywhere", hand),)
        return ((hand.area, hand), ("anywhere", hand))

    def _common(self, code: Code) -> Given | None:
        """Badges and the buttons that mean the same in every room."""
        card = BY_NUMBER.get(code.number) if code.kind == "button" else None
        name = card.name if card else ""
        if self.underway and name in ("stop_reading", "put_down"):
            return self._stop(self.underway)
        if name == "think" and self.rooms[self.hand.area].think:
            return self._turn_thinking()
        if name.startswith(BUTTON):
            return self._area(name.removeprefix(BUTTON))
        if name == "enter":
            return self._enter()
        if name == "undo":
            return self._undo()
        if name == "put_down" and (done := self._leave_question() or self._put_down(self.hand)):
            return done
        if name == "put_down" and not common.elsewhere(self.hand):
            self._draft = aside.lay_aside(self._draft, self.ledger.view, comes_back=False)
        if name in appearance.SWITCHES:
            return Given(appearance.switched(self.ledger, name))
        counted = aside.tell_counted(self.hand, self.ledger.view)
        held = common.in_every_room(code, name, self._draft, self.ledger.view, counted)
        if code.kind == "worker" or name in ("sign_out", "lock"):
            self.unlocked = ""  # whoever comes finds the office locked
        return self._hold(held) if held else None

    def _turn_thinking(self) -> Given:
        """Stops what the room thinks about beside the screen, or has it think anew."""
        if self.ahead.is_thinking:
            self.ahead.break_off()
            return Given(replies.NO_MORE_THOUGHT)
        self.ahead.forget_state()
        return Given(replies.THOUGHT_ANEW)

    def _hold(self, held: common.Replied) -> Given:
        """Keeps the draft that an input left, and first of all the PINs that were wrong."""
        if held.pins is not None:
            keep_wrong_pins(self.ledger, held.pins)
        self._keep(held.draft)
        return Given(held.answer)

    def _enter(self) -> Given:
        digits = self.hand.digits
        if not digits:
            return Given(refuse(say("No number yet"), say("Scan the digit cards first.")))
        self._draft = replace(self._draft, hand=replace(self.hand, digits=""))
        return self._dispatch(Number(digits))

    def _area(self, area: str) -> Given:
        if area not in self.rooms:
            return Given(refuse(say("There is no work area {area}", area=area)))
        left = self._put_down(replace(self.hand.idle(), doing=None))
        self.at(area=area)
        said = say("Here now: {area}", area=self.rooms[area].title)
        if back := aside.tell_counted(self.hand, self.ledger.view):
            counted = aside.tell_by(back, self._draft.counted_by)
            return Given(good(said, say("{counted}. Go on from there.", counted=counted)))
        if left is None:
            return Given(good(said, find_first(area)))
        return Given(good(said, left.answer.said), left.entry, left.moves)

    def _leave_question(self) -> Given | None:
        """Leaves the question that is open, and the work in hand as it is; None: there is none."""
        if self._draft.waiting is None or common.elsewhere(self.hand):
            return None
        return self._hold(common.leave_question(self._draft))

    def _put_down(self, hand: Hand[Any]) -> Given | None:
        """What the room makes of putting this work down; None: it is just put down."""
        if not hand.worker or common.elsewhere(hand):
            return None
        return self._ask(hand.area, hand, Code("button", BUTTONS["put_down"].number))

    def _undo(self) -> Given:
        """Takes back this station's newest act, if nothing has gone on since."""
        if not self.hand.worker:
            return Given(replies.NOBODY)
        if not self._draft.last:
            return Given(
                refuse(
                    say("There is nothing to take back here"),
                    say("A recount or a correction mends older acts."),
                )
            )
        if first := common.before_undo(self._draft, self.rooms):
            return Given(first)
        past = self.ledger.view.past(self._draft.last)
        do = Do(past.act.subject if past else "", TakeBack(entry=self._draft.last), self.hand)
        opened = self.unlocked and self.hand.area in SUPERVISED
        if past and past.act.args.approved and not opened:
            return self._ask_approval(do)
        return self._take_back(do.subject, do.args)

    def _ask_approval(self, do: Do) -> Given:
        """Asks for a supervisor: what one has approved, nobody else takes back."""
        said = say("A supervisor approved that")
        asked = ask_approval(said)
        question = OpenQuestion(
            do=do, asks="supervisor", code=codes.tidy(self._code), at=self.hand.now,
            said=asked.said, next=asked.do,
        )  # fmt: skip
        return self._ask_back(self._draft, question, Given(asked))

    def _take_back(self, subject: str, args: Args) -> Given:
        """Takes this station's newest act back; the hand is as it was before it."""
        before = self.hand.area
        given = Given(*self.ledger.undo(self._draft.last, self._act(subject, args)))
        if given.entry:
            self.recorded = given
            self._draft = steps.step_back(
                self._draft, self.ledger.view, self._find_own, self.rooms
            )
            do = self._say_back(before)
            given = given._replace(answer=replace(given.answer, do=do))
        self._keep(self._draft)
        return given

    def _find_own(self, key: str) -> str | None:
        """Finds a value that this desk keeps for itself."""
        return self.ledger.local(self._own + key)

    def _say_back(self, before: str) -> Say:
        """Says what is in hand once an act is taken back; `before` is the area until then."""
        if self.hand.area != before:
            return say("Here again: {area}.", area=self.rooms[self.hand.area].title)
        if self.hand.subject or self.hand.has_work:
            return say("What was in hand is there again, as it was.")
        return say("Nothing was in hand then: scan your work.")

    def _do(self, do: Do, asked: OpenQuestion | None = None) -> Given:
        """Runs an act; a question back is kept until it is answered."""
        asked = asked or questions.find_said_again(self._draft, do)
        args = self._complete(do, asked.known if asked else Args())
        act = self._act(do.subject, args)
        depth = self._draft.depth
        after = Draft(
            hand=_kept(do.after),
            last=act.id,
            after=drafts.held(do.after),
            depth=depth + 1,
            counted_by=self._draft.counted_by
            if aside.tell_counted(do.after, self.ledger.view)
            else (),
            aside=self._draft.aside,
            spare=tuple((k, n) for k, n in self._spare.items() if k not in do.numbers),
        )
        step = {self._own + k: v for k, v in steps.lay_step(depth, act.id, self.hand).items()}
        recorded = self.ledger.record(act, drafts.write(after), step, self._own)
        if recorded.entry:
            self.recorded = Given(*recorded)
        then = asked.then if asked else None
        given = self._settle(do, recorded, after, known_of(args), then)
        if not (given.entry and then):
            return given
        self._set_now()  # the hand that is kept bears no time
        gone_on = self._do(then)
        return gone_on._replace(moves=(*given.moves, *gone_on.moves))

    def _complete(self, do: Do, known: Args) -> Args:
        """The arguments of an act with all that the desk adds to them."""
        args = add_known(do.args, known)
        has = known_of(args)
        if self.unlocked and self.hand.area in SUPERVISED and not has.approved:
            args = add_known(args, Args(approved=self.unlocked))
        if do.numbers and not has.numbers:
            numbers = {kind: self._number(kind) for kind in do.numbers}
            args = add_known(args, Args(numbers=numbers))
        return args

    def _settle(self, do: Do, done: Recorded, after: Draft, known: Args, then: Do | None) -> Given:
        """What the desk holds after an act: the new hand, a question, or what it held."""
        answer = done.answer
        if done.entry:
            self._draft = after
            for kind in do.numbers:
                self._spare.pop(kind, None)
            return Given(*done)._replace(answer=self._print(answer, recorded=True))
        draft = self._draft.with_hand(do.find_hand_after(answer, self.hand))
        if answer.asks:
            question = OpenQuestion(
                do=do,
                asks=answer.asks,
                code=codes.tidy(self._code),
                known=known,
                at=self.hand.now,
                said=answer.said,
                next=answer.do,
                then=then,
                uses=answer.uses,
            )
            return self._ask_back(draft, question, Given(*done))
        self._keep(draft)
        return Given(*done)

    def _ask_back(self, draft: Draft, question: OpenQuestion, given: Given) -> Given:
        """Keeps a question open; a supervisor who is signed in is not asked who it is."""
        question = questions.ask_signed_in(question, self.hand.worker, self.ledger.view)
        self._keep(replace(draft, waiting=question))
        return given._replace(answer=replace(given.answer, do=question.next))

    def _number(self, kind: str) -> str:
        """A new number; one that a refused act did not use comes first."""
        if kind not in self._spare:
            self._spare[kind] = self.ledger.take_number(kind)
        return self._spare[kind]

    def _print(self, answer: Answer, *, recorded: bool) -> Answer:
        """Hands over every paper that an answer asks for; what is not made is said in it."""
        failed: dict[mishaps.Paper, str] = {}
        for kind, name in answer.prints:
            try:
                self.printer(kind, name)
            except Exception as error:  # a paper is no reason to doubt what was recorded
                log.exception("paper %s %s", kind, name)
                failed[kind, name] = (error.strerror or "") if isinstance(error, OSError) else ""
        return mishaps.tell_not_printed(answer, failed, recorded=recorded) if failed else answer

    def _act(self, subject: str, args: Args) -> Act[Any]:
        return Act(
            id=self.ids(),
            kind=args.kind,
            at=self.hand.now,
            worker=self.hand.worker,
            station=self.hand.station,
            subject=subject,
            args=args,
        )

    def _answer_question(self, given: Input) -> Given | None:
        """An input while a question is open. None: it is no answer, and means itself."""
        code = codes.tidy(self._code)
        view, pins = self.ledger.view, read_wrong_pins(self.ledger)
        done = questions.answered(self._draft, given, code, view, pins)
        if isinstance(done, questions.Again):
            if done.approver:
                self.unlocked = done.approver if self.hand.area in SUPERVISED else ""
                keep_wrong_pins(self.ledger, WrongPins())
            self._draft = replace(self._draft, waiting=None)
            do = done.waiting.do
            if isinstance(do.args, TakeBack):
                return self._take_back(do.subject, add_known(do.args, done.waiting.known))
            return self._do(do, done.waiting)
        if done:
            return self._hold(done)
        self._draft = replace(self._draft, waiting=questions.stands(self._draft.waiting, given))
        return None

    def _keep(self, draft: Draft) -> None:
        """Holds the draft, and writes it down first when it differs from what is written."""
        secret = draft.waiting is not None and draft.waiting.asks in common.SECRET
        hand = replace(draft.hand, digits="") if secret else draft.hand
        spare = tuple(self._spare.items())
        text = drafts.write(replace(draft, hand=_kept(hand), spare=spare))
        if text != self.ledger.draft(self._own):
            self.ledger.keep(text, self._own)
        self._draft = draft


def _begin_with(kept: Draft | None, hand: Hand[Any], view: View, *, resumed: bool) -> Draft:
    """The draft that a station begins with: as it was kept, or with another hand.

    What was counted in another area is laid aside there, and told where it comes back.
    """
    if kept is None:
        return Draft(hand=hand)
    if resumed:
        return kept
    left = aside.lay_aside(kept, view, comes_back=True)
    begun = replace(left.with_hand(hand), counted_by=())
    found = aside.find_for_area(begun, hand.area)
    return aside.take_up(begun, found) if found else begun


def _is_left_alone(hand: Hand[Any], given: Input) -> bool:
    """Says whether it is a button that means nothing to the room while the menu is open."""
    if hand.aside.what != "menu" or not isinstance(given, Code) or given.kind != "button":
        return False
    card = BY_NUMBER.get(given.number)
    return card is None or card.name not in IN_MENU.get(hand.area, ())


def _gone(since: str, now: str) -> timedelta:
    """The time between two times of the shop's clock."""
    return datetime.fromisoformat(now) - datetime.fromisoformat(since)


def _kept(hand: Hand[Any]) -> Hand[Any]:
    """The hand without what holds for this moment only."""
    return replace(hand, now="", opened="", doing=None, thought=None, listed=0, language="")


def _something(draft: Draft) -> bool:
    """Whether a kept draft holds work worth going on with."""
    return bool(draft.hand.subject or draft.hand.has_work or draft.waiting) or common.elsewhere(
        draft.hand
    )
