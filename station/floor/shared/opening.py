"""Opens a closed pack again: with the order in hand by its label, else from the pack's page."""

from station.shop.acts import Args


class OpenPack(Args, frozen=True, kw_only=True):
    """Opens a closed pack again, for a reason, or because it may not leave. The subject is it."""

    kind = "open_pack"
