"""What to paint next, when there is a game, and what to order when."""
