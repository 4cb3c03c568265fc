"""Things, states and steps said otherwise than they are. Read first: `restricted.py`."""
