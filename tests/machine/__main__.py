"""``python -m tests.machine``: the whole campaign, 2,000 walks of 50 steps."""

import os
import sys
import time

os.environ.setdefault("MACHINE_WALKS", "2000")

from tests.machine import test_machine
from tests.measured import note

if __name__ == "__main__":
    began = time.monotonic()
    test_machine.test_the_shop_holds_whatever_is_scanned()
    held = f"{test_machine.WALKS} held in {time.monotonic() - began:.0f} s"
    print(f"random walks of {test_machine.STEPS} steps: {held}")
    note(f"random walks of {test_machine.STEPS} steps over all rules", held, "all")
    sys.exit(0)
