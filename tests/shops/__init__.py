"""Simulated shops, cut for by the planner and by marks alone: the same orders, the same luck.

Whoever decides in the morning is told what a shop's record shows then, and no more. All but
`planned` is written from the trade and uses nothing of the program. Figures are made up, but for
common practice (no source): a sheet takes a quarter to three quarters of an hour, one to five
pieces of a hundred are lost.
"""
