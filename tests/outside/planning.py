"""What planning rests on: pieces lost, use that comes now and then, marks, counts of sheets."""

from tests.outside.value import COMPUTED, MEMORY_COMPUTED, PUBLISHED_RECOMPUTED, Value

LOST = (
    "least n with P(Binomial(n, q) ≥ wanted) ≥ certainty; exact fractions and scipy's nbinom; the "
    "formula NIST/SEMATECH e-Handbook 1.3.6.6.18, from memory"
)
RECURSION = "an own recursion, equal to statsforecast 2.1.1"
CUT_OFFS = "population variance; the cut-offs 1.32 and 0.49 Syntetos, Boylan and Croston 2005"
QUANTILES = "least n with P(use ≤ n) ≥ 0.90, 0.95, 0.98, 0.99; scipy"
DEVIATE = "standard normal deviate; scipy and stockpyl 1.0.2"
CYCLE = "mean + z × deviation, in the manner of Silver, Pyke and Peterson; rounded up 76"
CROSTON_IS = "Croston's method without the correction; " + RECURSION
NEWSVENDOR_IS = "Snyder and Shen through stockpyl 1.0.2, and the closed form"
FILL = "P(use ≤ n) of a Poisson use, at n = 0, 1, 2 …; scipy"
NEGATIVE = "P(use ≤ n) of a negative binomial use (r 4, p 0.5), at n = 0, 1, 2 …; scipy"
PERIODIC_IS = "mean + z × deviation over review and lead time together, normal; scipy"
REPAIRMAN = (
    "closed form of the finite-source queue in fractions, and its balance equations; first tables "
    "in Industritidningen Norden 75 (1947), from memory"
)
OPERATOR = "(a + t) / (a + b), operator and machine; textbooks of facilities planning, from memory"
LOSS_IS = "φ(k) − k (1 − Φ(k)), the unit normal loss function; scipy and stockpyl 1.0.2"
FILL_RATE_IS = (
    "pieces that lack ÷ pieces that come at once, in the manner of Silver, Pyke and Peterson"
)
LEAD_VARIES = "√(days × variance of a day + use of a day² × variance of the days)"
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
CROSTON = (Value(SERIES, 0.9454852011, COMPUTED, CROSTON_IS),)
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

# the same -> what the linear programme needs, counts that may be broken
BROKEN = (
    Value((CUTTING_STOCK[0].given, 4), 452.25, COMPUTED, "duals 1/2, 1/2, 1/4, 0; " + PATTERNS),
    Value((CUTTING_STOCK[1].given, 3), 18.3333, COMPUTED, "duals 1/6, 1/3, 1/2; " + PATTERNS),
    Value((CUTTING_STOCK[2].given, 132), 1.962121, COMPUTED, PATTERNS),
)
U120_00 = (
    42, 69, 67, 57, 93, 90, 38, 36, 45, 42, 33, 79, 27, 57, 44, 84, 86, 92, 46, 38, 85, 33, 82,
    73, 49, 70, 59, 23, 57, 72, 74, 69, 33, 42, 28, 46, 30, 64, 29, 74, 41, 49, 55, 98, 80, 32,
    25, 38, 82, 30, 35, 39, 57, 84, 62, 50, 55, 27, 30, 36, 20, 78, 47, 26, 45, 41, 58, 98, 91,
    96, 73, 84, 37, 93, 91, 43, 73, 85, 81, 79, 71, 80, 76, 83, 41, 78, 70, 23, 42, 87, 43, 84,
    60, 55, 49, 78, 73, 62, 36, 44, 94, 69, 32, 96, 70, 84, 58, 78, 25, 80, 58, 66, 83, 24, 98,
    60, 42, 43, 43, 39
)  # fmt: skip
# what a bin holds, what is packed -> bins
BINS = (
    Value((150, U120_00), 48, PUBLISHED_RECOMPUTED,
          "OR-Library, u120_00; first and best fit decreasing take 49; HiGHS over all patterns"),
)  # fmt: skip

