"""What needs a yes: a supervisor's for an act, an approved revision for a release."""

from station.shop.acts import Act, Answer, Args, ask_approval, refuse
from station.shop.facts import CutFile, Revision
from station.shop.views import View
from station.shop.words import say


def ask_supervisor(act: Act[Args]) -> Answer | None:
    """Asks for a supervisor, until one has approved."""
    if act.args.approved:
        return None
    return ask_approval(say("Supervisor's work"))


def refuse_unapproved(fact: CutFile, view: View) -> Answer:
    """Refuses to release what no approved revision says how to cut."""
    if view.shelf(Revision, fact.id, 1):
        return refuse(say("No approved revision of that cut file"), say("Approve one first."))
    do = say("“{read}” first, then approve it.", read=say("Read its file"))
    return refuse(say("The file of {name} was not read yet", name=fact.name), do)
