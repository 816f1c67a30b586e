"""Shop today only looks; settling a concern belongs to no one room."""

from station.shop.views import Rules

RULES: Rules = {}
