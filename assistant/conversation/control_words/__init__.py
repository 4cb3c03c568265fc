"""Words that steer a conversation: say again, why, disregard, correction, a dispute. Read first: `controls.py`."""
