"""``python3 -m station …``: sets this copy up on first use, then runs the command.

Only the standard library here: on a bare machine this is the first thing that runs.
"""

import sys

from station.setting_up import ready

if __name__ == "__main__":
    ready()
    from station.commands.main import main

    sys.exit(main())
