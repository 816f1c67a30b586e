"""Screens are painted without a screen, unless one is asked for."""

import os

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

pytest_plugins = ("tests.staged",)
