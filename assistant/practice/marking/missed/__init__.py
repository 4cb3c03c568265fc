"""Answers that say nothing to the point, or something true that nobody asked. Read first: `says_nothing.py`."""
