"""The stations of a small CNC-router workshop."""

VERSION = "0.1.0"  # as in pyproject.toml
