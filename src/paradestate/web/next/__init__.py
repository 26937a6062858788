"""What the sheet of what to get next asks, says and shows, each in a module of its own."""
