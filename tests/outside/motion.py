"""Ways and times of a router: closed forms of motion, and what another reader measures."""

from tests.outside.value import COMPUTED, Value

REST = "from rest to rest: d/v + v/a, or 2 √(d/a) where v is not reached; closed form, integrated"
CORNER = "√(a δ sin(θ/2) / (1 − sin(θ/2))), θ the angle inside, δ how far the corner is rounded"
CHORDS = "pygcode 0.2.1, linearize_arc; the exact length is 10 π mm"

# mm, mm/s, mm/s² -> seconds
FROM_REST_TO_REST = (
    Value((100, 50, 500), 2.1, COMPUTED, REST),
    Value((5, 50, 500), 0.2, COMPUTED, REST),
    Value((2.5, 50, 500), 0.1414214, COMPUTED, REST),
    Value((1, 50, 500), 0.0894427, COMPUTED, REST),
    Value((1000, 250, 1000), 4.25, COMPUTED, REST),
)
# mm, mm/s, mm/s², mm/s at its beginning and its end -> seconds
ENTERED_AT_SPEED = (Value((50, 100, 1000, 20, 0), 0.582, COMPUTED, "closed form, integrated"),)
# mm, mm/s, mm/s², mm/s³ -> seconds
LIMITED_JERK = (
    Value((100, 50, 500, 5000), 2.2, COMPUTED, "all phases reached: d/v + v/a + a/j; integrated"),
)
# mm/s², mm, degrees inside the corner -> mm/s
CORNERS = (
    Value((500, 0.01, 150), 11.9054, COMPUTED, CORNER),
    Value((500, 0.01, 90), 3.47434, COMPUTED, CORNER),
    Value((500, 0.01, 45), 1.76056, COMPUTED, CORNER),
)

# a program whose ways and time are known
PROGRAM = """G21 G90 G17
G0 X0 Y0 Z5
M3 S18000
G1 Z-3 F500
G1 X100 F3000
G2 X120 Y-20 I0 J-20
G1 Y-80
G3 X100 Y-100 R20
G1 X0
G1 Y0
G0 Z5
M5
"""
# -> mm in rapid, mm at feed, minutes at the programmed feeds
PROGRAM_TAKES = (
    Value(
        PROGRAM,
        (13, 8 + 422.8318531, 0.156943951),
        COMPUTED,
        "closed form: 360 + 20 π mm in the plane; pygcode 0.2.1 agrees on the places",
    ),
)
# -> mm in rapid and straight at feed
PROGRAM_ELSEWHERE = (Value(PROGRAM, (13, 368), COMPUTED, "pygcode 0.2.1"),)
# its arc by radius, turned either way -> the centre that it turns about; both are a quarter
ITS_SECOND_ARC = (
    Value("G3", (120, -100), COMPUTED, "from (120, −80) to (100, −100) with R20; by hand"),
    Value("G2", (100, -80), COMPUTED, "from (120, −80) to (100, −100) with R20; by hand"),
)
# a quarter of a radius of 20 mm as chords: on which side, largest error -> their length
QUARTER = "G3 X20 Y20 I0 J20"
CHORDS_OF_A_QUARTER = (
    Value(("inside", 0.1), 31.36548, COMPUTED, CHORDS),
    Value(("inside", 0.01), 31.41076, COMPUTED, CHORDS),
    Value(("inside", 0.001), 31.41541, COMPUTED, CHORDS),
    Value(("across", 0.1), 31.44237, COMPUTED, CHORDS),
    Value(("across", 0.01), 31.41855, COMPUTED, CHORDS),
    Value(("across", 0.001), 31.41619, COMPUTED, CHORDS),
)
