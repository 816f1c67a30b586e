"""Says where a part's tab stubs are, in words beside the drawing."""

from station.shop.facts import Shape
from station.shop.words import Say, length, say, together

EDGES: dict[str, Say] = {
    "top": say("top edge at {at} mm"),
    "bottom": say("bottom edge at {at} mm"),
    "left": say("left edge at {at} mm"),
    "right": say("right edge at {at} mm"),
}


def name_tab_places(shape: Shape) -> Say:
    """Names where the tabs were: ``top edge at 35 and 265 mm and bottom edge at 150 mm``.

    Along the top and bottom from the left end, along the sides from the bottom, mm.
    """
    edges: dict[str, list[float]] = {}
    for tab in shape.tabs:
        edge, along = _find_edge(tab, *shape.box)
        edges.setdefault(edge, []).append(along)
    said = [
        template._replace(values={"at": together([length(a, 0) for a in sorted(edges[edge])])})
        for edge, template in EDGES.items()
        if edge in edges
    ]
    return together(said)


def _find_edge(tab: tuple[float, float], length: float, width: float) -> tuple[str, float]:
    """Finds the edge of the box that a tab lies nearest to, and how far along it, mm."""
    x, y = tab
    gaps = {"top": width - y, "bottom": y, "left": x, "right": length - x}
    edge = min(gaps, key=lambda name: gaps[name])
    return edge, x if edge in ("top", "bottom") else y
