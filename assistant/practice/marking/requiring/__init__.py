"""What a question requires, in one part or in several. Read first: `required.py`, `requests.py`."""
