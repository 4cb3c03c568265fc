"""Questions that follow one another, each changing just what it names. Read first: `turn.py`, `context.py`."""
