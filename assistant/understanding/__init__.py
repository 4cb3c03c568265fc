"""From a text in any wording to what is asked, about what, given what."""
