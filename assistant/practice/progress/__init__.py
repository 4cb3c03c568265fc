"""How a learner stands: gathered once, then shown as text, JSON or a page."""
