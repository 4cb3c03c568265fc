"""Turns on a calculation: other inputs, another basis, its result used. Read first: `recalculating.py`."""
