"""``python -m tests.layouts N``: reads N random layouts and compares sizes."""

import sys
from pathlib import Path

CUTTING = Path(__file__).parent / "cutting"
sys.path[:0] = [str(CUTTING), str(CUTTING / "geometry")]

if __name__ == "__main__":
    from test_parts import main

    sys.exit(main())
