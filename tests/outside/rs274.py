"""Cut files as RS-274 text: NISTIR 6556, the report on the RS274/NGC language.

Kramer, Proctor and Messina, National Institute of Standards and Technology, 17 August 2000; the
same language as ISO 6983-1. The report's text was read in a transcription, ISO 6983-1 was not.
"""

from tests.outside.value import COMPUTED, MEMORY, PUBLISHED, PUBLISHED_RECOMPUTED, Value

REPORT = "NISTIR 6556 (2000), read in a transcription"
ON_WORDS = f"{REPORT}: how lines and words are written"
ON_COMMENTS = f"{REPORT}: comments and messages"
ON_EXPRESSIONS = f"{REPORT}: expressions, unary operations and parameters"
ON_ORDER = f"{REPORT}: order of execution, table 8"
ON_GROUPS = f"{REPORT}: modal groups"
ON_ENDING = f"{REPORT}: what M2 and M30 set back"
ON_TOOLS = f"{REPORT}: T chooses a tool, M6 changes it and stops the spindle"
ON_G92 = f"{REPORT}: its example of G92"
ON_HOME = f"{REPORT}: G28 and G30"
ON_ARCS = f"{REPORT}: its example of an arc in centre format"
ON_RADII = f"{REPORT}: arcs, how far two radii may differ"
ON_FEED = f"{REPORT}: units of feed"
ON_INVERSE = f"{REPORT}: inverse time"
ON_DWELL = f"{REPORT}: dwell in seconds"
ON_CYCLES = f"{REPORT}: canned cycles"

# what stands behind X -> what it is worth
EXPRESSIONS = (
    Value("[2.0/3*1.5-5.5/11.0]", 0.5, PUBLISHED, ON_EXPRESSIONS),
    Value("FIX[-2.8]", -3, PUBLISHED, ON_EXPRESSIONS),
    Value("FUP[-2.8]", -2, PUBLISHED, ON_EXPRESSIONS),
)

# a line -> what is left of it without blanks and comments
COMMENTS = (Value("G0 (a (b) X1", "G0X1", PUBLISHED, f"{ON_COMMENTS}: they do not nest"),)

# a file -> what its reader has to assume: nothing, for the report takes it as it is
PLAIN_FILES = (
    Value("G21\n" + " " * 254 + "X1\nM30", (), PUBLISHED, f"{ON_WORDS}: 256 letters a line"),
    Value("N99999 G21\nG0 X1\nM30\n", (), PUBLISHED, f"{ON_WORDS}: line numbers to 99999"),
    Value("G21 (MSG, one)(two)\nM30", (), PUBLISHED, f"{ON_COMMENTS}: the last of several"),
)

# a file -> where each of its moves ends, in mm
WAYS = (
    Value("G21\ng0x +0. 12 34y 7", [(0.1234, 7, 0)], PUBLISHED, ON_WORDS),
    Value(
        "G21 F100\n#3=15\n#3=6 G1 X#3\nX#3",
        [(15, 0, 0), (6, 0, 0)],
        PUBLISHED,
        f"{ON_EXPRESSIONS}: a parameter is set after its line",
    ),
    Value(
        "G21 G0 X10\nG91 G1 X10 G20 F5",
        [(10, 0, 0), (264, 0, 0)],
        PUBLISHED,
        f"{ON_ORDER}: units before distances before motion",
    ),
    Value(
        "G21 G0 X4\nG92 X7\nG0 X7\nG92 X9\nG0 X9\nX10\nG92.1\nX0",
        [(4, 0, 0), (4, 0, 0), (4, 0, 0), (5, 0, 0), (0, 0, 0)],
        PUBLISHED,
        ON_G92,
    ),
    Value(
        "G21 G0 X10 Y20 Z5\nG28 X15",
        [(10, 20, 5), (15, 20, 5), (0, 0, 0)],
        PUBLISHED,
        f"{ON_HOME}: every axis goes home, by way of the point on the line",
    ),
    Value(
        "G21 G0 X10 Y20 Z5\nG30 X15",
        [(10, 20, 5), (15, 20, 5), (0, 0, 0)],
        PUBLISHED,
        f"{ON_HOME}: every axis goes home, by way of the point on the line",
    ),
)

# a file -> (line, kind) of each problem
PROBLEMS = (
    Value("G21\nM3 M7 M8 M48\nM30", [], PUBLISHED, f"{ON_WORDS}: four M words a line"),
    Value("G21\nM3 M7 M8 M48 M0\nM30", [(2, "many-m")], PUBLISHED, f"{ON_WORDS}: no fifth"),
    Value("G21 F9\nG1 X1 X2", [(2, "twice")], PUBLISHED, f"{ON_WORDS}: one word a letter"),
)

