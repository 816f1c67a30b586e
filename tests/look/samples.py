"""Faces as the rooms show them, for the tests and for looking at by hand."""

from station.shop.cards import button
from station.shop.faces import (
    Asked,
    Band,
    Bands,
    Cards,
    Cell,
    Check,
    Checks,
    Decision,
    Entry,
    Face,
    Flow,
    Header,
    Hint,
    Keys,
    Layer,
    Letters,
    Listing,
    MailerDrawing,
    Meter,
    NumberMark,
    Pairs,
    PartDrawing,
    PathDrawing,
    Place,
    Places,
    Press,
    Progress,
    Remark,
    Row,
    SheetDrawing,
    Steps,
    Table,
)
from station.shop.facts import Part, Placed, Revision, Shape
from station.shop.strokes import Stroke
from station.shop.words import say


def box(length: float, width: float) -> tuple[tuple[float, float], ...]:
    return ((0, 0), (length, 0), (length, width), (0, width))


def slot(x: float, y: float, length: float, width: float) -> tuple[tuple[float, float], ...]:
    return tuple((x + a, y + b) for a, b in box(length, width))


COMB = Shape(
    outline=box(300, 120),
    holes=tuple(slot(18 + 19 * n, 20, 9, 80) for n in range(14)),
    tabs=((0, 60), (300, 60), (100, 120), (200, 0)),
)
SHUTTLE = Shape(
    outline=((20, 0), (160, 0), (174, 6), (180, 20), (174, 34), (160, 40), (20, 40), (6, 34),
             (0, 20), (6, 6)),
    tabs=((90, 0), (90, 40)),
)  # fmt: skip
SPACER = Shape(outline=box(36, 140), tabs=((0, 70), (36, 70)))


def at(part: str, x_mm: float, y_mm: float) -> Placed:
    return Placed(part=part, x_mm=x_mm, y_mm=y_mm)


PLACED = (
    *(at("014", 30 + 330 * x, 640 + 140 * y) for y in range(4) for x in range(6)),
    *(at("015", 2030 + 195 * x, 640 + 70 * y) for y in range(8) for x in range(2)),
    *(at("016", 30 + 62 * x, 40 + 190 * y) for y in range(3) for x in range(10)),
    *(at("015", 700 + 210 * x, 40 + 90 * y) for y in range(6) for x in range(8)),
)
REVISION = Revision(
    id="008.C",
    cut_file="008",
    letter="C",
    material="02",
    minutes=22.2,
    shapes=(("014", COMB), ("015", SHUTTLE), ("016", SPACER)),
    placed=PLACED,
    hold_downs=tuple((120 + 400 * x, y) for x in range(6) for y in (12, 1208)),
)
COMB_PART = Part(id="014", name="HC-300", words="Heddle comb 300", rack="014", shape=COMB)

CARE = Remark(
    tone="attention",
    title=say("Take care"),
    text=say(
        "Sheet 12.5 kg: two people or the lift table. Eye and ear protection. Nobody reaches "
        "over a moving bed; isolate the spindle before hands go near the bit. Local rules and "
        "the shop's safety lead come first."
    ),
)


def code(number: str) -> str:
    return button(number)


