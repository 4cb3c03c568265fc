"""What is right of another thing, case or part, and is said of this one. Read first: `alike.py`."""