# the line behind START -> the column of its last move, and the value there
START = "G21 G90 F500\nG10 L2 P2 X100\nG0 X3 Z9\nS1000 T2\n"
ORDER = (
    Value("X10 G1 F100 G93", ("minutes", 0.01), PUBLISHED, f"{ON_ORDER}: feed mode before F"),
    Value("X10 G1 F600 G20", ("feed", 15240), PUBLISHED, f"{ON_ORDER}: F is told in the units"),
    Value("X10 S5000 M3 G1", ("rpm", 5000), PUBLISHED, f"{ON_ORDER}: spindle before motion"),
    Value("X10 G1 M3 M6 T2", ("tool", 2), PUBLISHED, f"{ON_ORDER}: the tool before motion"),
    Value("X10 G1 M3 M6 T2", ("rpm", 1000), PUBLISHED, f"{ON_ORDER}: M6 before M3"),
    Value("X10 G2 G18 K5 I0", ("plane", 18), PUBLISHED, f"{ON_ORDER}: plane before motion"),
    Value("X10 G1 G20", ("x", 254), PUBLISHED, f"{ON_ORDER}: units before motion"),
    Value("X10 G1 G55", ("x", 110), PUBLISHED, f"{ON_ORDER}: work offset before motion"),
    Value("X10 G1 G61", ("exact", True), PUBLISHED, f"{ON_ORDER}: path mode before motion"),
    Value("X10 G1 G91", ("x", 13), PUBLISHED, f"{ON_ORDER}: distances before motion"),
    Value("G20 X10 G91 G1", ("x", 257), PUBLISHED, f"{ON_ORDER}: units and distances first"),
    Value("X10 Z-1 R1 G81 G99", ("z", 1), PUBLISHED, f"{ON_ORDER}: the way back before motion"),
    Value("M2 X10 G1", ("x", 10), PUBLISHED, f"{ON_ORDER}: the stop comes last"),
)

# a file -> the tool and the speed at each of its moves
TOOLS = (
    Value("G21 F9 T3\nG1 X1\nX2\nM6\nX3", ([0, 0, 3], [0, 0, 0]), PUBLISHED, ON_TOOLS),
    Value("G21 S9000 M3 F9\nG1 X1\nT1 M6\nX2", ([0, 1], [9000, 0]), PUBLISHED, ON_TOOLS),
)

# a modal group's letter and what it says -> its codes: one of them a line
AGREES = "from memory of NISTIR 6556; pygcode 0.2.1 has the same group"
GROUPS = (
    Value(
        ("G", "motion"),
        (0, 1, 2, 3, 80, 81, 82, 83, 84, 85, 86, 87, 88, 89),
        MEMORY,
        f"{AGREES}, as far as it knows the codes",
    ),
    Value(("G", "plane"), (17, 18, 19), MEMORY, AGREES),
    Value(("G", "distance"), (90, 91), MEMORY, AGREES),
    Value(("G", "feed mode"), (93, 94), MEMORY, AGREES),
    Value(("G", "units"), (20, 21), MEMORY, AGREES),
    Value(("G", "side"), (40, 41, 42), MEMORY, AGREES),
    Value(("G", "length"), (43, 49), MEMORY, AGREES),
    Value(("G", "return"), (98, 99), MEMORY, AGREES),
    Value(("G", "system"), (54, 55, 56, 57, 58, 59, 59.1, 59.2, 59.3), MEMORY, AGREES),
    Value(("G", "path"), (61, 61.1, 64), MEMORY, AGREES),
    Value(("M", "stop"), (0, 1, 2, 30, 60), PUBLISHED, ON_GROUPS),
    Value(("M", "spindle"), (3, 4, 5), PUBLISHED, ON_GROUPS),
    Value(("M", "override"), (48, 49), PUBLISHED, ON_GROUPS),
)

# a program's end -> the modes after it: G54, G17, G90, G94; G40, M5, motion G1
SET_BACK = ((1, 17, True, False), (40, False, 1))
ENDINGS = (
    Value("M2", SET_BACK, PUBLISHED, ON_ENDING),
    Value("M30", SET_BACK, PUBLISHED, ON_ENDING),
)

# an arc -> its centre and its length in mm
READ_AGAIN = f"{REPORT}: arcs; lengths computed"
ARCS = (
    Value("G2 X20 Y20 R20", ((20, 0), 31.4159265), PUBLISHED_RECOMPUTED, READ_AGAIN),
    Value("G2 X20 Y20 R-20", ((0, 20), 94.2477796), PUBLISHED_RECOMPUTED, READ_AGAIN),
    Value("G3 X10 I5", ((5, 0), 15.7079633), PUBLISHED_RECOMPUTED, READ_AGAIN),
    Value("G2 I10", ((10, 0), 62.8318530718), PUBLISHED_RECOMPUTED, READ_AGAIN),
    Value("G0 X10\nG2 I-10 Z-2", ((0, 0), 62.8636760), PUBLISHED_RECOMPUTED, READ_AGAIN),
)
# the report's own: from (7, 7) round (10, 11) -> degrees turned, radius, length in the plane
ITS_ARC = (
    Value(
        "G0 X7 Y7\nG17 G2 x10 y16 i3 j4 z9",
        ((10, 11), -143.130102, 5, 12.4904577),
        PUBLISHED_RECOMPUTED,
        ON_ARCS,
    ),
)
# an arc whose radii differ -> whether that is told
RADII = (
    Value("G2 X10.0019 Y0 I5 J0", False, PUBLISHED, f"{ON_RADII}: 0.002 mm"),
    Value("G2 X10.01 Y0 I5 J0", True, PUBLISHED, f"{ON_RADII}: 0.002 mm"),
    Value("G20 G2 X1.0001 Y0 I0.5 J0", False, PUBLISHED, f"{ON_RADII}: 0.0002 inch"),
    Value("G20 G2 X1.001 Y0 I0.5 J0", True, PUBLISHED, f"{ON_RADII}: 0.0002 inch"),
)

