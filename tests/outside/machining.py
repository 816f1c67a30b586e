"""Arithmetic of cutting: chips and mass."""

from tests.outside.value import COMPUTED, PUBLISHED_RECOMPUTED, Value

FEED = "feed = turns a minute × edges × chip load, printed in many shop tables; computed again"

# turns a minute, edges of each bit by its number, mm/min -> mm of chip an edge of bit 1
CHIP_LOADS = (
    Value((18000, {}, 3600), 0.1, PUBLISHED_RECOMPUTED, f"{FEED}; two edges unless known"),
    Value((18000, {1: 1}, 3600), 0.2, PUBLISHED_RECOMPUTED, FEED),
    Value((18000, {1: 4, 2: 1}, 3600), 0.05, PUBLISHED_RECOMPUTED, FEED),
)
# mm × mm × mm, kg/m³ -> g
MASSES = (Value((200, 150, 6.35, 750), 142.875, COMPUTED, "length × width × thickness × density"),)
