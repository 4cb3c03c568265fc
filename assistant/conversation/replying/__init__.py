"""Replies to what steers a conversation, and on what was told. Read first: `replies.py`."""
