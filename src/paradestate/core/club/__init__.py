"""What a club shares out: who plays when with what, and whether there is enough of it."""
