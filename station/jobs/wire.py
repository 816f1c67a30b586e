"""Messages as JSON between two processes; a name in one may have been written by another system.

A folder's name may be bytes that are no text. JSON bears these as escapes alone, which the fast
way neither writes nor reads.
"""

import json
from typing import Generic, TypeVar

import msgspec

T = TypeVar("T")


def encode(message: msgspec.Struct) -> bytes:
    """Writes a message."""
    try:
        return msgspec.json.encode(message)
    except UnicodeEncodeError:
        return json.dumps(msgspec.to_builtins(message)).encode()


class MessageReader(Generic[T]):
    """Reads messages of one type, or of several."""

    def __init__(self, type: object) -> None:
        self._type, self._fast = type, msgspec.json.Decoder(type)

    def decode(self, text: bytes) -> T:
        """Reads what `encode` wrote. Raises msgspec.MsgspecError, ValueError."""
        try:
            found: T = self._fast.decode(text)
        except msgspec.ValidationError:
            raise
        except msgspec.DecodeError:
            found = msgspec.convert(json.loads(text), self._type)
        return found
