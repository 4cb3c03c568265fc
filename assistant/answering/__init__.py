"""The one answer record that everything after it is made from."""
