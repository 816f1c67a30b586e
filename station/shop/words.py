"""Words for people: a template and its values, put together and translated in `look`."""

import re
from collections.abc import Callable, Mapping
from datetime import date
from typing import NamedTuple

from station.shop import lengths

_UNIT = re.compile(r"\{(\w+)\} (mm²|m²|mm|m|kg|g)(?!\w)")  # a value of a template, and its unit
_KEPT = "{length}"  # of a sentence that is a length alone
_WEIGHT = "{weight}"  # the same of a weight in g
_FIGURE = "{figure}"  # the same of any other number that may have decimals
_FORMS = re.compile(r"\{(\w+)\|([^|{}]*)\|([^|{}]*)\}")


class Say(NamedTuple):
    """A sentence: an English template with ``{names}`` and the values for them.

    The template is the key of its translation, so values never stand inside it. A value
    may itself be a Say. Numbers are kept as numbers: `look` writes them in the shop's
    way (thousands parted, units, the language's decimal sign). ``{n|part|parts}`` is the
    first word where n is one, else the second: "{n} {n|part|parts}". A translation writes
    its own words there, or one form in both places.
    """

    template: str = ""
    values: Mapping[str, object] = {}

    def __str__(self) -> str:
        """The English sentence; what the text station prints."""
        return fill_in(self, str)

    def __bool__(self) -> bool:
        """An empty template says nothing."""
        return bool(self.template)


def say(template: str, **values: object) -> Say:
    """A sentence for a person. The template must be a literal: it is looked up by it."""
    return Say(template, values)


_INCHES = "inches"
MM = say("mm")  # the shop's unit, as a word of a sentence: "Enter the {unit}."


def length(mm: float, digits: int | None = None) -> Say:
    """Gives a length for a sentence, in the shop's unit; ``{size} mm`` names the unit after it.

    `digits`: of a mm, fixed; else as many as there are.
    """
    return Say(_KEPT, {"length": mm, "unit": "mm", "digits": digits})


def length_in_full(mm: float, digits: int | None = None) -> Say:
    """Gives a length with its unit: ``6.5 mm``."""
    return say("{mm} mm", mm=length(mm, digits))


def metres(of: float, digits: int | None = 0) -> Say:
    """Gives what a bit has cut, in m, for a sentence that has ``{cut} m``."""
    return Say(_KEPT, {"length": of, "unit": "m", "digits": digits})


def area(mm2: float, digits: int | None = 1) -> Say:
    """Gives an area, in mm², for a sentence that has ``{area} mm²``."""
    return Say(_KEPT, {"length": mm2, "unit": "mm²", "digits": digits})


def large_area(mm2: float) -> Say:
    """Gives the area of sheets, in m², for a sentence that has ``{area} m²``."""
    return Say(_KEPT, {"length": mm2 / 1e6, "unit": "m²", "digits": 3})


def speed(mm_min: float) -> Say:
    """Gives a speed for a sentence that has ``{feed} mm/min``."""
    return Say(_KEPT, {"length": round(mm_min), "unit": "mm/min", "digits": 0})


def mass(grams: float, like: float | None = None) -> Say:
    """Gives a weight for a sentence that has ``{weight} g``: oz or lb in a shop of inches.

    `like`: g of another beside it, in whose unit it is written.
    """
    return Say(_WEIGHT, {"weight": grams, "like": grams if like is None else like})


def kilograms(kg: float) -> Say:
    """Gives the weight of sheets and of lifting for a sentence that has ``{kg} kg``."""
    return Say(_KEPT, {"length": kg, "unit": "kg", "digits": 1})


def figure(value: float | str, digits: int | None = None) -> Say:
    """Gives a number that may have decimals; `digits`: as many, fixed. A text is one typed so far.

    A length is no such number: it is written in the shop's unit.
    """
    return Say(_FIGURE, {"figure": value, "digits": digits})


def take_apart(words: Say) -> tuple[dict[str, str | int], dict[str, tuple[float, int | None]]]:
    """Gives the plain values of a sentence, and its lengths as mm and digits."""
    plain_ones: dict[str, str | int] = {}
    lengths_: dict[str, tuple[float, int | None]] = {}
    for name, value in words.values.items():
        if isinstance(value, Say):
            mm, digits = value.values["length"], value.values["digits"]
            assert isinstance(mm, int | float)
            assert isinstance(digits, int | None)
            lengths_[name] = float(mm), digits
        else:
            plain_ones[name] = value if isinstance(value, int) else str(value)
    return plain_ones, lengths_


def _write_length(words: Say) -> str:
    value, unit, digits = (words.values[name] for name in ("length", "unit", "digits"))
    assert isinstance(value, int | float)
    assert isinstance(digits, int | None)
    return lengths.write(value, str(unit), digits)


def _write_figure(words: Say) -> str:
    value, digits = words.values["figure"], words.values["digits"]
    assert isinstance(value, int | float | str)
    assert isinstance(digits, int | None)
    return lengths.write_figure(value, digits)


def _find_number(words: Say, name: str) -> float:
    value = words.values[name]
    assert isinstance(value, int | float)
    return value


