"""The proof of a list: which entries are ever taken, in which best forces, what a change does."""
