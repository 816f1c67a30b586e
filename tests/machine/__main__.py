"""``python -m tests.machine``: the whole campaign, 2,000 walks of 50 steps of either kind."""

import os
import sys
import time

os.environ.setdefault("MACHINE_WALKS", "2000")

from tests.machine import test_held_walks, test_machine
from tests.measured import note

KINDS = {
    "over all rules": test_machine.test_the_shop_holds_whatever_is_scanned,
    "of what is held": test_held_walks.test_nothing_held_or_unsettled_goes_on,
}

if __name__ == "__main__":
    for kind, walk in KINDS.items():
        began = time.monotonic()
        walk()
        held = f"{test_machine.WALKS} held in {time.monotonic() - began:.0f} s"
        print(f"random walks of {test_machine.STEPS} steps {kind}: {held}", flush=True)
        note(f"random walks of {test_machine.STEPS} steps {kind}", held, "all")
    sys.exit(0)