def loading() -> Face:
    return Face(
        title=say("Loading"),
        where="Router 3 · clamped bed",
        main=(
            Header(label=say("Batch"), number="00412", title="Heddle comb 300 + shuttles",
                   note=say("{mat} · {n} sheets · {parts} parts a sheet, {tabs} tabs",
                            mat="6 mm birch plywood", n=8, parts=118, tabs=284),
                   right_label=say("Sheet"), right="3", right_small=say("of {n}", n=8)),
            SheetDrawing(revision=REVISION, cut=0.6, touch=True,
                         note=say("Drawn from the cut file. Dots are tabs, black blocks "
                                  "hold-downs, clear of bit and dust shoe.")),
            Progress(big=say("{n} min", n=9), note=say("left on this sheet"), fraction=0.6,
                     right=say("file says 22:10, Router 3 takes 23:40 ± 0:25")),
        ),
        beside=(
            Checks(title=say("Before sheet 4"), items=(
                Check(label=say("Sheet"), text="6 mm birch, lot 0931", state="done"),
                Check(label=say("Hold-down, bed vacuumed"), text="12 hold-downs, 2 clamps",
                      code=code("held_down"), state="due"),
                Check(label=say("Bit"), text="6.0 mm compression, no. 14", state="done",
                      code=code("bit_good")),
                Check(label=say("Cut file"), text="revision C, hash agrees", state="wrong",
                      code=code("file_right")),
                Check(label=say("Z zero"), text="touch off on the spoilboard", state="later",
                      code=code("zeroed")),
            )),
        ),
        presses=(
            Press(label=say("Sheet {n} is off the bed", n=3), code=code("off_bed"),
                  style="primary", wide=2),
            Press(label=say("Sheet spoiled"), code=code("sheet_spoiled")),
            Press(label=say("Report a stop"), code=code("stop")),
        ),
        side=(
            Cards(title=say("Next on this router"), entries=(
                Entry(big="00417", right="18 min a sheet",
                      line1="Sett gauges · 4 sheets · 6 mm birch",
                      line2="12 orders wait for SG-10, first due tomorrow"),
                Entry(big="00420", right="41 min a sheet", tone="attention",
                      line1="Frame sides 600 · 6 sheets · 9 mm birch",
                      line2="rack under its mark: 14 left, 9 used a day"),
                Entry(big="00421", right="12 min a sheet",
                      line1="Warp spacers · 2 sheets · 6 mm birch",
                      line2="top-up, fills the gap before 15:00"),
            )),
            Meter(title=say("Bit no. {bit}", bit="14"), left=say("{m} m cut", m=1240),
                  right=say("change after sheet 5"), fraction=0.88, tone="attention"),
            CARE,
        ),
    )  # fmt: skip


def popping() -> Face:
    rows = (
        ("HC-300", "Heddle comb 300 · 4 tabs", COMB, (72, 72, 0, 0, 0)),
        ("SH-180", "Stick shuttle 180 · 2 tabs", SHUTTLE, (192, 189, 3, 0, 0)),
        ("WS-12", "Warp spacer 12 mm · 2 tabs", SPACER, (90, 88, 0, 2, 0)),
    )
    return Face(
        title=say("Popping"),
        where="Bench 1",
        main=(
            Header(label=say("Batch"), number="00412", title="Heddle comb 300 + shuttles",
                   note="6 mm birch plywood · slips for sheets 1, 2, 3 of 8 · cut on Router 3"),
            Steps(items=(
                (say("Loading"), "5 sheets cut", "done"), (say("Popping"), "354 to count", "now"),
                (say("Trimming"), "", "next"), (say("Packing"), "", "next"),
                (say("Cart"), "", "next"),
            )),
            Table(
                columns=("part", "cut", "good", "spoiled", "missing", "rework"),
                rows=tuple(
                    Row(title=name, note=note, shape=shape, counter=2,
                        cells=tuple(
                            Cell(text=str(n), bold=i in (1, 2),
                                 tone="stop" if i == 2 and n else "")
                            for i, n in enumerate(cells)
                        ),
                        code=code("row_1"), minus=f"{code('row_1')}|{code('fewer')}",
                        plus=f"{code('row_1')}|{code('more')}", selected=name == "SH-180")
                    for name, note, shape, cells in rows
                ),
            ),
            Remark(tone="stop", title="Spoiled: 3 × torn at a tab",
                   text="All in the right-hand column of the sheet. Router 3 has been told."),
        ),
        presses=(
            Press(label=say("Pass on: {g} good, {s} spoiled, {m} missing", g=349, s=3, m=2),
                  code=code("pass_on"), style="primary", wide=2),
            Press(label=say("Only some of it"), code=code("some")),
        ),
        side=(
            Cards(title=say("Waiting here"), entries=(
                Entry(big="00413", right="12 min", line1="Sett gauges · sheets 1, 2",
                      code="B00413A7"),
                Entry(big="00409", right="48 min ▲", tone="attention",
                      line1="Frame sides 600 · sheets 4 to 6", code="B00409A7"),
                Entry(big="00412", right="just cut", line1="the same batch · sheets 4, 5",
                      code="B00412A7"),
            )),
            Listing(title=say("Passed on today"), rows=tuple(
                ((Cell(text=at, tone="quiet"), Cell(text=batch, bold=True), Cell(text=what)), "")
                for at, batch, what in (
                    ("10:31", "00411", "236 good, 4 spoiled"), ("09:58", "00408", "88 good"),
                    ("09:20", "00407", "239 good, 1 missing"))
            )),
            Remark(tone="attention", title=say("Take care"),
                   text="Eye protection while popping; gloves for sheets only. Vacuum dust, "
                        "never blow it. Local rules come first."),
        ),
    )  # fmt: skip


