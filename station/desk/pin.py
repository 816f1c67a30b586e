"""A supervisor's PIN: kept as an argon2 hash, compared here and nowhere else."""

from itertools import pairwise


def hashed(pin: str) -> str:
    """The argon2id hash of a PIN of 4 to 8 digits. Raises ValueError for any other text."""
    from argon2 import PasswordHasher  # noqa: PLC0415 - only when a PIN is used

    if not (pin.isdecimal() and 4 <= len(pin) <= 8):
        raise ValueError("A PIN has 4 to 8 digits.")
    return PasswordHasher().hash(pin)


def is_easy(pin: str) -> bool:
    """Whether anybody would try it first: one digit again and again, or digits in a row."""
    steps = {int(b) - int(a) for a, b in pairwise(pin)}
    return len(steps) == 1 and steps <= {-1, 0, 1}


def agrees(kept: str, pin: str) -> bool:
    """Whether the PIN is the one that was hashed."""
    from argon2 import PasswordHasher  # noqa: PLC0415 - only when a PIN is used
    from argon2.exceptions import InvalidHashError, VerificationError  # noqa: PLC0415 - only when it is used

    try:
        return bool(kept) and PasswordHasher().verify(kept, pin)
    except (VerificationError, InvalidHashError):
        return False
