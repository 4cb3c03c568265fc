"""Turns under the states of a scenario: more failures, corrections, what shows. Read first: `in_scenario.py`."""
