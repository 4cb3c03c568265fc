"""From sound to a question: when speech ends, what was said, and which reading of it the knowledge explains."""
