"""What is wrong with the figures of an answer, and what is not. Read first: `numbers.py`."""