def trimming() -> Face:
    return Face(
        title=say("Trimming"),
        where="Router table 1",
        main=(
            Header(label=say("Batch"), number="00409", title="Heddle comb 300 + shuttles",
                   note="349 good parts came from popping · 842 tab stubs to trim",
                   right_label=say("left here"), right="38 min"),
            Table(columns=("part", "came", "good", "spoiled"), rows=(
                Row(title="HC-300", note="Heddle comb 300 · 4 tabs", fraction=45 / 72,
                    cells=(Cell(text="72"), Cell(text="45", bold=True), Cell(text="0"))),
                Row(title="SH-180", note="Stick shuttle 180 · 2 tabs", fraction=1.0,
                    cells=(Cell(text="189"), Cell(text="188", bold=True), Cell(text="1"))),
                Row(title="WS-12", note="Warp spacer 12 mm · 2 tabs", fraction=0.0,
                    cells=(Cell(text="88"), Cell(text="0", bold=True), Cell(text="0"))),
            )),
            PartDrawing(part=COMB_PART, note=say(
                "Arrows: where the tabs were. Feed against the bit's rotation, guard on, "
                "small parts in a holder.")),
        ),
        presses=(
            Press(label=say("To the rack: {g} good, {s} spoiled", g=233, s=1),
                  code=code("row_2"), style="primary", wide=2),
            Press(label=say("Only some of it"), code=code("some")),
        ),
        side=(
            Asked(question=say("How long is B across, 120.00 mm?"), typed="120.19", unit="mm"),
            Hint(title=say("Goes under"), right="Rack C 14", note="42 there now, mark is 60"),
        ),
        weights=(65, 0, 35),
    )  # fmt: skip


def packing() -> Face:
    lines = (
        ("HC-300", "Heddle comb 300", "Rack C 14", "2 of 2", True),
        ("SH-180", "Stick shuttle 180", "Rack B 03", "4 of 4", True),
        ("SG-10", "Sett gauge 10", "Rack B 07", "0 of 1", False),
        ("WS-12", "Warp spacer 12 mm", "Rack A 02", "6 of 6", True),
    )
    return Face(
        title=say("Packing"),
        where="Bench 4",
        main=(
            Header(label=say("Order"), number="3306", title="4 lines, 13 parts",
                   note="leaves today · nothing short"),
            Table(columns=("part", "take from", "in the pack"), rows=tuple(
                Row(title=name, note=words, done=done, code=code("row_3"),
                    cells=(Cell(text=rack), Cell(text=count, bold=True)))
                for name, words, rack, count, done in lines
            )),
            Hint(title=say("Next: {part}", part="SG-10"), right="Rack B, place 07",
                 note=say("scan the card under the master, or touch the row")),
        ),
        presses=(
            Press(label=say("Close the pack: 1 part to go"), code="", style="off", wide=2),
            Press(label=say("Part missing"), code=code("row_4")),
        ),
        middle=(
            MailerDrawing(name="Mailer 190 × 380", length_mm=380, width_mm=190, layers=(
                Layer(label="HC-300 × 2, flat, bottom", x_mm=0, y_mm=0, length_mm=300,
                      width_mm=120, piece="2 × HC-300"),
                Layer(label="SH-180 × 4", x_mm=10, y_mm=10, length_mm=180, width_mm=80, level=1,
                      piece="SH-180"),
                Layer(label="WS-12 × 6", x_mm=210, y_mm=10, length_mm=70, width_mm=80, level=2,
                      piece="WS-12"),
            )),
            Pairs(title="Mailer 190 × 380", rows=(
                (say("stack"), "large and flat outside"), (say("wrap"), "one turn, 0.7 m"),
                (say("should weigh"), "486 ± 25 g"), (say("on the scale"), "–"),
            )),
        ),
        side=(
            Listing(title=say("Waiting to pack"), rows=tuple(
                ((Cell(text=order, bold=True), Cell(text=what), Cell(text=due, tone=tone)),
                 "O3306X")
                for order, what, due, tone in (
                    ("3308", "2 lines", "today", ""), ("3311", "1 line", "today", ""),
                    ("3307", "short 2 × HC-300", "today", "stop"),
                    ("3312", "5 lines", "tomorrow", "quiet"))
            )),
            Progress(big="18", note=say("packs on Cart 2, goes at 15:30"), fraction=0.6),
        ),
        weights=(46, 28, 26),
    )  # fmt: skip


