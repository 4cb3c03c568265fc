"""Several questions in one turn, or one of two things. Read first: `two_questions.py`."""
