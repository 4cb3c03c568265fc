"""From an understood question to the entry, number, state or limit check that settles it."""
