"""Questions to hand out: a saved set that every class is asked alike, a paper with its key, and an exchange file."""
