"""Ends the script with one clear line on a Python too old for Downlock.

Imported first, for that effect, and written so that even Python 2 can read it.
"""

import sys

OLDEST = (3, 11)

if sys.version_info < OLDEST:
    sys.stderr.write(
        "downlock: needs Python {}.{} or newer, and this is {}.{}: run it with a newer one, "
        "as in python3.12 {}\n".format(
            OLDEST[0], OLDEST[1], sys.version_info[0], sys.version_info[1], sys.argv[0]
        )
    )
    sys.exit(2)
