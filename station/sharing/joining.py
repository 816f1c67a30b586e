"""A PC joins a shop: with the host and a card's one-time code it gets its own role.

The server spends the card as its last step, once this PC has kept the new password. Where its
word of that is lost on the way, the same card on the same PC goes on with what was kept.
"""

import json
from dataclasses import asdict, dataclass, field
from pathlib import Path

import psycopg

from station.ledger.faults import Fault
from station.sharing import secret
from station.sharing.address import Address
from station.sharing.link import NOTHING_THERE, Patient, connect, empty, set_up_wrong
from station.sharing.membership import Membership, new_password
from station.sharing.roles import SIGNS_OF_CODE, card_role, tidy_code, verifier

JOIN = "SELECT site, number, role FROM shop.join(%s)"
OTHERS = (
    "SELECT pg_terminate_backend(pid) FROM pg_stat_activity"
    " WHERE usename = session_user AND pid <> pg_backend_pid()"
)
MOST = "30s"  # until the password is kept: a person may have to open the keyring
FILE = "joining.secret"
REFUSED = ("authentication failed", "not permitted to log in")  # the password, or the role
NO_CODE = f"A join card's code has {SIGNS_OF_CODE} signs. Type it as it stands on the card."
NEW_CARD = (
    "Who owns the database prints a new one with station share URL --card N, "
    "N being the station's number."
)


class NotJoined(Fault):
    """The shop did not take this PC in; the text says why."""


@dataclass(frozen=True)
class Attempt:
    """What a card gives this PC; kept until it has joined, closed to others as a password is.

    `card` is the card's role, which tells nothing of its code.
    """

    card: str
    site: str
    number: str
    role: str
    password: str = field(repr=False)

    @staticmethod
    def of(folder: Path) -> "Attempt | None":
        """The one that this PC did not hear the end of; None where there is none."""
        try:
            return Attempt(**json.loads(secret.read(folder, _account(folder), FILE)))
        except (secret.NoSecret, ValueError, TypeError):  # what cannot be read is of no use
            return None

    def keep(self, folder: Path) -> None:
        """Keeps it in the place of an older one."""
        secret.keep(folder, _account(folder), json.dumps(asdict(self)), FILE)

    def finish(self, folder: Path, address: Address) -> Membership:
        """Makes this PC the station; done again, nothing changes."""
        membership = Membership(self.site, self.number, self.role, address)
        secret.keep(folder, membership.account, self.password)
        membership.keep(folder)
        secret.forget(folder, _account(folder), FILE)
        return membership


def join(folder: Path, address: Address, code: str, site: str = "") -> Membership:
    """Joins the shop; gives the membership, which is kept in the folder. Raises NotJoined.

    `site` is the shop whose history is here already, if there is one.
    """
    card = tidy_code(code)
    if len(card) != SIGNS_OF_CODE:
        raise NotJoined(NO_CODE)
    try:
        attempt = _begun(folder, address, card) or _ask(folder, address, card, site)
        _end_others(address, attempt)
    except psycopg.Error as error:
        raise _refused(error, address) from None  # the error's own text names the card's role
    _same_shop(folder, site, attempt)
    return attempt.finish(folder, address)


def by_card(address: Address, card: str) -> Patient:
    """A connection by a card's code. Should this PC die in the middle, it holds nobody up."""
    link = connect(address, card_role(card), card)
    link.execute(f"SET idle_in_transaction_session_timeout = '{MOST}'")
    return link


def _begun(folder: Path, address: Address, card: str) -> Attempt | None:
    """What this card gave this PC already, where the server has heard of it.

    Raises psycopg.Error when it does not answer.
    """
    attempt = Attempt.of(folder)
    if attempt is None or attempt.card != card_role(card):
        return None
    try:
        connect(address, attempt.role, attempt.password).close()
    except psycopg.OperationalError as error:
        if any(words in str(error) for words in REFUSED):
            return None
        raise
    return attempt


def _ask(folder: Path, address: Address, card: str, site: str) -> Attempt:
    """Sets the station's password by its verifier alone. The password is kept before the card
    is spent; a card of another shop is not spent.
    """
    password = new_password()
    with by_card(address, card) as link, link.transaction():
        proof = verifier(link, "", password)
        rows = link.execute(JOIN, (proof,)).fetchall()
        if not rows:
            raise NotJoined(empty(address))
        there, number, role = rows[0]
        attempt = Attempt(card_role(card), there, number, role, password)
        _same_shop(folder, site, attempt)
        attempt.keep(folder)
    return attempt


def _end_others(address: Address, attempt: Attempt) -> None:
    """Ends what a PC of before has open as this station: it does not get in again.

    A connection that stood as the password was changed would go on for as long as it stands.
    """
    with connect(address, attempt.role, attempt.password) as link:
        link.execute(OTHERS)


def _same_shop(folder: Path, site: str, attempt: Attempt) -> None:
    if site not in ("", attempt.site):
        raise NotJoined(
            f"That is another shop than the one in {folder}. Name an empty folder with --data."
        )


def _account(folder: Path) -> str:
    """The name under which the keyring holds an attempt: one for each folder."""
    return f"joining in {folder.resolve()}"


def _refused(error: psycopg.Error, address: Address) -> NotJoined:
    text = str(error)
    if "authentication failed" in text:
        return NotJoined(
            f"The server at {address} does not take that code. Type it as it stands on the card, "
            f"which works once and for two days. {NEW_CARD}"
        )
    if isinstance(error, psycopg.errors.LockNotAvailable):
        return NotJoined(
            "Another PC joins with this card right now: a card lets in one. Where that is no PC "
            f"of yours, tell who owns the database. {NEW_CARD}"
        )
    if isinstance(error, psycopg.errors.InvalidPassword):
        return NotJoined(f"This card has run out. {NEW_CARD}")
    if isinstance(error, NOTHING_THERE):
        return NotJoined(empty(address))
    if why := set_up_wrong(error, address):
        return NotJoined(why)
    if "does not exist" in text:
        return NotJoined(f"There is no database {address.database} on that server.")
    return NotJoined(
        f"The shop's database at {address} does not answer. Is the host right? "
        "Type station join again, with the same card."
    )
