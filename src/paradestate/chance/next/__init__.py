"""What to get next: how much more the games to come are worth with it."""
