"""Supervisor's work asks for a supervisor."""

from station.shop.acts import Act, Answer, ask, known_of
from station.shop.words import say


def supervised(act: Act) -> Answer | None:
    """The answer that asks for a supervisor, until one has approved."""
    if known_of(act.args).approved:
        return None
    return ask(
        say("Supervisor's work"),
        say("Supervisor: scan your badge, then enter your PIN."),
        "supervisor",
    )
