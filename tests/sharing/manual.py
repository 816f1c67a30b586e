"""The server's page of the guide, whose own lines the tests of sharing run."""

import re
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PAGE = ROOT / "resources" / "guide" / "server.md"


def read() -> str:
    """The whole page."""
    return PAGE.read_text(encoding="utf-8")


def lines(title: str) -> list[str]:
    """The lines of the block under these words."""
    found = re.search(rf"{re.escape(title)}.*?\n```\n(.*?)```", read(), re.DOTALL)
    assert found, title
    return found[1].splitlines()


def typed(start: str) -> list[str]:
    """What stands under “A server” to be typed and begins so."""
    section = read().partition("## A server\n")[2].partition("\n## ")[0]
    found = re.findall(f"`({start}[^`]*)`", section)
    assert found, start
    return found