# a file -> the feed of its first move in mm/min, or its minutes
FEEDS = (Value("G20 G1 X1 F100", 2540, COMPUTED, f"{ON_FEED}; an inch is 25.4 mm"),)
INVERSE_TIMES = (Value("G21 G93\nG1 X100 F2", 0.5, COMPUTED, ON_INVERSE),)
# a file -> seconds of its pause
DWELLS = (Value("G21\nG4 P500", 500.0, PUBLISHED, ON_DWELL),)

# a series of cycles -> lengths in rapid and at feed, in mm, without the way to where it begins
CYCLES = (
    Value(
        ("G0 X1 Y2 Z3", "G90 G81 G98 X4 Y5 Z1.5 R2.8\nG80"),
        (5.9426407, 1.3),
        PUBLISHED_RECOMPUTED,
        f"{ON_CYCLES}, its first example; lengths computed",
    ),
    Value(("G0 Z5", "G98 G81 X0 Y0 Z-10 R2\nX10\nX20\nG80"), (74, 36), COMPUTED, ON_CYCLES),
    Value(("G0 Z5", "G99 G81 X0 Y0 Z-10 R2\nX10\nX20\nG80"), (59, 36), COMPUTED, ON_CYCLES),
    Value(
        ("G0 Z2", "G99 G83 X0 Y0 Z-10 R2 Q4\nG80"),
        (35.492, 12.508),
        PUBLISHED_RECOMPUTED,
        f"{ON_CYCLES}; 0.254 mm short of where it was, as in code made from the report",
    ),
)
# the report's examples -> where each move of the cycles ends
CYCLE_ENDS = (
    Value(
        ("G0 X1 Y2 Z3", "G90 G81 G98 X4 Y5 Z1.5 R2.8\nG80"),
        [(4, 5, 3), (4, 5, 2.8), (4, 5, 1.5), (4, 5, 3)],
        PUBLISHED,
        f"{ON_CYCLES}, its first example as its list of moves has it",
    ),
)
REPEATS = (
    Value(
        "G21 F100\nG0 X1 Y2 Z3\nG91 G81 G98 X4 Y5 Z-0.6 R1.8 L3",
        ([(5, 7, 4.2), (9, 12, 4.2), (13, 17, 4.2)], (13, 17, 4.8)),
        PUBLISHED,
        f"{ON_CYCLES}, its second example, from memory of the same transcription",
    ),
)
# a cycle that is an error
CYCLE_ERRORS = (
    Value("G81 X1 Z2 R1", "cycle", PUBLISHED, f"{ON_CYCLES}: R below Z"),
    Value("G83 X1 Z-1 R1 Q-1", "cycle", PUBLISHED, f"{ON_CYCLES}: Q is not positive"),
    Value("G81 X1 Z-1 R1 L0", "cycle", PUBLISHED, f"{ON_CYCLES}: L is no positive integer"),
    Value("G81 X1 Z-1 R1 L1.5", "cycle", PUBLISHED, f"{ON_CYCLES}: L is no positive integer"),
    Value("G93 G81 X1 Z-1 R1", "cycle", PUBLISHED, f"{ON_CYCLES}: inverse time"),
    Value("G41\nG81 X1 Z-1 R1", "cycle", PUBLISHED, f"{ON_CYCLES}: cutter compensation"),
    Value("G81 X1 Z-1 R1 A90", "cycle", PUBLISHED, f"{ON_CYCLES}: rotary motion"),
)
# boring from behind -> where each move ends, and which of them cut
BORING = (
    Value(
        "G21 F9\nG0 Z5\nG99 G87 X10 Z-8 R2 I3 J1 K-6\nX20\nG80\nM30",
        (
            *((10, 0, 5), (10, 0, 2), (13, 1, 2), (13, 1, -8), (10, 0, -8), (10, 0, -6)),
            *((10, 0, -8), (13, 1, -8), (13, 1, 2), (10, 0, 2)),
        ),
        MEMORY,
        "from memory of NISTIR 6556: beside the hole, down, in, up to K at feed, and out again",
    ),
)
