"""The questions that a turn may be, and what a turn is like. Read first: `readings.py`, `traits.py`."""
