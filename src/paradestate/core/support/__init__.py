"""Supporting troops: what may be added for points, and what may be made of it in a game."""
