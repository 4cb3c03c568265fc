"""Turns on a limit or a verdict: other readings, margins, what it rests on. Read first: `limit_spoken.py`."""
