"""Questions about packs that were crushed or came back damaged: in which mailer, which stack."""

from collections import Counter

from station.queries.mailers import name_contents
from station.shop.facts import Damage, Pack, Reason
from station.shop.views import View

MOST = 1000  # damaged packs that are looked through


def note_damage(pack: Pack, reason: Reason | None, at: str) -> tuple[Damage, ...]:
    """Notes that a pack was damaged, where its reason says so."""
    if reason is None or not reason.damage:
        return ()
    return (Damage(id=pack.id, mailer=pack.mailer, contents=pack.contents, why=reason.id, at=at),)


def count_by_mailer(view: View) -> Counter[str]:
    """Counts the damaged packs of each mailer."""
    return Counter(damage.mailer for damage in view.shelf(Damage, "all", MOST))


def count_of_stack(view: View, mailer: str, contents: list[tuple[str, int]]) -> int:
    """Counts the damaged packs of a mailer that held just these pieces."""
    same = name_contents(contents)
    return sum(
        damage.mailer == mailer and name_contents(damage.contents) == same
        for damage in view.shelf(Damage, "all", MOST)
    )
