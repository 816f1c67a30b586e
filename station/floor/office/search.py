"""Searches the office's lists: one line over numbers, words and codes."""

from dataclasses import replace

from station.floor.office.lists import (
    LISTS,
    OfficeList,
    find_list,
    find_matching,
)
from station.floor.office.work import OfficeHand, OfficeWork
from station.shop.acts import Answer, good, question, refuse
from station.shop.facts import Fact
from station.shop.rooms import Input, Number, Took, Typed
from station.shop.views import View
from station.shop.words import say

HOW = say("Type a number, a word, or a part of one.")


def ask_search(hand: OfficeHand, _view: View) -> Took:
    """Asks what is searched for."""
    work = OfficeWork(list=find_list(hand).kind.kind, ask="search")
    return Took(replace(hand, work=work), question(say("What is searched for?"), HOW))


def handle_input(hand: OfficeHand, given: Input, view: View) -> Took | None:
    """Takes what is searched for; shows all that has it, or the one thing itself as chosen."""
    if not isinstance(given, Typed | Number):
        return None
    shown = show_matching(hand, given.text, view)
    return shown or Took(hand, refuse_unknown(find_list(hand), given.text))


def show_matching(hand: OfficeHand, text: str, view: View) -> Took | None:
    """Shows what has a text: in the open list, else in the first list that has any."""
    of = find_list(hand)
    for one in (of, *(other for other in LISTS if other is not of)):
        if found := find_matching(one.kind, text, view):
            work = OfficeWork(list=one.kind.kind, search=text.strip())
            return Took(replace(hand, work=work), _tell_found(one, found, text))
    return None


def _tell_found(of: OfficeList, found: tuple[Fact, ...], text: str) -> Answer:
    said = say("{list} with “{text}”: {n}", list=of.words, text=text.strip(), n=len(found))
    return good(said, say("Touch a row, or search for something else."))


def refuse_unknown(of: OfficeList, text: str) -> Answer:
    """Refuses what no list has."""
    said = say("{list}: there is no {text}", list=of.words, text=text)
    return refuse(said, say("Touch a row, or add a new one."))
