"""Questions that follow one another, each changing just what it names."""
