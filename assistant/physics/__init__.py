"""Pure functions on SI values: no data of any aeroplane, each with the source of its formula."""
