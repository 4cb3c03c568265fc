"""What keeps the voice from speaking, as one line: what is wrong, and what to do."""


class VoiceProblem(Exception):
    """The voice cannot do what was asked; the message is one line. Text goes on without it."""
