"""The one error of the physics: a question that no number answers."""


class OutOfRange(ValueError):
    """A value outside what a formula covers; the message is one plain line."""
