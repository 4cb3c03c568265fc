"""A question and its parts as the resolvers are asked them. Read first: `asked.py`, `parts.py`."""
