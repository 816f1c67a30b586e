"""A PC joins a shop: with the host and a card's one-time code it gets its own role."""

from pathlib import Path

import psycopg

from station.ledger.faults import Fault
from station.sharing import secret
from station.sharing.address import Address
from station.sharing.link import connect, set_up_wrong
from station.sharing.membership import Membership, new_password
from station.sharing.roles import SIGNS_OF_CODE, card_role, tidy_code, verifier

JOIN = "SELECT site, number, role FROM shop.join(%s)"
NO_CODE = f"A join card's code has {SIGNS_OF_CODE} signs. Type it as it stands on the card."


class NotJoined(Fault):
    """The shop did not take this PC in; the text says why."""


def join(folder: Path, address: Address, code: str, site: str = "") -> Membership:
    """Joins the shop; gives the membership, which is kept in the folder. Raises NotJoined.

    `site` is the shop whose history is here already, if there is one.
    """
    card = tidy_code(code)
    if len(card) != SIGNS_OF_CODE:
        raise NotJoined(NO_CODE)
    password = new_password()
    joined, number, role = _ask(address, card, password)
    if site not in ("", joined):
        raise NotJoined(
            f"That is another shop than the one in {folder}. Name an empty folder with --data; "
            "this card is used up, so ask for a new one."
        )
    membership = Membership(site=joined, station=number, role=role, address=address)
    secret.keep(folder, membership.account, password)
    membership.keep(folder)
    return membership


def _ask(address: Address, card: str, password: str) -> tuple[str, str, str]:
    """Sets the station's password by its verifier alone; gives site, station and role."""
    try:
        with connect(address, card_role(card), card) as link:
            proof = verifier(link, "", password)
            site, number, role = link.execute(JOIN, (proof,)).fetchall()[0]
            return site, number, role
    except psycopg.Error as error:
        raise _refused(error, address) from None  # the error's own text names the card's role


def _refused(error: psycopg.Error, address: Address) -> NotJoined:
    text = str(error)
    if "authentication failed" in text:
        return NotJoined(
            f"The server at {address} does not take that code. Type it as it stands on the card; "
            "a card works once and for two days, and who owns the database makes new ones."
        )
    if isinstance(error, psycopg.errors.InvalidPassword):
        return NotJoined("This card has run out. Ask who owns the database for a new one.")
    if why := set_up_wrong(error, address):
        return NotJoined(why)
    if "does not exist" in text:
        return NotJoined(f"There is no database {address.database} on that server.")
    return NotJoined(f"The shop's database at {address} does not answer. Is the host right?")
