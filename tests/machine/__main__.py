"""``python -m tests.machine``: the whole campaign, 2,000 walks of 50 steps."""

import os
import sys
import time

os.environ.setdefault("MACHINE_WALKS", "2000")

from tests.machine import test_machine

if __name__ == "__main__":
    began = time.monotonic()
    test_machine.test_the_shop_holds_whatever_is_scanned()
    print(
        f"{test_machine.WALKS} walks of {test_machine.STEPS} steps held "
        f"in {time.monotonic() - began:.0f} s"
    )
    sys.exit(0)
