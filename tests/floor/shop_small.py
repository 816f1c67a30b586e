"""A small shop for tests of rooms: five routers, the five cut files of the scenarios.

Routers 1 to 4 are clamped and hold a 6.0 mm bit; router 5 has a vacuum bed and changes
bits itself. Every sheet is 6.5 mm birch, but the frame sides' 9 mm. 40 sheets a lot.
Everything is of our own invention.
"""

from dataclasses import replace

from station.bootstrap import load_rooms
from station.floor.cart.work import CartWork
from station.floor.loading.work import LoadingWork
from station.floor.office.work import OfficeWork
from station.floor.packing.work import PackingWork
from station.floor.plan.work import PlanWork
from station.floor.popping.work import PoppingWork
from station.floor.today.work import TodayWork
from station.floor.trimming.work import TrimmingWork
from station.shop.acts import Act, Answer, Args, add_known
from station.shop.codes import Code
from station.shop.facts import (
    Batch,
    Bed,
    Bit,
    BitUse,
    Cart,
    CutFile,
    Fact,
    Lot,
    Mailer,
    Part,
    Placed,
    Product,
    RackPlace,
    Revision,
    Router,
    Shape,
    Shop,
    Size,
    Slip,
    Worker,
)
from station.shop.first_facts import ISSUE, first_materials, first_reasons
from station.shop.moves import SHEET, Move, move
from station.shop.rooms import Do, Hand, HandleInput, Input, Number, Took
from station.shop.views import Rules
from tests.fakes import FakeView
from tests.touch import touch

DAY = "2026-11-25"
COMB, SHUTTLE, SPACER, GAUGE, FRAME = "014", "021", "032", "045", "051"
COMBS, SHUTTLES, SPACERS, GAUGES, FRAMES = "008", "009", "011", "012", "015"

# cut file, its name and words, part, name, words, rack place, box in mm, along, across,
# minutes a sheet, material, metres of cut a sheet
_FILES = (
    (COMBS, "HC300-SET", "Heddle combs 300", COMB, "HC-300", "Heddle comb 300", "C 14",
     (300.0, 120.0), 6, 4, 22.0, "1", 60.0),
    (SHUTTLES, "ST200-SET", "Stick shuttles 200", SHUTTLE, "ST-200", "Stick shuttle 200",
     "A 03", (200.0, 40.0), 8, 12, 20.0, "1", 55.0),
    (SPACERS, "WS090-SET", "Warp spacers 90", SPACER, "WS-90", "Warp spacer 90", "B 02",
     (90.0, 20.0), 20, 12, 12.0, "1", 70.0),
    (GAUGES, "SG010-SET", "Sett gauges 10", GAUGE, "SG-10", "Sett gauge 10", "B 07",
     (100.0, 60.0), 16, 10, 18.0, "1", 65.0),
    (FRAMES, "FS600-SET", "Frame sides 600", FRAME, "FS-600", "Frame side 600", "D 01",
     (560.0, 50.0), 4, 8, 41.0, "2", 80.0),
)  # fmt: skip


def _shape(size: tuple[float, float]) -> Shape:
    """A rectangle with two tabs, at the middle of its long edges."""
    x, y = size
    return Shape(outline=((0.0, 0.0), (x, 0.0), (x, y), (0.0, y)), tabs=((x / 2, 0.0), (x / 2, y)))


def _files() -> list[Fact]:
    facts: list[Fact] = []
    for (number, name, words, part, part_name, part_words, place, size, along, across, minutes,
         material, metres) in _FILES:  # fmt: skip
        shape = _shape(size)
        facts += [
            Part(
                id=part, name=part_name, words=part_words, rack=part, mark=20, shape=shape,
                mass_g=60.0, thickness_mm=9.0 if material == "2" else 6.5,
                small=size[0] < 150,
                sizes=(Size(name="A along", nominal_mm=size[0], low_mm=size[0] - 0.3,
                            high_mm=size[0] + 0.3),),
            ),
            RackPlace(id=part, name=place, part=part),
            CutFile(id=number, name=name, words=words, approved="C"),
            Revision(
                id=f"{number}.C", cut_file=number, letter="C", material=material, minutes=minutes,
                shapes=((part, shape),), placed=_grid(part, size, along, across),
                bits=(BitUse(number=1, diameter_mm=6.0, cut_mm=metres * 1000),),
                hold_downs=((100.0, 10.0), (2340.0, 1210.0)),
            ),
        ]  # fmt: skip
    return facts


