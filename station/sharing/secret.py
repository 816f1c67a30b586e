"""Where a station's password is kept: in the system's keyring, else in a file of its user alone.

It is never shown, logged, passed on a command line or written into the history.
"""

import logging
import os
import stat
import sys
from contextlib import suppress
from pathlib import Path

import keyring
from keyring.errors import KeyringError

from station.ledger.faults import Fault
from station.ledger.renaming import replace_file

SERVICE = "sheet-to-cart"
FILE = "station.secret"
OWN_ONLY = 0o600
VAULT_TRIES = 2  # the vault may just be busy
log = logging.getLogger(__name__)


GONE = "is gone. Ask who owns it for a new join card, and join again."
CLOSED = (
    "cannot be read. Ask who looks after this PC to allow reading {file} in its folder, or who "
    "owns the database for a new join card."
)


class NoSecret(Fault):
    """The password is gone, or this user may not read it."""

    def __init__(self, why: str = GONE) -> None:
        super().__init__(f"This PC's password for the shop's database {why}")


def keep(folder: Path, account: str, password: str, name: str = FILE) -> None:
    """Keeps the password where it is safest on this PC, and nowhere else.

    `name` is the file's, where the keyring does not take it.
    """
    file = folder / name
    if _in_keyring(account, password):
        file.unlink(missing_ok=True)
        return
    _drop_from_keyring(account)
    _write(file, password)


def read(folder: Path, account: str, name: str = FILE) -> str:
    """The password. Raises NoSecret."""
    file = folder / name
    try:
        if kept := _read_file(file):
            return kept
    except OSError as error:
        raise NoSecret(CLOSED.format(file=name)) from error
    with suppress(Exception):  # the vault of each system fails in words of its own
        found = keyring.get_password(SERVICE, account)
        if found:
            return found
    raise NoSecret


def _read_file(file: Path) -> str:
    """The password in a file; empty where there is none. Raises OSError."""
    if not file.exists():
        return ""
    if sys.platform != "win32" and stat.S_IMODE(file.stat().st_mode) != OWN_ONLY:
        file.chmod(OWN_ONLY)  # a copy of the folder may have lost it
    return file.read_text(encoding="utf-8", errors="replace")


def forget(folder: Path, account: str, name: str = FILE) -> None:
    """Removes the password wherever it is kept."""
    (folder / name).unlink(missing_ok=True)
    _drop_from_keyring(account)


def _drop_from_keyring(account: str) -> None:
    """Removes the password from the keyring, where one has it."""
    with suppress(Exception):  # there may be none, and each fails in words of its own
        keyring.delete_password(SERVICE, account)


def _in_keyring(account: str, password: str) -> bool:
    """Whether the system's keyring took it and gives it back: some take it and hold nothing."""
    for _ in range(VAULT_TRIES):
        try:
            keyring.set_password(SERVICE, account, password)
            return keyring.get_password(SERVICE, account) == password
        except KeyringError:
            return False
        except Exception as error:  # noqa: BLE001 - each system's vault has errors of its own
            log.warning("the keyring: %s", type(error).__name__)  # its words may name all
    return False


def _write(file: Path, password: str) -> None:
    """Writes the file so that it is never readable by others, not for a moment.

    On Windows the folder of the user's own data is closed to others by the system.
    """
    new = file.with_name(f"{file.name}.new")
    new.unlink(missing_ok=True)
    handle = os.open(new, os.O_WRONLY | os.O_CREAT | os.O_EXCL, OWN_ONLY)
    with os.fdopen(handle, "w", encoding="utf-8") as out:
        out.write(password)
        out.flush()
        os.fsync(out.fileno())
    replace_file(new, file)
