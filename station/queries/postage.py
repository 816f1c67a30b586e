"""Questions about postage: what the shop's services take for a parcel in a mailer."""

from typing import NamedTuple

from station.packs.messages import NEAR, PackMailer
from station.packs.ship import ShipService
from station.shop.facts import Postage
from station.shop.views import View

MOST = 200  # steps that are looked through


class Sent(NamedTuple):
    """The step of a service that takes a parcel, and its price."""

    name: str
    price: float


def list_services(view: View) -> tuple[ShipService, ...]:
    """Lists the steps of the shop's services, each as a service of its own; none: not known."""
    return tuple(
        ShipService(
            step.name,
            step.length_mm or None,
            step.width_mm or None,
            step.thick_mm or None,
            step.length_girth_mm or None,
            step.divisor or None,
            ((step.to_g, step.price),),
        )
        for step in view.shelf(Postage, "all", MOST)
        if step.active
    )


def list_sendable(
    services: tuple[ShipService, ...], mailer: PackMailer, grams: float
) -> list[PackMailer]:
    """Lists what a mailer costs with its postage, each closing over what goes for it.

    `grams` the pieces weigh without the mailer.
    """
    return [
        mailer._replace(price=mailer.price + price, thick_mm=min(mailer.thick_mm, most))
        for service in services
        for most, price in service.list_offers(mailer, grams + mailer.mass_g)
    ]


def find_postage(
    services: tuple[ShipService, ...], mailer: PackMailer, grams: float, thick: float
) -> Sent | None:
    """Finds the cheapest step that takes a stack so thick in a mailer; None: none does."""
    found = [
        Sent(service.name, price)
        for service in services
        for most, price in service.list_offers(mailer, grams + mailer.mass_g)
        if thick <= most + NEAR
    ]
    return min(found, key=lambda sent: (sent.price, sent.name), default=None)
