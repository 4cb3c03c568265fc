"""A finished answer as text, speech, JSON or a page."""
