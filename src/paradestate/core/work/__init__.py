"""Work at the bench: what is left of it, in which order it is done, and what that brings when."""
