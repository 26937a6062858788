"""Each entry of a force as an English sentence, to proof against the book."""
