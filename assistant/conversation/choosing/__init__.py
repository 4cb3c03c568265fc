"""Which of its readings a turn is meant as, and what it leaves for the next. Read first: `completing.py`."""
