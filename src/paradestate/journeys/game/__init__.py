"""What a game leaves behind, line by line: terms, dice, the board, losses, repairs."""
