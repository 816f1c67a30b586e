"""What a shop starts with on its first morning, before anything of its own is entered.

Reasons, materials and mailers are common practice, no source: a shop changes them in the
office as it likes. The numbers of reasons are on printed cards and stay for good.
"""

from dataclasses import replace

from station.shop.facts import Fact, Mailer, Material, Reason, Shop, Worker
from station.shop.lengths import inches, to_kept
from station.shop.words import Say

# What a shop that exists is told of when it opens with a newer program: raise it when facts
# below get fields or values that such a shop should have too (see `renewed`).
ISSUE = 8

_REASONS: tuple[Reason, ...] = (
    Reason(id="01", words="torn at a tab", use="spoiled",
           first_at=("popping", "trimming"), usual_at=("popping",)),
    Reason(id="02", words="chipped edge", use="spoiled", first_at=("popping",)),
    Reason(id="03", words="over-trimmed", use="spoiled",
           areas=("trimming",), first_at=("trimming",), usual_at=("trimming",)),
    Reason(id="04", words="wrong size", use="spoiled", first_at=("popping",)),
    Reason(id="05", words="damaged in handling", use="spoiled", first_at=("popping",)),
    Reason(id="11", words="bit broke", use="sheet", breaks_bit=True),
    Reason(id="12", words="sheet moved", use="sheet"),
    Reason(id="13", words="vacuum lost", use="sheet"),
    Reason(id="14", words="wrong file or sheet", use="sheet"),
    Reason(id="15", words="router fault", use="sheet"),
    Reason(id="21", words="uncut", use="rework", look_at_board=True, usual_at=("popping",)),
    Reason(id="22", words="high stubs", use="rework",
           first_at=("trimming",), usual_at=("trimming",)),
    Reason(id="23", words="rough edge", use="rework"),
    Reason(id="31", words="bit", use="stop", first_off=True),
    Reason(id="32", words="hold-down", use="stop", first_off=True, rehome=True, hold_down=True),
    Reason(id="33", words="extraction", use="stop"),
    Reason(id="34", words="power or control", use="stop", first_off=True, rehome=True),
    Reason(id="35", words="waiting for material", use="stop", sheet_held=False, bit_out=False),
    Reason(id="36", words="other", use="stop"),
    Reason(id="41", words="measured again", use="overrule"),
    Reason(id="42", words="supplier agreed", use="overrule"),
    Reason(id="43", words="order cannot wait", use="overrule"),
    Reason(id="44", words="looked at, good", use="overrule"),
    Reason(id="51", words="counted again", use="correct"),
    Reason(id="52", words="found elsewhere", use="correct"),
    Reason(id="53", words="given as a sample", use="correct"),
    Reason(id="54", words="book was wrong", use="correct"),
    Reason(id="55", words="not to be found", use="correct"),
    Reason(id="61", words="crushed corner", use="repack", damage=True),
    Reason(id="62", words="wrong label", use="repack"),
    Reason(id="63", words="held piece", use="repack"),
    Reason(id="64", words="wrong part in it", use="repack"),
    Reason(id="65", words="too tight", use="mailer"),
    Reason(id="66", words="none of the other left", use="mailer", passing=True),
    Reason(id="68", words="tears too easily", use="mailer"),
    Reason(id="69", words="parts are fragile", use="mailer"),
    Reason(id="71", words="damaged on the way", use="returned", damage=True),
    Reason(id="72", words="does not fit", use="returned"),
    Reason(id="73", words="wrong part sent", use="returned"),
    Reason(id="74", words="not wanted", use="returned"),
    Reason(id="76", words="not delivered", use="returned"),
)  # fmt: skip
_WORDS = {reason.id: reason.words for reason in _REASONS}
_NEW_USES = ("repack", "returned", "mailer")  # of the second, fourth and fifth issue
_NEW_NUMBERS = ("55",)  # of the eighth
_NEW_FIELDS = {  # by the issue that they came with
    1: ("breaks_bit", "hold_down", "look_at_board", "areas", "first_at", "usual_at"),
    3: ("sheet_held", "bit_out"),
    6: ("damage",),
    7: ("passing",),
}

# number, name, nominal thickness, lowest and highest reading taken, kg a cubic metre
_MATERIALS: tuple[tuple[str, str, float, float, float, float], ...] = (
    ("1", "6.5 mm birch plywood", 6.5, 6.0, 6.9, 680.0),
    ("2", "9 mm birch plywood", 9.0, 8.6, 9.3, 680.0),
    ("3", "3 mm MDF", 3.0, 2.8, 3.2, 780.0),
    ("4", "6 mm MDF", 6.0, 5.8, 6.2, 760.0),
)

