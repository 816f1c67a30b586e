"""Power loss under a station's file, and a disk that fails: a layer of files below SQLite.

The program, its driver and its SQLite run unmodified; the layer stands where the system's
files would (`layer.py`) and a disk of our own says what becomes of each write (`disks.py`).
``python -m tests.power 2000`` cuts the power so many times.
"""
