"""Shop times reckoned with: shop-local ``YYYY-MM-DDTHH:MM:SS``."""

from datetime import datetime


def count_seconds(start: str, end: str) -> float:
    """Counts the seconds from one time to a later one, at least 0; 0 where one is missing."""
    if not start or not end:
        return 0.0
    gone = datetime.fromisoformat(end) - datetime.fromisoformat(start)
    return max(0.0, gone.total_seconds())
