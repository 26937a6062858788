"""What a game leaves behind: who comes back, who is lost, and what the next one finds."""
