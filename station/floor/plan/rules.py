"""What is decided here are acts of the office: a batch is released, or taken back."""

from station.shop.views import Rules

RULES: Rules = {}
