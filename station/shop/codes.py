"""Codes on paper and on cards: one letter for the kind, a number, a check character.

A traveller adds its copy letter, a slip its sheet number as well:

    W01 + check          worker 01
    B00412A + check      batch 00412, copy A of its traveller
    B00412A3 + check     the slip of sheet 3, torn off that copy

The check character is ISO/IEC 7064 MOD 37-2 over everything before it. Of its 37
characters only 0-9 and A-Z are printed; where the program counts, a number whose check would
be ``*`` is skipped (`usable`).

A number that a shop has from before is kept as it is. Where its bare code can't be printed it
is spelled: ``J`` after the letter of its kind, then capitals and digits as they are, the others
by two or three characters that begin with ``Z``:

    PJHCZA300 + check    part HC-300
    PJ489ZP + check      part 489, one more sign for a check that can be printed

No Qt, no database: reading a code is a pure function.
"""

import re
from functools import lru_cache
from typing import NamedTuple

ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*"

KINDS = {
    "W": "worker",
    "B": "batch",
    "P": "part",
    "S": "rack",
    "O": "order",
    "A": "product",
    "K": "pack",
    "C": "cart",
    "R": "router",
    "T": "bit",
    "L": "lot",
    "F": "cutfile",
    "M": "mailer",
    "X": "button",
    "D": "digit",
    "E": "reason",
    "Z": "zone",
}
LETTERS = {kind: letter for letter, kind in KINDS.items()}

_PLAIN = re.compile(r"([A-Z])([0-9]+)([0-9A-Z])")
_SHEETED = re.compile(r"(B)([0-9]+)([A-Z])([0-9]*)([0-9A-Z])")
_SPELLED = re.compile(r"([A-Z])J([0-9A-Z]+)([0-9A-Z])")
_AIM = re.compile(r"^\][A-Za-z][0-9A-Za-z]")
LONGEST = 24
SURE = 12  # capitals and digits that a shop's own number may have, whatever they are
WIDEST = 21  # signs of a spelled code that still fits a small page
MORE_SIGNS = 3  # tried until a spelled code has a check that can be printed
_PAD = "ZP"
_SIGNS = {"Z": "ZZ", "-": "ZA"} | {c.lower(): f"ZL{c}" for c in ALPHABET[10:36]}
_SIGN = re.compile(r"ZL[A-Z]|ZP|ZZ|ZA|[0-9A-Y]")
_OF_SIGN = {sign: char for char, sign in _SIGNS.items()} | {_PAD: ""}


class Code(NamedTuple):
    """A code that was read whole: its kind, number and, on travellers, copy and sheet."""

    kind: str
    number: str
    copy: str = ""
    sheet: int = 0

    def __str__(self) -> str:
        """The text as printed, check character included."""
        return write(self.kind, self.number, self.copy, self.sheet)


class Unread(NamedTuple):
    """Why a text is no code of ours: ``foreign`` or ``check`` (a character is wrong)."""

    why: str
    text: str


def check_character(text: str) -> str:
    """ISO/IEC 7064 MOD 37-2 check character of `text` (0-9, A-Z), possibly ``*``."""
    carry = 0
    for char in text:
        carry = (carry + ALPHABET.index(char)) * 2 % 37
    return ALPHABET[(1 - carry) % 37]


def write(kind: str, number: str, copy: str = "", sheet: int = 0) -> str:
    """The printed text of a code, spelled where its bare one can't be printed.

    Raises ValueError for a number that has none: a batch's whose check would be ``*``, one of
    other signs or too many.
    """
    bare = number.isdecimal() and number.isascii() and usable(kind, number, copy, sheet)
    text = _write_bare(kind, number, copy, sheet) if bare else _spell(kind, number)
    if not text:
        raise ValueError(f"{kind} {number} has no printable check character or too many signs")
    return text


def _write_bare(kind: str, number: str, copy: str, sheet: int) -> str:
    body = f"{LETTERS[kind]}{number}{copy}{sheet or ''}"
    return body + check_character(body)


