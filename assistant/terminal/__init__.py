"""The commands and the prompt: the edge where files, clocks and the screen are."""
