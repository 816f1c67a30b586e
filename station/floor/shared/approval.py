"""Asks for a supervisor where what is done is supervisor's work."""

from station.shop.acts import Act, Answer, Args, ask_approval
from station.shop.words import say


def ask_supervisor(act: Act[Args]) -> Answer | None:
    """Asks for a supervisor, until one has approved."""
    if act.args.approved:
        return None
    return ask_approval(say("Supervisor's work"))
