"""Rehearsing: questions made from the knowledge, marking, the record of learners, what to ask next."""
