"""``python3 -m tests``: everything that must hold; see `tests.suite`."""

import sys

from tests.suite import main

if __name__ == "__main__":
    sys.exit(main())