def _is_length(value: object) -> bool:
    """Tells whether a value is a length, or made of lengths alone: ``35 and 265``."""
    if not isinstance(value, Say):
        return False
    return value.template == _KEPT or (
        bool(value.values) and all(map(_is_length, value.values.values()))
    )


def _name_units(template: str, words: Say) -> str:
    """Puts the shop's unit after each value of a template that is a length or a weight."""

    def name(found: re.Match[str]) -> str:
        value = words.values.get(found[1])
        if isinstance(value, Say) and value.template == _WEIGHT:
            return f"{{{found[1]}}} {lengths.name_weight(_find_number(value, 'like'))}"
        is_one = _is_length(words.values.get(found[1]))
        return f"{{{found[1]}}} {lengths.name_unit(found[2]) if is_one else found[2]}"

    return _UNIT.sub(name, template)


def fill_in(words: Say, find_template: Callable[[str], str]) -> str:
    """Fills a sentence's template in, as a language has it, and those of sentences within it."""
    if not words.template:
        return ""
    if words.template == _KEPT:
        return _write_length(words)
    if words.template == _FIGURE:
        return _write_figure(words)
    if words.template == _WEIGHT:
        return lengths.weigh(_find_number(words, "weight"), _find_number(words, "like"))
    if words.template == MM.template:
        return find_template(_INCHES if lengths.are_in_inches() else MM.template)
    texts = {
        name: fill_in(value, find_template) if isinstance(value, Say) else plain(value)
        for name, value in words.values.items()
    }
    template = find_template(words.template)
    if "|" in template:
        template = _FORMS.sub(lambda form: form[2] if texts[form[1]] == "1" else form[3], template)
    if _UNIT.search(template) and lengths.are_in_inches():
        template = _name_units(template, words)
    return template.format(**texts).replace("….", "…")  # a list cut off ends no sentence twice


def plain(value: object) -> str:
    """A value in English text: thousands parted by a narrow space, clocks as HH:MM."""
    if isinstance(value, bool) or not isinstance(value, int):
        return str(value)
    return f"{value:,}".replace(",", lengths.THOUSANDS)


def clock(at: str) -> str:
    """``2026-11-25T10:42:07`` as ``10:42``; an empty time as an empty text."""
    return at[11:16]


# a language that writes months as numbers has them here: ``11.``
MONTHS = (
    say("Jan"), say("Feb"), say("Mar"), say("Apr"), say("May"), say("Jun"),
    say("Jul"), say("Aug"), say("Sep"), say("Oct"), say("Nov"), say("Dec"),
)  # fmt: skip


def day(at: str) -> Say:
    """``2026-11-25T10:42:07`` as ``25 Nov``; an empty time as nothing."""
    if not at:
        return Say()
    month = MONTHS[int(at[5:7]) - 1]
    return say("{day} {month}", day=at[8:10].lstrip("0"), month=month)


def moment(at: str) -> Say:
    """``2026-11-25T10:42:07`` as ``25 Nov 10:42``; an empty time as nothing."""
    return say("{day} {at}", day=day(at), at=clock(at)) if at else Say()


def dated(at: str) -> Say:
    """``2026-11-25T10:42:07`` as ``25 Nov 2026``, for what may be of another year."""
    if not at:
        return Say()
    month = MONTHS[int(at[5:7]) - 1]
    return say("{day} {month} {year}", day=at[8:10].lstrip("0"), month=month, year=at[:4])


def when(at: str, now: str) -> Say:
    """A time of today as its clock, any other as its day."""
    if at[:10] == now[:10]:
        return say("{at}", at=clock(at))
    return day(at)


def when_ahead(at: str, now: str) -> Say:
    """A time of today as its clock, one of the next day by that word, any other with its day."""
    if at[:10] == now[:10]:
        return say("{at}", at=clock(at))
    if (date.fromisoformat(at[:10]) - date.fromisoformat(now[:10])).days == 1:
        return say("tomorrow {at}", at=clock(at))
    return moment(at)


def several(words: list[str]) -> str:
    """``1``, ``1 and 2``, ``1, 2 and 3``."""
    return " and ".join(filter(None, (", ".join(words[:-1]), *words[-1:])))


def name_first(words: list[str], most: int) -> str:
    """Names the first few: ``1, 2 and 3``; where there are more, dots tell so: ``1, 2, 3 …``."""
    return several(words) if len(words) <= most else f"{', '.join(words[:most])} …"


def say_more(title: Say | str, more: int) -> Say | str:
    """Tells behind a list's title how many it leaves out; nothing where it leaves none out."""
    return say("{title}: {n} more", title=title, n=more) if more > 0 else title


def together(parts: list[Say], most: int = 0) -> Say:
    """Phrases in a row: ``1``, ``1 and 2``, ``1, 2 and 3``, each still to be translated.

    With `most` the first of them alone; where there are more, dots tell so.
    """
    if not parts:
        return Say()
    if most and len(parts) > most:
        return say("{parts} …", parts=_put_in_row(parts[:most]))
    *before, last = parts
    return say("{first} and {last}", first=_put_in_row(before), last=last) if before else last


def _put_in_row(parts: list[Say]) -> Say:
    first = parts[0]
    for phrase in parts[1:]:
        first = say("{first}, {next}", first=first, next=phrase)
    return first
