"""Weights in a shop of inches: grams are ounces there, or pounds where it is many, kg are pounds.

Weights are kept in g, those of sheets and of lifting in kg. What is typed is read in the unit that
the screen says beside it, and a weight that names its own unit in that one.
"""

# the international avoirdupois pound of 1959; an ounce is a sixteenth of it (from memory)
KG_PER_POUND = 0.45359237
G_PER_OUNCE = 28.349523125
# as a scale or a person writes a unit, and how many g it is
GRAMS = {"g": 1.0, "kg": 1000.0, "oz": G_PER_OUNCE, "lb": KG_PER_POUND * 1000}
MOST_OUNCES = 48  # above, a weight is written in pounds: three of them
FINE = 1.0  # an ounce or a pound of less than that has one digit more


def choose_unit(grams: float) -> str:
    """Chooses the unit that so many g are written in: oz, or lb where it is many."""
    return "oz" if abs(grams) <= MOST_OUNCES * G_PER_OUNCE else "lb"


def write_weight(grams: float, unit: str) -> str:
    """Writes so many g in oz or lb, without the unit; lb to the hundredth, as scales show them."""
    shown = grams / GRAMS[unit]
    digits = 2 if unit == "lb" or 0 < abs(shown) < FINE else 1
    return f"{shown:.{digits}f}"
