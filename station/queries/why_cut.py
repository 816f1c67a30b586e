"""Why a batch is cut, as the plan found it: written on the batch as text, and read from it again.

The text is kept for ever, in English; a screen or paper in another language says it in its own.
"""

import re

from station.shop.words import Say, figure, say

ORDERS = re.compile(r"(\d+) orders? waits? for (.+)")
MARK = re.compile(r"(.+) below its (?:minimum|mark) of (\d+)")  # a minimum was a mark before
AHEAD = re.compile(r"(.+) for packs ahead and own pushes")
USE = re.compile(r"(.+): ([\d.]+) used a day")


def wait_for(part: str, orders: int) -> Say:
    """Says how many orders wait for a part."""
    return say("{n} {n|order waits|orders wait} for {part}", n=orders, part=part)


def lack_of_mark(part: str, mark: int) -> Say:
    """Says that less of a part lies on the rack than its mark."""
    return say("{part} below its minimum of {mark}", part=part, mark=f"{mark}")


def ahead_of_orders(part: str) -> Say:
    """Says that a part goes into packs ahead of orders, or is expected to be sold."""
    return say("{part} for packs ahead and own pushes", part=part)


def used_a_day(part: str, use: float) -> Say:
    """Says how much of a part is used a day."""
    return say("{part}: {use} used a day", part=part, use=figure(use))


def read_why(text: str) -> Say | str:
    """Reads why a batch is cut; what a person wrote, or another program, stays as it is."""
    if found := ORDERS.fullmatch(text):
        return wait_for(found[2], int(found[1]))
    if found := MARK.fullmatch(text):
        return lack_of_mark(found[1], int(found[2]))
    if found := AHEAD.fullmatch(text):
        return ahead_of_orders(found[1])
    if found := USE.fullmatch(text):
        return used_a_day(found[1], float(found[2]))
    return text
