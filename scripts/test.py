"""Runs every check of the project, then its tests: `python3 scripts/test.py [pytest options]`."""

import sys

import _check_python  # noqa: F401  (must come first)
import _checks

if __name__ == "__main__":
    sys.exit(_checks.main(sys.argv[1:]))
