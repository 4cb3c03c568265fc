"""Short turns on what was just told, of whatever kind. Read first: `inside_told.py`, `asked_then.py`."""
