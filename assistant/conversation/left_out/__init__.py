"""What is left out of a turn before it is understood: chatter, tales, what people tell of themselves."""