# mean use until more is there, what a piece costs that lies there and one that lacks -> what lies
NEWSVENDOR = (
    Value((50, 0.18, 0.70), 56, COMPUTED, "Poisson(50); " + NEWSVENDOR_IS),
    Value((6, 1, 4), 8, COMPUTED, "Poisson(6); " + NEWSVENDOR_IS),
)
NEWSVENDOR_NORMAL = (Value((50, 8, 0.18, 0.70), 56.6039559274, COMPUTED, NEWSVENDOR_IS),)
# the same, of a Poisson use, and pieces that lie there -> what that costs in the middle
NEWSVENDOR_COST = (
    Value((50, 0.18, 0.70, 56), 1.7972352118, COMPUTED, "Poisson(50); " + NEWSVENDOR_IS),
    Value((6, 1, 4, 8), 3.5701069458, COMPUTED, "Poisson(6); " + NEWSVENDOR_IS),
    Value((6, 1, 4, 5), 6.5902960246, COMPUTED, "Poisson(6); " + NEWSVENDOR_IS),
)
# the same of a normal use, its deviation second
NEWSVENDOR_COST_NORMAL = (
    Value((50, 8, 0.18, 0.70, 56.6039559274), 1.9976051932, COMPUTED, NEWSVENDOR_IS),
    Value((50, 8, 0.18, 0.70, 60), 2.1561315529, COMPUTED, NEWSVENDOR_IS),
)
# deviations that lie there beyond the mean use -> deviations that lack in the middle
LOSS = tuple(
    Value(given, expected, COMPUTED, LOSS_IS)
    for given, expected in ((0, 0.398942), (0.5, 0.197797), (1, 0.083315), (1.28, 0.047499),
                            (1.645, 0.020886), (2, 0.008491), (2.326, 0.003392), (3, 0.000382))
)  # fmt: skip
# use until more is there, its deviation, pieces that come at once, what lies there -> share of the
# pieces that is there when wanted; deviations that lack, rounded up 57
FILL_RATE = (Value((50, 11.4, 200, 56.5629), (0.99, 0.175439), MEMORY_COMPUTED, FILL_RATE_IS),)
# use a day, its deviation, days until more is there, their deviation, certainty -> deviation of
# the use until then, what should lie there
LEAD = (Value((100, 20, 5, 1.5, 0.95), (156.524758, 757.4603), COMPUTED, LEAD_VARIES),)
# mean and variance -> shares of the time that 0, 1, 2 … pieces are enough
ENOUGH_OF = (
    Value((2, 2), (0.135335, 0.406006, 0.676676, 0.857123, 0.947347, 0.983436), COMPUTED, FILL),
    Value((4.5, 4.5), (0.011109, 0.061099, 0.173578, 0.342296, 0.532104, 0.702930, 0.831051,
                       0.913414, 0.959743), COMPUTED, FILL),
    Value((4, 8), (0.0625, 0.1875, 0.34375, 0.5, 0.636719, 0.746094, 0.828125, 0.886719, 0.927002,
                   0.953857, 0.971313, 0.982422), COMPUTED, NEGATIVE),
)  # fmt: skip
# pieces a day, their deviation, days of review and lead time, certainty -> what should lie there
PERIODIC = (Value((20, 6, 3, 0.975), 80.3685, COMPUTED, PERIODIC_IS),)

# routers, people loading, minutes of running and of loading -> nobody waits, a person is idle, a
# router runs: shares of the time; routers that wait, in the middle
TENDING = tuple(
    Value(given, expected, COMPUTED, REPAIRMAN)
    for given, expected in (
        ((4, 1, 45, 5), (0.613809, 0.613809, 0.868931, 0.138086)),
        ((5, 1, 25, 5), (0.284868, 0.284868, 0.715132, 0.709207)),
        ((2, 1, 10, 5), (0.400000, 0.400000, 0.600000, 0.200000)),
        ((1, 1, 30, 10), (0.750000, 0.750000, 0.750000, 0.000000)),
        ((3, 1, 40, 6), (0.622956, 0.622956, 0.837876, 0.109329)),
        ((6, 1, 60, 8), (0.361541, 0.361541, 0.798074, 0.573094)),
        ((6, 2, 30, 9), (0.183478, 0.348608, 0.723769, 0.354600)),
        ((8, 2, 50, 7), (0.332445, 0.518615, 0.859616, 0.160300)),
        ((4, 1, 10, 2), (0.398343, 0.398343, 0.752071, 0.390057)),
    )
)
# minutes shared, of the person alone, of the machine alone -> machines that one person can tend
TENDED = (Value((2, 1, 6), 2.666667, COMPUTED, OPERATOR),)
