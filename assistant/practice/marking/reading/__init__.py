"""What an answer says: its words, numbers, bounds, yes or no. Read first: `said.py`, `wording.py`."""