def plan() -> Face:
    return Face(
        title=say("What to cut"),
        where=say("today and tomorrow"),
        main=(
            Decision(
                title="Blocks 10 orders, 4 of them late: WC-70",
                matter="504 wanted, 5 on the rack, none under way",
                offer="CARDS-SET on Router 5, 3 sheets",
                notes=("208 WC-70 a sheet · starts 10:55",
                       "624 less 3.2 % for loss: enough with 95 % certainty."),
                press=Press(label=say("Release {n}, print", n=3), code=code("row_1"),
                            style="primary"),
            ),
            Table(title=say("And then"), columns=("cut file", "sheets", "because"), rows=(
                Row(title="HC300-SET", note="for HC-300", code=code("row_2"), selected=True,
                    cells=(Cell(text="4", bold=True), Cell(text="9 orders, first due 14:00"))),
                Row(title="WS090-SET", note="for WS-90", code=code("row_3"),
                    cells=(Cell(text="2", bold=True), Cell(text="below its minimum"))),
            )),
        ),
        side=(
            Table(title=say("Can wait"), columns=("queued, but nobody needs it yet",), rows=(
                Row(title="FS600-SET, 2 sheets", note="7.3 days: 290 there, 29 wanted",
                    press=Press(label=say("Take back {batch}", batch="00646"),
                                code="B00646AX")),
            )),
        ),
        presses=(Press(label=say("Release {n}, print", n=4), code=code("row_4")),),
        weights=(66, 0, 34),
    )  # fmt: skip


