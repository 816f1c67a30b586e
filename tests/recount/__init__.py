"""Counts the shop again from its exported history alone, by the trade's meaning of what is there.

Nothing here knows `station.queries`, `station.floor` or `station.planning`: what a move and a
fact mean is read from the written words (`station.shop`), and every figure is worked out anew.
"""
