"""What planning rests on: pieces lost, use that comes now and then, marks, counts of sheets."""

from tests.outside.value import COMPUTED, MEMORY_COMPUTED, Value

LOST = (
    "least n with P(Binomial(n, q) ≥ wanted) ≥ certainty; exact fractions and scipy's nbinom; the "
    "formula NIST/SEMATECH e-Handbook 1.3.6.6.18"
)
RECURSION = "an own recursion, equal to statsforecast 2.1.1"
CUT_OFFS = "population variance; the cut-offs 1.32 and 0.49 Syntetos, Boylan and Croston 2005"
QUANTILES = "least n with P(use ≤ n) ≥ 0.90, 0.95, 0.98, 0.99; scipy"
DEVIATE = "standard normal deviate; scipy and stockpyl 1.0.2"
CYCLE = "mean + z × deviation, in the manner of Silver, Pyke and Peterson; rounded up 76"
PATTERNS = "all patterns enumerated, HiGHS as a linear programme and CP-SAT"

# good pieces wanted, chance that one is good, certainty -> cut, chance of enough, with one fewer
ENOUGH = tuple(
    Value(given, expected, COMPUTED, LOST)
    for given, expected in (
        ((24, 0.97, 0.95), (26, 0.958020, 0.828038)),
        ((72, 0.97, 0.95), (77, 0.971691, 0.921601)),
        ((336, 0.97, 0.95), (352, 0.961071, 0.933349)),
        ((100, 0.90, 0.95), (117, 0.956930, 0.929779)),
        ((1, 0.90, 0.95), (2, 0.990000, 0.900000)),
        ((1, 0.90, 0.90), (1, 0.900000, 0.000000)),
        ((8, 0.985, 0.99), (9, 0.992448, 0.886115)),
        ((12, 0.85, 0.80), (15, 0.822655, 0.647911)),
        ((50, 0.94, 0.90), (56, 0.950600, 0.889288)),
        ((208, 0.995, 0.95), (211, 0.977784, 0.910736)),
        ((500, 0.97, 0.99), (525, 0.990111, 0.982968)),
        ((10, 1.0, 0.95), (10, 1.000000, 0.000000)),
        ((0, 0.97, 0.95), (0, 1.000000, 0.000000)),
        ((3, 0.5, 0.5), (5, 0.500000, 0.312500)),
    )
)

SERIES = (0, 0, 3, 0, 1, 0, 0, 0, 4, 0, 2, 0, 0, 5, 0, 0, 0, 1, 2, 0, 0, 0, 3, 0)
# use day by day -> pieces a day; level and interval begin with the first use, weights 0.1
SBA = (Value(SERIES, 0.8982109410, COMPUTED, RECURSION),)
TSB = (Value(SERIES, 0.8551955750, COMPUTED, RECURSION),)
# -> days from use to use, squared variation of the pieces
PATTERN = (Value(SERIES, (3.0, 0.251701), MEMORY_COMPUTED, CUT_OFFS),)

# mean and variance of the use -> what lasts for 90, 95, 98 and 99 of a hundred times
LASTS = (
    Value((0.5, 0.5), (1, 2, 2, 3), COMPUTED, QUANTILES),
    Value((1, 1), (2, 3, 3, 4), COMPUTED, QUANTILES),
    Value((2, 2), (4, 5, 5, 6), COMPUTED, QUANTILES),
    Value((4.5, 4.5), (7, 8, 9, 10), COMPUTED, QUANTILES),
    Value((10, 10), (14, 15, 17, 18), COMPUTED, QUANTILES),
    Value((4, 8), (8, 9, 11, 13), COMPUTED, "negative binomial; " + QUANTILES),
)
# share of all below it -> deviate
DEVIATES = (
    Value(0.90, 1.281552, COMPUTED, DEVIATE),
    Value(0.95, 1.644854, COMPUTED, DEVIATE),
    Value(0.975, 1.959964, COMPUTED, DEVIATE),
    Value(0.98, 2.053749, COMPUTED, DEVIATE),
    Value(0.99, 2.326348, COMPUTED, DEVIATE),
    Value(0.995, 2.575829, COMPUTED, DEVIATE),
    Value(0.999, 3.090232, COMPUTED, DEVIATE),
)
# mean and standard deviation of the use until more is there, certainty -> what should lie there
CYCLE_SERVICE = (Value((58.3, 13.1, 0.90), 75.0883, MEMORY_COMPUTED, CYCLE),)

# length, pieces wanted by width -> lengths cut; the last is no whole round-up
CUTTING_STOCK = (
    Value((100, ((45, 97), (36, 610), (31, 395), (14, 211))), 453, COMPUTED,
          "Chvátal, Gilmore and Gomory; the linear programme 452.25; " + PATTERNS),
    Value((17, ((3, 25), (5, 20), (9, 15))), 19, COMPUTED,
          "Winston; the linear programme 18.3333; " + PATTERNS),
    Value((132, ((44, 2), (33, 3), (12, 6))), 3, COMPUTED,
          "no integer round-up; the linear programme 1.962121; " + PATTERNS),
)  # fmt: skip
