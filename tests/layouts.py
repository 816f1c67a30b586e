"""``python -m tests.layouts N``: reads N random layouts and compares sizes."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent / "cutting"))

if __name__ == "__main__":
    from test_parts import main

    sys.exit(main())
