"""What is done at the cart, as it is kept for ever. The subject is the pack or the cart."""

from station.shop.acts import Args


class LoadCart(Args, frozen=True, kw_only=True):
    """A pack goes onto a cart."""

    kind = "load_cart"

    cart: str


class UnloadCart(Args, frozen=True, kw_only=True):
    """A pack comes off its cart again."""

    kind = "unload_cart"

    cart: str = ""


class GoToDoor(Args, frozen=True, kw_only=True):
    """The cart is pushed to the door, where every pack is scanned once more."""

    kind = "go_to_door"

    cart: str


class CheckPack(Args, frozen=True, kw_only=True):
    """A pack is seen at the door."""

    kind = "check_pack"

    cart: str


class Leave(Args, frozen=True, kw_only=True):
    """The cart leaves with every pack on its list."""

    kind = "leave"

    cart: str


class ComeBack(Args, frozen=True, kw_only=True):
    """The cart is not ready to leave: it comes back from the door."""

    kind = "come_back"

    cart: str
