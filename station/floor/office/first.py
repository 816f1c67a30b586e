"""What a shop starts with on its first morning, before anything of its own is entered.

Reasons, materials and mailers are common practice, no source: a shop changes them in the
office as it likes. The numbers of reasons are on printed cards and stay for good.
"""

from station.shop.facts import Fact, Mailer, Material, Reason, Shop, Worker

# number, words, use, a first-off is due after it, the router must be re-homed
_REASONS: tuple[tuple[str, str, str, bool, bool], ...] = (
    ("01", "torn at a tab", "spoiled", False, False),
    ("02", "chipped edge", "spoiled", False, False),
    ("03", "over-trimmed", "spoiled", False, False),
    ("04", "wrong size", "spoiled", False, False),
    ("05", "damaged in handling", "spoiled", False, False),
    ("11", "bit broke", "sheet", False, False),
    ("12", "sheet moved", "sheet", False, False),
    ("13", "vacuum lost", "sheet", False, False),
    ("14", "wrong file or sheet", "sheet", False, False),
    ("15", "router fault", "sheet", False, False),
    ("21", "uncut", "rework", False, False),
    ("22", "high stubs", "rework", False, False),
    ("23", "rough edge", "rework", False, False),
    ("31", "bit", "stop", True, False),
    ("32", "hold-down", "stop", True, True),
    ("33", "extraction", "stop", False, False),
    ("34", "power or control", "stop", True, True),
    ("35", "waiting for material", "stop", False, False),
    ("36", "other", "stop", False, False),
    ("41", "measured again", "overrule", False, False),
    ("42", "supplier agreed", "overrule", False, False),
    ("43", "order cannot wait", "overrule", False, False),
    ("51", "counted again", "correct", False, False),
    ("52", "found elsewhere", "correct", False, False),
    ("53", "given as a sample", "correct", False, False),
    ("54", "book was wrong", "correct", False, False),
)

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


def first_facts() -> tuple[Fact, ...]:
    """The shop's settings, reasons, materials, mailers and worker 01, still without a PIN."""
    return (
        Shop(id="shop"),
        Worker(id="01", supervisor=True),
        *first_reasons(),
        *first_materials(),
        *first_mailers(),
    )


def first_reasons() -> tuple[Reason, ...]:
    """The reason cards that a shop starts with."""
    return tuple(
        Reason(id=number, words=words, use=use, first_off=first_off, rehome=rehome)
        for number, words, use, first_off, rehome in _REASONS
    )


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