@lru_cache(maxsize=4096)
def _spell(kind: str, number: str) -> str:
    """Spells a shop's own number; empty where it can't be, and for batches: they are counted."""
    spelled = "".join(_SIGNS.get(char, char) for char in number)
    if kind == "batch" or not re.fullmatch(r"[0-9A-Za-z-]+", number):
        return ""
    for more in range(MORE_SIGNS):
        body = f"{LETTERS[kind]}J{spelled}{_PAD * more}"
        if (check := check_character(body)) != "*":
            return body + check if len(body) < WIDEST else ""
    return ""


def usable(kind: str, number: str, copy: str = "", sheet: int = 0) -> bool:
    """Whether the bare code of a number of digits has a printable check character."""
    return check_character(f"{LETTERS[kind]}{number}{copy}{sheet or ''}") != "*"


def has_code(kind: str, number: str) -> bool:
    """Whether a thing of this number can be printed as a code, bare or spelled."""
    if kind not in LETTERS:
        return False
    if number.isdecimal() and number.isascii() and usable(kind, number):
        return True
    return bool(_spell(kind, number))


def write_touch(kind: str, number: str, copy: str = "") -> str:
    """Writes what a touch on a thing sends: its code, with its copy where that prints.

    Empty where it has no code: it is then scanned or named in another way.
    """
    if kind != "batch":
        return write(kind, number) if has_code(kind, number) else ""
    if not number.isdecimal():
        return ""
    return next((write(kind, number, c) for c in (copy, "") if usable(kind, number, c)), "")


@lru_cache(maxsize=1024)
def batch_usable(number: str, sheets: int = 0) -> bool:
    """Whether a batch number can be printed at all: bare, and as copies A to Z.

    A copy letter or slip that has no printable check is skipped one by one
    (`next_copy`); here only the bare number and copy A with its slips must print.
    """
    return (
        usable("batch", number)
        and usable("batch", number, "A")
        and all(usable("batch", number, "A", n) for n in range(1, sheets + 1))
    )


def next_copy(number: str, copy: str, sheets: int = 0) -> str:
    """The copy letter after `copy` whose codes all print, or "" after Z."""
    for letter in map(chr, range(ord(copy) + 1, ord("Z") + 1)):
        if all(usable("batch", number, letter, n) for n in range(sheets + 1)):
            return letter
    return ""


def tidy(text: str, prefix: str = "") -> str:
    """What a scanner or a slow hand sent, as our codes are written.

    AIM identifiers (``]C0``), the shop's own prefix, blanks and hyphens go; letters
    become capitals.
    """
    bare = _AIM.sub("", text.strip())
    if prefix and bare.startswith(prefix):
        bare = bare[len(prefix) :]
    return bare.replace(" ", "").replace("-", "").upper()


def read(text: str, prefix: str = "") -> Code | Unread:
    """Reads one code. Never raises: what is no code of ours says why."""
    bare = tidy(text, prefix)
    if not 3 <= len(bare) <= LONGEST or not bare.isascii():
        return Unread("foreign", text)
    found = _split(bare)
    if found is None or bare[0] not in KINDS:
        return Unread("foreign", text)
    if check_character(bare[:-1]) != bare[-1]:
        return Unread("check", text)
    return found


def _split(bare: str) -> Code | None:
    """The parts of a code, its check character not looked at yet."""
    if match := _SHEETED.fullmatch(bare):
        _, number, copy, sheet, _ = match.groups()
        return Code("batch", number, copy, int(sheet or 0))
    if match := _PLAIN.fullmatch(bare):
        letter, number, _ = match.groups()
        return Code(KINDS.get(letter, ""), number)
    if match := _SPELLED.fullmatch(bare):
        return _read_spelled(bare, *match.groups())
    return None


def _read_spelled(bare: str, letter: str, spelled: str, _check: str) -> Code | None:
    """Reads a spelled number; None where it is not spelled as it would be written."""
    signs = _SIGN.findall(spelled)
    if "".join(signs) != spelled or letter not in KINDS:
        return None
    number = "".join(_OF_SIGN.get(sign, sign) for sign in signs)
    written = _spell(KINDS[letter], number)
    return Code(KINDS[letter], number) if written[:-1] == bare[:-1] and written else None
