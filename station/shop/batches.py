"""What several rooms do with a batch alike: its paper, its children."""

from dataclasses import replace

from station.shop.acts import Act, Answer, new_number, refuse
from station.shop.codes import Code
from station.shop.facts import Batch
from station.shop.words import say


def child_of(act: Act, batch: Batch, role: str, *, tries: int = 0) -> Batch:
    """A batch without sheets of its own: ``split`` off, or ``rework``, to be made good."""
    return replace(
        batch,
        id=new_number(act, "batch"),
        parent=batch.id,
        role=role,
        tries=tries or batch.tries,
        sheets=0,
        cut=0,
        spoiled=0,
        copy="A",
        void=(),
        holds=(),  # while its parent is held it is held too, and free with it
        state="cut",
        released=act.at,
    )


def again(act: Act, batch: Batch) -> Batch:
    """A child batch for pieces that are made good: one try more than where they come from."""
    return child_of(act, batch, "rework", tries=batch.tries + 1)


def not_this_paper(code: Code, batch: Batch | None) -> Answer | None:
    """Why a paper cannot be picked up: no such batch, or a void copy."""
    if batch is None:
        return refuse(
            say("There is no batch {batch}", batch=code.number), say("Look at the paper.")
        )
    if code.copy and code.copy != batch.copy:
        return refuse(
            say("Void: see copy {copy}", copy=batch.copy),
            say("Throw this paper away. Nothing was counted."),
        )
    return None
