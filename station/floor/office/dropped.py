"""A cut file dropped on the window, and the cut file that it belongs to.

`hand.work["dropped"]` is its path until it is read.
"""

from dataclasses import replace

from station.floor.office.fields import LISTS
from station.floor.office.state import chosen, form_of
from station.shop.acts import refuse
from station.shop.facts import CutFile
from station.shop.file_requests import LookAtDropped
from station.shop.rooms import Dropped, FileJob, Hand, Took
from station.shop.views import View
from station.shop.words import say

CUT_FILES = next(n for n, entry in enumerate(LISTS) if entry.kind is CutFile)


def handle_input(hand: Hand, given: Dropped, view: View) -> Took | FileJob:
    """One file of this PC; which cut file it belongs to is asked where none is open."""
    if len(given.paths) != 1:
        said = say("{n} files at once", n=len(given.paths))
        return Took(hand, refuse(said, say("Drop one cut file at a time.")))
    (path,) = given.paths
    if not path:
        said = say("That is no file of this PC")
        return Took(hand, refuse(said, say("Drop a cut file from one of its folders.")))
    fact = chosen(hand, view)
    if form_of(hand):
        said = say("What was typed is not saved yet")
        return Took(hand, refuse(said, say("Save it or leave it, then drop the file again.")))
    if not isinstance(fact, CutFile):
        hand = replace(hand, work={"list": CUT_FILES})
    return FileJob(LookAtDropped(path=path), hand)


def path_of(hand: Hand) -> str:
    """Where the file lies that was dropped and is not read yet; or nothing."""
    return str(hand.work.get("dropped", ""))
