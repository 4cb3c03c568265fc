"""Published formulas as pure functions on SI floats, knowing nothing else of the project."""
