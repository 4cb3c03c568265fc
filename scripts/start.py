"""Runs Downlock from a checkout, setting it up on the first run: `python3 scripts/start.py ask "vle"`.

`python3 scripts/start.py --with-voice` also installs what hearing and audio files need.
"""

import sys

import _check_python  # noqa: F401  (must come first)
import _environment

if __name__ == "__main__":
    sys.exit(_environment.start(sys.argv[1:]))
