"""What this PC's screen is like: dark or light, with sounds or without, in which language.

It is this station's own, kept beside its work and never shared; the window follows it.
"""

from typing import NamedTuple

from station.ledger.ledger import Ledger
from station.shop.acts import Answer, good
from station.shop.words import Say, say

SWITCHES = ("dark", "sounds", "language")
LANGUAGES = {"": "English", "de": "Deutsch"}  # "": the templates as they are


class Screen(NamedTuple):
    """How this PC's screen looks, sounds and speaks."""

    dark: bool = False
    muted: bool = False
    language: str = ""


def screen(ledger: Ledger) -> Screen:
    """What was chosen on this PC."""
    language = ledger.local("language") or ""
    return Screen(
        dark=ledger.local("dark") == "yes",
        muted=ledger.local("sounds") == "no",
        language=language if language in LANGUAGES else "",
    )


def switched(ledger: Ledger, name: str) -> Answer:
    """Changes one of them, and says what it is now."""
    now = screen(ledger)
    if name == "dark":
        ledger.set_local("dark", "" if now.dark else "yes")
        said = say("The screen is light now") if now.dark else say("The screen is dark now")
    elif name == "sounds":
        ledger.set_local("sounds", "" if now.muted else "no")
        said = say("Sounds are on now") if now.muted else say("Sounds are off now")
    else:
        said = _next_language(ledger, now.language)
    return good(said, say("Press it again to change it."))


def _next_language(ledger: Ledger, language: str) -> Say:
    order = (*LANGUAGES, *LANGUAGES)
    chosen = order[order.index(language) + 1]
    ledger.set_local("language", chosen)
    return say("This screen speaks {language} now", language=LANGUAGES[chosen])