def _grid(part: str, size: tuple[float, float], along: int, across: int) -> tuple[Placed, ...]:
    """Pieces in rows and columns, spread over the sheet."""
    step_x, step_y = 2400.0 / along, 1180.0 / across
    return tuple(
        Placed(part=part, x_mm=20 + column * step_x, y_mm=20 + row * step_y)
        for row in range(across)
        for column in range(along)
    )


def _machines() -> list[Fact]:
    facts: list[Fact] = []
    for n in "12345":
        vacuum = n == "5"
        bits = ((1, "15"), (2, "16")) if vacuum else ((0, f"1{n}"),)
        facts += [
            Router(id=n, name=f"Router {n}", bed="vacuum" if vacuum else "clamped",
                   changer=vacuum),
            Bed(id=n, day=DAY, bits=bits),
            Bit(id=f"1{n}", words="6.0 mm compression", diameter_mm=6.0, router=n),
        ]  # fmt: skip
    return [
        *facts,
        Bit(id="16", words="3.0 mm straight", diameter_mm=3.0, router="5"),
        Bit(id="17", words="6.0 mm compression", diameter_mm=6.0),
        Bit(id="18", words="3.0 mm straight", diameter_mm=3.0),
    ]


def small_facts() -> list[Fact]:
    """Everything the small shop knows, without batches and orders."""
    return [
        Shop(id="shop", first=ISSUE),
        *(Worker(id=w) for w in ("01", "02", "03", "04", "05", "06")),
        Worker(id="07", supervisor=True),
        *first_reasons(),
        *first_materials()[:2],
        Lot(id="0931", material="1", received="2026-11-02"),
        Lot(id="0940", material="2", received="2026-11-09"),
        *_files(),
        *_machines(),
        Product(id="021", name="LOOM-KIT", words="Small loom kit",
                parts=((COMB, 1), (SHUTTLE, 2))),
        Mailer(id="01", name="Flat 350 × 250", length_mm=350.0, width_mm=250.0),
        Cart(id="1", name="Cart 1"),
        Cart(id="2", name="Cart 2"),
    ]  # fmt: skip


def sheets(lot: str, count: int) -> Move:
    """Sheets of a lot received into the store."""
    return move(SHEET, count, "bought", "store", lot)


def small_shop(*facts: Fact, moves: tuple[Move, ...] = ()) -> FakeView:
    """The small shop with these facts besides (they win), and 40 sheets of each lot."""
    received = (sheets("0931", 40), sheets("0940", 40))
    return FakeView.of(*small_facts(), *facts, moves=received + moves)


def batch(cut_file: str = COMBS, id: str = "00412", **fields: object) -> Batch:
    """A released batch of revision C: 4 sheets on router 1 unless told otherwise."""
    plain = Batch(id=id, cut_file=cut_file, revision="C", router="1", sheets=4,
                  due=f"{DAY}T15:00:00", released=f"{DAY}T07:30:00",
                  why="rack under its mark")  # fmt: skip
    return replace(plain, **fields)  # type: ignore[arg-type]


def off_bed(
    view: FakeView, batch: Batch, sheet: int, at: str = f"{DAY}T09:00:00", router: str = ""
) -> FakeView:
    """The state after a sheet of a batch came off the bed: its pieces lie at popping."""
    revision = view.get(Revision, f"{batch.cut_file}.{batch.revision}")
    assert revision is not None
    slip = Slip(id=f"{batch.id}-{sheet}", batch=batch.id, sheet=sheet,
                router=router or batch.router, at=at, by="02", minutes=revision.minutes,
                lot="0931", bit=f"1{router or batch.router}")  # fmt: skip
    known = view.get(Batch, batch.id) or batch
    cut = known.cut + 1
    state = "cut" if cut >= known.sheets else "cutting"
    moves = tuple(
        move(part, qty, "cut", f"popping/{sheet}", batch.id)
        for part, qty in revision.makes().items()
    )
    view.facts[slip.key] = slip
    view.facts[known.key] = replace(known, cut=cut, state=state)
    view._move(moves)
    return view


