"""Words, numbers and units: what is read from a question, and how a value is written or spoken."""
