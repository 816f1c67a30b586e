"""A supervisor's PIN: kept as an argon2 hash, compared here and nowhere else."""


def hashed(pin: str) -> str:
    """The argon2id hash of a PIN of 4 to 8 digits. Raises ValueError for any other text."""
    from argon2 import PasswordHasher  # noqa: PLC0415 - only when a PIN is used

    if not (pin.isdecimal() and 4 <= len(pin) <= 8):
        raise ValueError("A PIN has 4 to 8 digits.")
    return PasswordHasher().hash(pin)


def agrees(kept: str, pin: str) -> bool:
    """Whether the PIN is the one that was hashed."""
    from argon2 import PasswordHasher  # noqa: PLC0415 - only when a PIN is used
    from argon2.exceptions import InvalidHashError, VerificationError  # noqa: PLC0415 - only when it is used

    try:
        return bool(kept) and PasswordHasher().verify(kept, pin)
    except (VerificationError, InvalidHashError):
        return False
