"""Turns on a procedure: its steps, cases and what comes next. Read first: `going_through.py`."""
