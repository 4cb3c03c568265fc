"""By ear: speaking an answer, hearing a question, and files to listen to."""
