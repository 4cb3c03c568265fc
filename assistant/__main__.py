"""Lets `python -m assistant` run from a checkout exactly as the installed `downlock` command does."""

import sys

from assistant.terminal.main import main

if __name__ == "__main__":
    sys.exit(main())
