"""Downlock: a rule-based, offline briefing assistant for landing gear, brakes and nose-wheel steering."""

__version__ = "0.1.0"
