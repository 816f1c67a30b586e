"""What a workshop and its post-processor are used to: how it cuts, and how it writes."""

from dataclasses import dataclass, fields
from random import Random


@dataclass(frozen=True)
class Manner:
    """One choice for each habit; each choice is a row of the measured table."""

    # how it is cut
    form: str
    bits: str
    hold: str
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
    "bits": ("one", "one", "two", "three"),
    "hold": ("tabs", "tabs", "tabs", "through", "through", "onion"),
    "tab_form": ("step", "step", "trapezoid", "ramp", "lift"),
    "tab_when": ("when deep", "when deep", "every pass"),
    "entry": ("plunge", "plunge", "line", "straight in", "arc", "ramp", "zigzag", "helix"),
    "closing": ("exact", "exact", "overlap", "gap"),
    "start": ("corner", "mid-edge", "anywhere"),
    "passes": ("one", "even", "step", "skin first"),
    "order": ("part by part", "kind by kind", "level by level"),
    "way": ("climb", "climb", "conventional", "mixed"),
    "corners": ("sharp", "rolled"),
    "zero": ("top", "top", "bed"),
    "units": ("mm", "mm", "mm", "inch"),
    "distance": ("absolute", "absolute", "absolute", "relative"),
    "arcs": ("centre", "centre", "two halves", "radius", "chords"),
    "remark": (
        "(D=)",
        "(DIA IN)",
        "; straight",
        "(D CR)",
        "(mm compression)",
        "(BIT x MM)",
        "none",
    ),
    "change": ("T M6", "M6 T", "by hand", "message"),
    "words": ("G1 X", "G1X", "G01 X"),
    "case": ("upper", "upper", "upper", "lower"),
    "numbers": ("none", "none", "by 1", "by 10"),
    "modal": ("full", "modal", "all axes"),
    "decimals": ("fixed", "trimmed", "dot"),
    "head": ("bare", "percent", "number", "talkative"),
    "retract": ("safe", "safe", "G53", "G28", "G30"),
    "cycles": ("G81", "G83", "moves"),
    "spindle": ("M3 S", "S M3", "dwell", "extraction"),
    "end": ("M30", "M2", "home M30", "rubbish"),
    "breaks": ("LF", "LF", "CRLF", "blank lines"),
}


def choose_manner(rng: Random) -> Manner:
    """Draws one choice for each habit."""
    return settle(Manner(**{habit: rng.choice(choices) for habit, choices in CHOICES.items()}))


def settle(manner: Manner) -> Manner:
    """Takes back what cannot be together, so that the table tells what was really done."""
    values = dict(manner.rows())
    if manner.form in {"shared", "strips"}:
        values |= {"hold": "through", "order": "part by part", "corners": "-", "start": "-"}
        values["entry"] = (
            manner.entry if manner.entry in {"plunge", "ramp", "zigzag"} else "plunge"
        )
    if manner.form == "nested":
        values["order"] = "part by part"
    if values["entry"] in {"line", "straight in", "arc"} and manner.form != "halves":
        values["start"] = "mid-edge"
    if manner.form == "halves":
        values |= {"entry": "plunge", "closing": "-", "order": "part by part"}
    if values["hold"] != "tabs":
        values |= {"tab_form": "-", "tab_when": "-"}
    if values["hold"] == "tabs" and values["entry"] == "helix":
        values["entry"] = "ramp"
    if values["passes"] == "one" and values["entry"] == "helix":
        values["passes"] = "even"
    if manner.distance == "relative":
        values |= {"cycles": "moves", "retract": "safe"}
    if manner.remark == "none":
        values["bits"] = "one"
    return Manner(**values)
