"""How the screens write a figure: thousands, times, days, plurals."""

from datetime import datetime


def n(count: float) -> str:
    """A whole number, its thousands parted by a narrow space."""
    return f"{round(count):,}".replace(",", "\u202f")


def of(count: int, word: str) -> str:
    """A number with its word, more than one or none in the plural."""
    return f"{n(count)} {word if count == 1 else word + 's'}"


def clock(at: str) -> str:
    """The clock of a time."""
    return at[11:16]


MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"]


def day(at: str) -> str:
    """The day of a time: ``25 Nov``."""
    return f"{int(at[8:10])} {MONTHS[int(at[5:7]) - 1]}"


def at_or_day(at: str, now: str) -> str:
    """A time of today by its clock, of any other day by its day."""
    return clock(at) if at[:10] == now[:10] else day(at)


def with_day(at: str, now: str) -> str:
    """A time of today by its clock, of any other day with its day before it."""
    return clock(at) if at[:10] == now[:10] else f"{day(at)} {clock(at)}"


def seconds(start: str, end: str) -> float:
    """Seconds from one time to another."""
    return (datetime.fromisoformat(end) - datetime.fromisoformat(start)).total_seconds()


def minutes(start: str, end: str) -> int:
    """Minutes from one clock to another, as a person tells them from their hands."""
    return round(seconds(f"{start[:16]}:00", f"{end[:16]}:00") / 60)


def joined(words: list[str]) -> str:
    """``1``, ``1 and 2``, ``1, 2 and 3``."""
    return " and ".join(filter(None, (", ".join(words[:-1]), *words[-1:])))


def read(text: str) -> int:
    """A whole number as it is written, back; nothing written is none."""
    return int(text.replace("\u202f", "") or 0)
