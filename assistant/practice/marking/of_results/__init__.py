"""The points of what is judged and of what state tables give. Read first: `outcomes.py`, `judged.py`."""
