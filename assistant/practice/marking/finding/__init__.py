"""Where an answer says a point, and how much of it. Read first: `elements.py`, `found.py`."""