# number, name, inside length and width lying flat, what it closes over, mass
_MAILERS: tuple[tuple[str, str, float, float, float, float], ...] = (
    ("01", "Flat 250 × 180", 250.0, 180.0, 25.0, 22.0),
    ("02", "Flat 350 × 250", 350.0, 250.0, 35.0, 45.0),
    ("03", "Flat 450 × 320", 450.0, 320.0, 45.0, 80.0),
    ("04", "Long 650 × 150", 650.0, 150.0, 45.0, 95.0),
)


# the same for a shop that buys by the inch: inches, lb a cubic foot, oz
_INCH_MATERIALS: tuple[tuple[str, str, float, float, float, float], ...] = (
    ("1", "1/4 in birch plywood", 0.25, 0.22, 0.27, 42.5),
    ("2", "3/8 in birch plywood", 0.375, 0.34, 0.39, 42.5),
    ("3", "1/8 in hardboard", 0.125, 0.11, 0.135, 56.0),
    ("4", "1/4 in MDF", 0.25, 0.235, 0.26, 47.5),
)
_INCH_MAILERS: tuple[tuple[str, str, float, float, float, float], ...] = (
    ("01", "Flat 10 × 7", 10.0, 7.0, 1.0, 0.8),
    ("02", "Flat 14 × 10", 14.0, 10.0, 1.5, 1.6),
    ("03", "Flat 18 × 12", 18.0, 12.0, 1.75, 2.8),
    ("04", "Long 26 × 6", 26.0, 6.0, 1.75, 3.4),
)
INCH_SHEET = (96.0, 48.0)


def first_facts() -> tuple[Fact, ...]:
    """The shop's settings, reasons, materials, mailers and worker 01, still without a PIN."""
    return (
        Shop(id="shop", first=ISSUE),
        Worker(id="01", supervisor=True),
        *first_reasons(),
        *first_materials(),
        *first_mailers(),
    )


def first_reasons() -> tuple[Reason, ...]:
    """The reason cards that a shop starts with."""
    return _REASONS


def say_reason(reason: Reason) -> Say | str:
    """Says a reason: in the language in use as long as nobody gave it words of the shop's own."""
    return Say(reason.words) if _WORDS.get(reason.id) == reason.words else reason.words


def renewed(known: Reason, issue: int = 0) -> Reason:
    """Gives a reason of a shop that exists what the first facts say of it by now.

    Only for fields that came after the issue that the shop is at, and where it still means what
    it meant: a number that the shop uses for something else stays as it is.
    """
    first = next((r for r in _REASONS if (r.id, r.use) == (known.id, known.use)), None)
    if first is None:
        return known
    came = (name for at, names in _NEW_FIELDS.items() if at > issue for name in names)
    return replace(known, **{name: getattr(first, name) for name in came})


def later_reasons() -> tuple[Reason, ...]:
    """The reasons that came after the first shops were set up."""
    return tuple(r for r in _REASONS if r.use in _NEW_USES or r.id in _NEW_NUMBERS)


def list_for_units(units: str) -> tuple[Material | Mailer, ...]:
    """Lists materials and mailers as a shop of these units (mm, inch) buys them."""
    if units != "inch":
        return (*first_materials(), *first_mailers())
    length, width = map(inches, INCH_SHEET)
    materials = (
        Material(id=number, name=name, thickness_mm=inches(t), low_mm=inches(low),
                 high_mm=inches(high), length_mm=length, width_mm=width,
                 density_kg_m3=to_kept(density, "kg/m³", "inch"))
        for number, name, t, low, high, density in _INCH_MATERIALS
    )  # fmt: skip
    mailers = (
        Mailer(id=number, name=name, length_mm=inches(long), width_mm=inches(wide),
               thick_mm=inches(thick), mass_g=to_kept(mass, "g", "inch"))
        for number, name, long, wide, thick, mass in _INCH_MAILERS
    )  # fmt: skip
    return (*materials, *mailers)


def first_materials() -> tuple[Material, ...]:
    """Sheets of 2440 × 1220 mm as a shop of this kind buys them."""
    return tuple(
        Material(id=number, name=name, thickness_mm=t, low_mm=low, high_mm=high,
                 density_kg_m3=density)
        for number, name, t, low, high, density in _MATERIALS
    )  # fmt: skip


def first_mailers() -> tuple[Mailer, ...]:
    """A small set of flat mailers."""
    return tuple(
        Mailer(id=number, name=name, length_mm=length, width_mm=width, thick_mm=thick,
               mass_g=mass)
        for number, name, length, width, thick, mass in _MAILERS
    )  # fmt: skip
