"""Turns on a figure or a schedule: the one beside it, at another amount. Read first: `on_the_schedule.py`."""
