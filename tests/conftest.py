"""Screens are painted without a screen, unless one is asked for; no quick test may be slow."""

import gc
import os

import pytest
from hypothesis import settings

from station.shop import lengths

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

pytest_plugins = ("tests.staged",)
# A test run walks the same ways each time; `python -m tests.machine` takes new ones.
settings.register_profile("same", derandomize=True)
settings.load_profile("same")


def pytest_addoption(parser):
    words = "fail a test that is not marked slow and takes more processor time"
    parser.addoption("--limit", type=float, metavar="SECONDS", help=words)


def pytest_collection_modifyitems(config, items):
    """Begins the tests of a minute first, shared out, so that no core waits for one at the end.

    Each of the test processes begins with an equal run of the list; who is done takes of others.
    """
    processes = getattr(config, "workerinput", {}).get("workercount", 1)
    long = [item for item in items if item.get_closest_marker("long")]
    rest = [item for item in items if not item.get_closest_marker("long")]
    share = -(-len(rest) // processes)
    items[:] = [
        item
        for nth in range(processes)
        for item in long[nth::processes] + rest[nth * share : (nth + 1) * share]
    ]


@pytest.hookimpl(wrapper=True)
def pytest_runtest_call(item):
    """Takes the processor's time, of child processes too: a busy machine makes no test slow."""
    began = sum(os.times()[:4])
    result = yield
    took, limit = sum(os.times()[:4]) - began, item.config.getoption("--limit")
    if limit and took > limit and not item.get_closest_marker("slow"):
        pytest.fail(f"took {took:.1f} s: mark it slow, or have it do less", pytrace=False)
    return result


@pytest.fixture(autouse=True, scope="module")
def set_apart():
    """Spares a file's tests that collect garbage what other files' tests have left in memory."""
    gc.freeze()
    yield
    gc.unfreeze()


@pytest.fixture(autouse=True)
def shop_of_mm():
    """Begins every test with a shop of mm, whatever the shop of the last one had."""
    lengths.use_units("mm", fractions=False)
    lengths.use_decimals("")
