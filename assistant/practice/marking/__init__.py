"""Marking a free answer: what is required, what is said, how the two compare. Read first: `mark.py`, `compare.py`."""
