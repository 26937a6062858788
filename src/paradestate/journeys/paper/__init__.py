"""Papers to exact size: which there are, what each is made from, and its file."""
