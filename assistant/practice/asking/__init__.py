"""What to ask next: which records may be drilled, how each stands with a learner, and whose turn it is."""
