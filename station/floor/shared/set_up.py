"""Says what a shop still lacks before its first sheet: done in the office, told at loading."""

from collections.abc import Mapping
from typing import NamedTuple

from station.queries.first_sheet import SetUpStep, StepName, list_missing
from station.shop.views import View
from station.shop.words import Say, say, together


class StepWords(NamedTuple):
    """The words of a step: what it is about, what is done for it, its list in the office."""

    title: Say
    do: Say
    list: str


WORDS: Mapping[StepName, StepWords] = {
    "pin": StepWords(
        say("A supervisor with a PIN"), say("Open the worker, touch “A new PIN”."), "worker"
    ),
    "router": StepWords(say("A router"), say("Its name, its bed, its size."), "router"),
    "material": StepWords(
        say("A material"), say("What sheets are made of, with its thickness."), "material"
    ),
    "lot": StepWords(
        say("Sheets in the store"), say("Make a lot, save it, then “Receive sheets”."), "lot"
    ),
    "bit": StepWords(
        say("A bit"), say("Its diameter, and which router it is in."), "bit"
    ),
    "cutfile": StepWords(
        say("A cut file that was read"), say("Make one, save it, then “Read its file”."), "cutfile"
    ),
    "approved": StepWords(
        say("A cut file that is approved"), say("Look it over, then approve it."), "cutfile"
    ),
    "rack": StepWords(
        say("A rack place for each part"), say("Make it, and say which part lies there."), "rack"
    ),
    "mailer": StepWords(say("A mailer"), say("What packs are sent in."), "mailer"),
    "cart": StepWords(say("A cart"), say("What takes packs to shipping."), "cart"),
    "product": StepWords(say("A product"), say("What is sold: which parts it has."), "product"),
    "order": StepWords(say("An order"), say("By hand, or from a list."), "order"),
}  # fmt: skip


def say_missing(view: View) -> Say | None:
    """Says what the first sheet still wants, the first of it first; None: nothing."""
    missing = list_missing(view)
    return together([WORDS[step.name].title for step in missing]) if missing else None


def find_next(steps: tuple[SetUpStep, ...]) -> SetUpStep | None:
    """Finds the first step that is not done."""
    return next((step for step in steps if not step.done), None)
