"""Check characters: ISO/IEC 7064, MOD 37-2. The standard's own text was not read."""

from tests.outside.value import COMPUTED, Value

BOTH = "ISO/IEC 7064 MOD 37-2: python-stdnum 2.2, equal to an own implementation"

# what stands before it -> its check character
CHECKS = (
    Value("G123498654321", "H", COMPUTED, f"{BOTH}; ISBT 128's example"),
    Value("A999914123456", "N", COMPUTED, BOTH),
    Value("A999522123459", "U", COMPUTED, BOTH),
    Value("A000123", "V", COMPUTED, BOTH),
    Value("MDF0001", "F", COMPUTED, BOTH),
    Value("B7", "H", COMPUTED, BOTH),
    Value("P0007", "1", COMPUTED, BOTH),
    Value("ZZZZZZ", "V", COMPUTED, BOTH),
    Value("0", "1", COMPUTED, BOTH),
    Value("B00412", "Y", COMPUTED, BOTH),
    Value("W01", "2", COMPUTED, BOTH),
)
# what the system finds -> its share of all such slips
FOUND = (
    Value("one character is another", 1.0, COMPUTED, f"{BOTH}; words of seven characters"),
    Value("two neighbours change places", 1.0, COMPUTED, f"{BOTH}; words of seven characters"),
)