def at(clock: str) -> str:
    """``10:42`` or ``10:42:07`` on the small shop's day, as a full time."""
    return f"{DAY}T{clock}" + ("" if len(clock) == 8 else ":00")


WORK = {
    "cart": CartWork,
    "loading": LoadingWork,
    "office": OfficeWork,
    "packing": PackingWork,
    "plan": PlanWork,
    "popping": PoppingWork,
    "today": TodayWork,
    "trimming": TrimmingWork,
}


def hand(area: str, now: str = "10:00", **fields: str) -> Hand:
    """Worker 02 at an area of the small shop, nothing in hand."""
    work = WORK[area]()
    plain = Hand(area=area, worker="02", station="s1", now=at(now), work=work)
    return replace(plain, **fields)  # type: ignore[arg-type]


class Player:
    """Plays a station without a desk: dialogue, rule, effects, next hand.

    A question back is kept in `asked`; `yes`, `reason` and `approve` answer it.
    """

    def __init__(
        self, view: FakeView, rules: Rules, handle_input: HandleInput, hand: Hand
    ) -> None:
        self.view, self.rules, self.hand = view, rules, hand
        self.handle_input = handle_input
        self.said: list[Answer] = []
        self.asked: tuple[Do, Args] | None = None
        self.count = 0
        self.next_number = 500

    def give(self, *inputs: Input | str, now: str = "") -> Answer:
        """Inputs in turn; the last one's answer (None from the room fails the test).

        A text is a touch on what says so on the screen now.
        """
        if now:
            self.hand = replace(self.hand, now=at(now))
        for one in inputs:
            given = self.touch(one) if isinstance(one, str) else one
            result = self.handle_input(self.hand, given, self.view)
            assert result is not None, f"{one} means nothing here"
            if isinstance(result, Took):
                self.hand = result.hand
                self.said.append(result.answer)
            else:
                self._do(result, Args())
        return self.said[-1]

    def touch(self, words: str) -> Code:
        """What a touch on these words sends."""
        face = load_rooms()[self.hand.area].screen(self.hand, self.view)
        return touch(face, words)

    def yes(self) -> Answer:
        """Yes, I am sure."""
        return self._again(Args(sure=True))

    def reason(self, id: str) -> Answer:
        """A reason card."""
        return self._again(Args(reason=id))

    def recount(self, number: int) -> Answer:
        """Counts so many, and answers what is asked back: it is so, badge and PIN, a reason."""
        answer = self.give(Number(str(number)))
        while answer.asks:
            answered = {"sure": self.yes, "supervisor": self.approve}
            ask = answered.get(answer.asks, lambda: self.reason("51"))
            answer = ask()
        return answer

    def approve(self, worker: str = "07") -> Answer:
        """A supervisor's badge and PIN."""
        return self._again(Args(approved=worker))

    def _again(self, found: Args) -> Answer:
        assert self.asked is not None, "nothing was asked"
        do, known = self.asked
        return self._do(do, add_known(known, found))

    def _do(self, do: Do, more: Args) -> Answer:
        self.count += 1
        args = add_known(do.args, more)
        for kind in do.numbers:
            self.next_number += 1
            if not args.numbers:
                args = add_known(args, Args(numbers={kind: f"{self.next_number:05d}"}))
        act = Act(id=f"a{self.count}", kind=do.kind, at=self.hand.now, worker=self.hand.worker,
                  station=self.hand.station, subject=do.subject, args=args)  # fmt: skip
        answer = self.view.do(self.rules, act)
        self.asked = (do, more) if answer.asks else None
        after = do.find_hand_after(answer, self.hand) if answer.refused else do.after
        self.hand = replace(after, now=self.hand.now)
        self.said.append(answer)
        return answer
