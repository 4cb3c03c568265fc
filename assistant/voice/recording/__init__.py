"""Audio files to listen to: what is said and when, its level, and the files with their chapters and tags."""
