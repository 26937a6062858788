"""What the sheet of the list is made of."""
