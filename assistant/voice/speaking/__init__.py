"""Saying answers aloud: phrases and pauses, engines in processes of their own, and playing what they make."""
