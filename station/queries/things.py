"""What is answered about any thing that has a code: what it is, where all of it is, what is next.

The answers themselves are found by `station.queries.whereabouts`.
"""

from typing import NamedTuple

from station.shop.words import Say

Text = Say | str


class AnswerLine(NamedTuple):
    """One line of an answer: what, where or how many, and the code of the thing to go on to."""

    what: Text
    where: Text = ""
    code: str = ""


class Thing(NamedTuple):
    """A thing by its code, and how it stands now.

    `said` is the whole answer in one line, `next` what comes next with it. `where` lists all of
    it; `promised` who takes it and what is coming, `origin` what it came from. `about` are the
    keys whose entries are its life, its own first.
    """

    label: Say
    number: str
    title: Text
    said: Say
    next: Say
    note: Text = ""
    where: tuple[AnswerLine, ...] = ()
    promised: tuple[AnswerLine, ...] = ()
    origin: tuple[AnswerLine, ...] = ()
    about: tuple[str, ...] = ()
