"""A shop's database on a test server, and stations' roles on it."""

from dataclasses import dataclass, field
from unittest.mock import patch

import psycopg

from station.ledger import tables
from station.ledger.codec import digest
from station.sharing import roles, schema
from station.sharing.roles import IssuedCard, Names
from tests.server import Server

SITE = "5173"


@dataclass
class Shop:
    """One shop's database. `connect` as a station makes its role first."""

    server: Server
    database: str
    names: Names
    passwords: dict[str, str] = field(default_factory=dict)

    def admin(self) -> psycopg.Connection[tuple[object, ...]]:
        """The one who set the database up: may do everything."""
        return self.server.connect(self.database)

    def card(self, number: str) -> IssuedCard:
        """A new join card for a station."""
        with self.admin() as admin, admin.transaction():
            roles.make_station(admin, self.names, number)
            return roles.make_card(admin, self.names, number)

    def join(self, card: IssuedCard, password: str = "") -> str:
        """Joins with a card; gives the station's password."""
        password = password or f"password of {card.station}"
        with self.by_card(card) as link:
            proof = roles.verifier(link, self.names.station(card.station), password)
            link.execute("SELECT * FROM shop.join(%s)", (proof,))
        return password

    def by_card(self, card: IssuedCard) -> psycopg.Connection[tuple[object, ...]]:
        """A connection with the card's one-time code."""
        return self.server.connect(self.database, roles.card_role(card.code), card.code)

    def put(self, *entries: tuple[str, str]) -> None:
        """Puts entries there, by id and body, as a database of before took them: unlooked at."""
        add = "INSERT INTO shop.entry VALUES (%s, %s, %s, '', '{}', %s, %s, 'of before', now())"
        with self.admin() as admin, admin.transaction():
            asked = "SELECT id, number, digest FROM shop.site FOR UPDATE"
            ((site, number, link),) = admin.execute(asked).fetchall()
            for id_, body in entries:
                number, link = number + 1, digest(link, id_, body)
                admin.execute(add, (site, number, id_, body, link))
            admin.execute("UPDATE shop.site SET number = %s, digest = %s", (number, link))

    def confirm_put_back(self) -> None:
        """The owner confirms that an older day was put back."""
        with self.admin() as admin:
            admin.execute("UPDATE shop.site SET epoch = epoch + 1, put_back_at = now()")

    def station(self, number: str = "2") -> psycopg.Connection[tuple[object, ...]]:
        """A connection as a station that has joined."""
        if number not in self.passwords:
            self.passwords[number] = self.join(self.card(number))
        return self.server.connect(
            self.database, self.names.station(number), self.passwords[number]
        )


def found(server: Server, site: str = "", step: str = "head") -> Shop:
    """A fresh shop's database; its roles stand beside those of others on the same server.

    `step` is the revision that it has: one of before as well.
    """
    database = server.new_database()
    shop = Shop(server, database, Names(site or f"{SITE}{database}"))

    def connect() -> psycopg.Connection[tuple[object, ...]]:
        connection = shop.admin()
        connection.autocommit = False
        return connection

    with connect() as admin:
        roles.make_owner(admin, shop.names, database)
    upgrade = schema.command.upgrade
    with patch.object(schema.command, "upgrade", lambda config, _: upgrade(config, step)):
        schema.up_to_date(connect, shop.names)
    with shop.admin() as admin:
        admin.execute(
            "INSERT INTO shop.site (id, format) VALUES (%s, %s)", (shop.names.site, tables.FORMAT)
        )
    return shop
