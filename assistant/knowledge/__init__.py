"""The knowledge base as checked, frozen records."""
