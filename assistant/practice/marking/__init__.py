"""Marking a free answer: what the question requires, what the answer says, and how the two compare."""
