"""What the sheet of losses is made of."""
