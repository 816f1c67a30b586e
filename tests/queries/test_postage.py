"""Postage in the choice of a mailer: steps, limits, dimensional weight, worked out by hand."""

from dataclasses import replace

import pytest

from station.queries.mailers import plan_parcel
from station.queries.postage import Sent
from station.shop.facts import Mailer, Postage
from tests.queries.test_mailers import among, part

# 2 × 250 g, each 200 × 90 × 9: side by side in the wide one, on each other in the narrow one
PIECES = [(part(200.0, 90.0, 9.0, mass_g=250), 2)]
WIDE = Mailer(id="1", name="Wide", length_mm=230, width_mm=215, thick_mm=20, mass_g=30, price=0.5)
NARROW = replace(WIDE, id="2", name="Narrow", width_mm=120, mass_g=60, price=0.3)
LETTER = Postage(id="1", name="Letter", to_g=535, price=3.0)
PARCEL = Postage(id="2", name="Parcel", to_g=2000, price=6.0)


def sent(*steps, mailers=(WIDE, NARROW)):
    """How the two pieces go: mailer, and what it costs."""
    found = plan_parcel(among(*mailers, *steps), PIECES)
    return found.mailer and found.mailer.name, found.sent


def test_without_postage_the_cheapest_mailer_is_taken():
    assert sent() == ("Narrow", None)
    assert not plan_parcel(among(WIDE, NARROW), PIECES).is_rated


@pytest.mark.parametrize(
    ("steps", "expected"),
    [
        # 560 g in the narrow one is past the letter's 535 g: 0.5 + 3 against 0.3 + 6
        ((LETTER, PARCEL), ("Wide", Sent("Letter", 3.0))),
        ((PARCEL,), ("Narrow", Sent("Parcel", 6.0))),
        # a letter of 9 mm at most takes only what lies side by side
        ((replace(LETTER, to_g=900, thick_mm=10), PARCEL), ("Wide", Sent("Letter", 3.0))),
        # 230 + 2 × 215 = 660 of length and girth; the narrow one has 230 + 240 = 470
        ((replace(LETTER, to_g=900, length_girth_mm=600),), ("Narrow", Sent("Letter", 3.0))),
        # 230 × 215 × 9 mm = 445 cm³: over 500 cm³ a kg 890 g; 230 × 120 × 18 = 497 cm³: 994 g
        ((replace(LETTER, to_g=900, divisor=500), PARCEL), ("Wide", Sent("Letter", 3.0))),
        ((replace(LETTER, to_g=889, divisor=500), PARCEL), ("Narrow", Sent("Parcel", 6.0))),
        ((replace(LETTER, active=False), PARCEL), ("Narrow", Sent("Parcel", 6.0))),
    ],
)
def test_the_mailer_with_the_least_price_and_postage(steps, expected):
    assert sent(*steps) == expected


def test_what_nothing_takes_whole_is_told_and_still_has_a_mailer():
    light = replace(LETTER, to_g=300)
    found = plan_parcel(among(WIDE, NARROW, light), PIECES)
    assert (found.mailer, found.sent, found.is_rated) == (NARROW, None, True)


def test_nobody_knows_the_postage_of_what_nobody_can_weigh():
    bare = replace(PIECES[0][0], thickness_mm=17.0, mass_g=0.0)  # no sheet good is so thick
    found = plan_parcel(among(replace(WIDE, thick_mm=60), LETTER), [(bare, 1)])
    assert (found.sent, found.is_rated) == (None, False)
