"""Codes on paper and on cards: one letter for the kind, a number, a check character.

A traveller adds its copy letter, a slip its sheet number as well:

    W01 + check          worker 01
    B00412A + check      batch 00412, copy A of its traveller
    B00412A3 + check     the slip of sheet 3, torn off that copy

The check character is ISO/IEC 7064 MOD 37-2 over everything before it. Of its 37
characters only 0-9 and A-Z are printed; a number whose check would be ``*`` is skipped
(`usable`). No Qt, no database: reading a code is a pure function.
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
_AIM = re.compile(r"^\][A-Za-z][0-9A-Za-z]")
LONGEST = 24


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
    """The printed text of a code. Raises ValueError where the check would be ``*``."""
    body = f"{LETTERS[kind]}{number}{copy}{sheet or ''}"
    check = check_character(body)
    if check == "*":
        raise ValueError(f"{body} has no printable check character")
    return body + check


def usable(kind: str, number: str, copy: str = "", sheet: int = 0) -> bool:
    """Whether this code has a printable check character."""
    return check_character(f"{LETTERS[kind]}{number}{copy}{sheet or ''}") != "*"


def write_touch(kind: str, number: str, copy: str = "") -> str:
    """Writes what a touch on a thing sends: its code, with its copy where that prints.

    Empty where it has no code: it is then scanned or named in another way.
    """
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
    return None
