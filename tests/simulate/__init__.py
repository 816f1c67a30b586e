"""Many stations, one shop and every fault, in one process, and the same again for a seed.

Ledger, desk and rules are the program's own; only the clock, the link and the place of the
file are the simulator's. ``python -m tests.simulate 2000`` runs so many seeds.
"""
