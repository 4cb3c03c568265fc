"""The record of learners and classes: one SQLite file that survives whatever happens to the program."""
