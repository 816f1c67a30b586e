"""What a workshop and its post-processor are used to: how it cuts, and how it writes."""

from dataclasses import dataclass, fields
from random import Random


@dataclass(frozen=True)
class Manner:
    """One choice for each habit; each choice is a row of the measured table."""

    # how it is cut
    form: str
    beside: str
    bits: str
    hold: str
    gap: str
    tab_form: str
    tab_when: str
    entry: str
    closing: str
    start: str
    passes: str
    order: str
    way: str
    corners: str
    zero: str
    # how it is written
    units: str
    distance: str
    arcs: str
    remark: str
    told: str
    change: str
    words: str
    case: str
    numbers: str
    modal: str
    decimals: str
    head: str
    retract: str
    cycles: str
    spindle: str
    end: str
    breaks: str

    def rows(self) -> list[tuple[str, str]]:
        """Gives (habit, choice) of all."""
        return [(f.name, getattr(self, f.name)) for f in fields(self)]


CHOICES: dict[str, tuple[str, ...]] = {
    "form": ("rows", "rows", "rows", "twins", "mirrored", "nested", "shared", "strips", "halves"),
    "beside": ("nothing", "nothing", "pin holes", "sheet mark"),
    "bits": ("one", "one", "two", "three", "three, V"),
    "hold": ("tabs", "tabs", "tabs", "through", "through", "onion"),
    "gap": ("wide", "wide", "tight"),
    "tab_form": ("step", "step", "trapezoid", "ramp", "lift"),
    "tab_when": ("when deep", "when deep", "every pass"),
    "entry": (
        "plunge",
        "plunge",
        "line",
        "straight in",
        "arc",
        "ramp",
        "zigzag",
        "helix",
        "spiral",
    ),
    "closing": ("exact", "exact", "overlap", "gap"),
    "start": ("corner", "mid-edge", "anywhere"),
    "passes": ("one", "even", "step", "skin first"),
    "order": ("part by part", "kind by kind", "level by level"),
    "way": ("climb", "climb", "conventional", "mixed"),
    "corners": ("sharp", "rolled"),
    "zero": ("top", "top", "bed"),
    "units": ("mm", "mm", "mm", "inch"),
    "distance": ("absolute", "absolute", "absolute", "relative"),
    "arcs": ("centre", "centre", "two halves", "quarters", "radius", "chords"),
    "remark": (
        "(D=)",
        "(DIA IN)",
        "; straight",
        "(D CR)",
        "(mm compression)",
        "(BIT x MM)",
        "(Ø)",
        "none",
    ),
    "told": ("nothing", "nothing", "operations", "list of bits"),
    "change": ("T M6", "M6 T", "next T", "G43", "by hand", "message"),
    "words": ("G1 X", "G1 X", "G1X", "G01 X", "G1 X 0"),
    "case": ("upper", "upper", "upper", "lower"),
    "numbers": ("none", "none", "by 1", "by 10"),
    "modal": ("full", "modal", "all axes"),
    "decimals": ("fixed", "trimmed", "dot", "no zero"),
    "head": ("bare", "percent", "number", "talkative"),
    "retract": ("safe", "safe", "G53", "G28", "G30"),
    "cycles": ("G81", "G83", "moves"),
    "spindle": ("M3 S", "S M3", "dwell", "extraction"),
    "end": ("M30", "M2", "home M30", "rubbish", "/M1"),
    "breaks": ("LF", "LF", "CRLF", "blank lines"),
}


LEADS = {"line", "straight in", "arc"}


def choose_manner(rng: Random) -> Manner:
    """Draws one choice for each habit."""
    return settle(Manner(**{habit: rng.choice(choices) for habit, choices in CHOICES.items()}))


def settle(manner: Manner) -> Manner:
    """Takes back what cannot be together, so that the table tells what was really done."""
    values = dict(manner.rows())
    settle_form(values)
    settle_holding(values)
    settle_writing(values)
    return Manner(**values)


def settle_form(values: dict[str, str]) -> None:
    """Keeps to what a form of laying can have."""
    if values["form"] in {"shared", "strips"}:
        values |= {"order": "part by part", "corners": "-", "start": "-", "beside": "nothing"}
        if values["form"] == "strips" or values["hold"] == "onion":
            values["hold"] = "through"
        if values["entry"] not in {"ramp", "zigzag"}:
            values["entry"] = "plunge"
    if values["form"] == "halves":
        values |= {"entry": "plunge", "closing": "-"}
    if values["form"] == "nested":
        values |= {"order": "part by part", "gap": "wide"}
    if values["entry"] in LEADS:
        values |= {"start": "mid-edge", "gap": "wide"}


def settle_holding(values: dict[str, str]) -> None:
    """Keeps to what can be with tabs, or without."""
    spiral = values["entry"] in {"helix", "spiral"}
    if values["hold"] == "tabs":
        values |= {"gap": "wide", "entry": "ramp" if spiral else values["entry"]}
        if values["tab_form"] in {"trapezoid", "ramp"}:
            values["tab_when"] = "when deep"
        return
    values |= {"tab_form": "-", "tab_when": "-"}
    if spiral:
        values["passes"] = "even" if values["passes"] == "one" else values["passes"]
        values["entry"] = "helix" if values["hold"] == "onion" else values["entry"]


def settle_writing(values: dict[str, str]) -> None:
    """Keeps to what a text can say."""
    bare = values["remark"] not in {"(D=)", "(D CR)"} or values["change"] in {"by hand", "message"}
    if bare and values["told"] == "list of bits":
        values["told"] = "nothing"
    if values["distance"] == "relative":
        values |= {"cycles": "moves", "retract": "safe"}
    if values["remark"] == "none":
        values["bits"] = "one"
