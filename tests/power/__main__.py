"""``python -m tests.power LIVES [FIRST]``: so many stations lose their power; 1 when one fails.

Beside them a control that does not wait for the disk: it must lose acknowledged acts.
"""

import logging
import os
import sys
import time
import traceback
from collections import Counter
from concurrent.futures import ProcessPoolExecutor

from tests.measured import note
from tests.power.layer import in_memory
from tests.power.life import Life, Tally


def one(seed: int, *, careless: bool = False) -> Tally | str:
    """One life's tally, or how it failed."""
    with in_memory() as folder:
        try:
            return Life(folder, seed, careless=careless).run()
        except Exception:  # noqa: BLE001 - whatever it is, the seed is told with it
            return traceback.format_exc(limit=-5)


def careless(seed: int) -> Tally | str:
    """The same by a station that never waits for the disk."""
    return one(seed, careless=True)


def main() -> int:
    """Runs the lives and prints what came of them."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 2000
    first = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    seeds, began = range(first, first + count), time.monotonic()
    with ProcessPoolExecutor(
        os.cpu_count(), initializer=logging.disable, initargs=(logging.CRITICAL,)
    ) as pool:
        lives = dict(zip(seeds, pool.map(one, seeds, chunksize=8), strict=True))
        control = list(pool.map(careless, seeds[: max(20, count // 10)], chunksize=8))
    held = [t for t in lives.values() if isinstance(t, Tally)]
    failed = {seed: t for seed, t in lives.items() if isinstance(t, str)}
    at = sum((t.at for t in held), Counter[str]())
    came = (
        f"{len(held)} of {count} lives held in {time.monotonic() - began:.0f} s: "
        f"{sum(t.cuts for t in held)} power cuts, {sum(t.inside for t in held)} of them while an "
        f"act was recorded; {sum(t.acked for t in held)} acts acknowledged, "
        f"{sum(t.lost for t in held)} lost"
    )
    print(came)
    note("power cuts under the file", came, "all held, none lost")
    print("cut at:", ", ".join(f"{n} × {what}" for what, n in at.most_common()))
    lost = [t for t in control if isinstance(t, Tally)]
    came = (
        f"{sum(t.acked for t in lost)} acts acknowledged in {len(lost)} lives, "
        f"{sum(t.lost for t in lost)} lost; {sum(t.damaged for t in lost)} files not whole"
    )
    print(f"control, synchronous=OFF: {came}")
    note("the control, synchronous=OFF", came, "must lose")
    for seed, text in list(failed.items())[:5]:
        print(f"--- seed {seed}\n{text}")
    broken = [t for t in control if isinstance(t, str)]
    print(*broken[:2], sep="\n", end="")
    return 1 if failed or broken or not sum(t.lost for t in lost) else 0


if __name__ == "__main__":
    sys.exit(main())