def today() -> Face:
    hours = tuple(7.25 + n / 4 for n in range(30))

    def line(end: int, late: float) -> tuple[tuple[float, int], ...]:
        return tuple((h, max(0, round(end * (h - 7.25 - late) / (7.25 - late)))) for h in hours)

    return Face(
        title=say("Shop today"),
        top=(
            Places(items=(
                Place(name=say("Loading"), done="31", unit="of 40 sheets", rate="4.4 an hour",
                      plan="plan 5.0"),
                Place(name=say("Popping"), done="1\u202f352", unit="parts", rate="178 an hour",
                      plan="plan 190", waiting=112),
                Place(name=say("Trimming"), done="1\u202f012", unit="parts", rate="145 an hour",
                      plan="plan 190", waiting=228, holding_up=True),
                Place(name=say("Packing"), done="905", unit="parts", rate="131 an hour",
                      plan="plan 130", waiting=107),
                Place(name=say("Cart"), done="402", unit="packs", rate="58 an hour",
                      plan="plan 60", waiting=9),
            )),
        ),
        main=(
            Flow(title=say("Parts through the shop"),
                 note=say("height between two lines: parts waiting · width: how long they wait"),
                 lines=((say("cut {n}", n=1464), line(1464, 0)),
                        (say("popped {n}", n=1352), line(1352, 0.4)),
                        (say("trimmed {n}", n=1012), line(1012, 1.0)),
                        (say("packed {n}", n=905), line(905, 1.5))),
                 start_h=7, end_h=17, now_h=14.7, plan=1900),
        ),
        side=(
            Bands(title=say("Routers"), start_h=7, end_h=17, items=(
                Band(name="Router 1", state="cutting 00416, sheet 3 of 6, free in 4 min",
                     tone="good", spans=((7.1, 9.0, "cutting"), (9.2, 12, "cutting"),
                                         (12, 12.4, "stopped"), (12.4, 14.7, "cutting"))),
                Band(name="Router 2", state="loading 00417", tone="quiet",
                     spans=((7.3, 10, "cutting"), (10.4, 14.2, "cutting"))),
                Band(name="Router 3", state="cutting 00412, sheet 3 of 8, free in 9 min",
                     tone="good", spans=((7, 14.7, "cutting"),)),
                Band(name="Router 4", state="stopped 14 min: bit", tone="attention",
                     spans=((7, 14.4, "cutting"), (14.4, 14.7, "stopped"))),
            )),
            Listing(title=say("Needs a look"), rows=(
                ((Cell(text="▲", tone="attention"),
                  Cell(text="Router 2 drifts, the file does not"),
                  Cell(text="26 min", tone="quiet")), ""),
                ((Cell(text="■", tone="stop"), Cell(text="Order 3307 short of 2 HC-300"),
                  Cell(text="12 min", tone="quiet")), ""),
            )),
        ),
        weights=(65, 0, 35),
    )  # fmt: skip


def path() -> Face:
    """A slot cut twice with bit 1, a hole with bit 2, a rapid between them."""
    strokes = (
        Stroke(1, -1, ((0, 0, 0), (100, 100, 2))),
        Stroke(1, 1, ((100, 100, 2), (500, 100, 12))),
        Stroke(1, 4, ((500, 100, 12), (100, 100, 22))),
        Stroke(2, -1, ((100, 100, 22), (300, 300, 24))),
        Stroke(2, 4, ((300, 300, 24), (320, 300, 26), (320, 320, 28))),
    )
    block = PathDrawing(
        length_mm=1000,
        width_mm=500,
        strokes=strokes,
        bits=((1, 6.0), (2, 3.175)),
        bands=(2.25, 4.5, 6.75, 9.0),
        seconds=30.0,
        marks=(NumberMark(number=1, x_mm=320, y_mm=320, tone="stop"),),
        note=say("Drawn within {mm} mm. Touch a layer to hide it.", mm="0.1"),
    )
    names = {"path_in": "Closer", "path_out": "Farther", "path_all": "Whole sheet",
             "path_play": "Play, pause", "path_pieces": "As it comes off"}  # fmt: skip
    keys = Keys(
        presses=tuple(
            Press(label=say(label), code=button(name), style="chosen" if n == 3 else "plain")
            for n, (name, label) in enumerate(names.items())
        )
    )
    back = Press(label=say("Back to the list"), code=button("show_path"), style="primary")
    return Face(title=say("Office"), main=(block,), side=(keys,), presses=(back,),
                weights=(76, 0, 24))  # fmt: skip


def form() -> Face:
    fields = (("number", "7"), ("description", "6 mm compression"), ("router", "3"))
    rows = tuple(
        Row(title=title, cells=(Cell(text=text),), code=code(f"row_{n}"), selected=n == 2,
            known=text if n == 2 else None)
        for n, (title, text) in enumerate(fields, 1)
    )  # fmt: skip
    return Face(
        title=say("Office"),
        main=(Table(columns=(say("field"), say("value")), rows=rows, title="Bit 7"),),
        presses=(Press(label=say("Save"), code=code("save"), style="primary"),),
        side=(Letters(question=say("description")),),
        weights=(50, 0, 50),
    )


SAMPLES = {f.__name__: f for f in (loading, popping, trimming, packing, plan, today, path, form)}
