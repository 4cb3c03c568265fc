"""An answer put as the books put it before it is compared. Read first: `reworded.py`."""
