"""Which points of a statement, a figure or a step are asked for. Read first: `narrowing.py`."""
