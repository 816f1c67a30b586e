"""Code 128: ISO/IEC 15417. Its own text was not read: secondary transcriptions and tutorials."""

from tests.outside.value import COMPUTED, MEMORY_COMPUTED, PUBLISHED, PUBLISHED_RECOMPUTED, Value

STANDARD = "ISO/IEC 15417, read in secondary transcriptions"
LENGTH = f"{STANDARD}: n data characters are 11 n + 35 modules long"
RULE = "ISO/IEC 15417: (start + Σ i vᵢ) mod 103"


def plain(text: str) -> list[int]:
    """The values of printable characters in sets A and B: 32 less than their ASCII numbers."""
    return [ord(char) - 32 for char in text]


# a text -> the most modules that its symbol may be long
LENGTHS = (
    Value("MASTER-01", 134, PUBLISHED_RECOMPUTED, LENGTH),
    Value("PJJ123C", 112, PUBLISHED_RECOMPUTED, LENGTH),
    Value("123456", 68, PUBLISHED_RECOMPUTED, f"{LENGTH}; in set C"),
    Value(
        "RACK1234567",
        145,
        COMPUTED,
        "python-barcode goes to set C early; 134 is the best by annex E and two other encoders",
    ),
)
# how a symbol is made -> modules and widths of bars and gaps
STRUCTURE = (
    Value("modules a character, in six elements", 11, PUBLISHED_RECOMPUTED, STANDARD),
    Value("modules of bars in a character", "even", PUBLISHED_RECOMPUTED, STANDARD),
    Value("start", ("211412", "211214", "211232"), PUBLISHED_RECOMPUTED, f"{STANDARD}: A, B, C"),
    Value("stop", "2331112", PUBLISHED_RECOMPUTED, f"{STANDARD}: 13 modules"),
)
# start and values of a symbol -> its check value
CHECKS = (
    Value((103, plain("PJJ123C")), 54, MEMORY_COMPUTED, f"{RULE}; an encyclopaedia's example"),
    Value((104, plain("PJJ123C")), 55, COMPUTED, RULE),
    Value((104, plain("HI345678")), 26, COMPUTED, RULE),
    Value((104, plain("MASTER-01")), 94, COMPUTED, RULE),
    Value((105, [12, 34, 56, 78, 90]), 85, COMPUTED, RULE),
)
# narrow bars of quiet zone at either end; least height in mm, and as a share of the length
QUIET = Value("quiet zone", 10, PUBLISHED, "tutorial pages on Code 128: 10 X at both ends")
HEIGHT = Value(
    "height",
    (5, 0.15),
    PUBLISHED,
    "tutorial pages: 5 mm or 15 % of the length, guidance for scanning by hand",
)
# a text and mm of a narrow bar -> its length in mm without quiet zones and with them
SIZES = (Value(("MASTER-01", 0.33), (44.22, 50.82), COMPUTED, LENGTH),)
