"""What the page of purchases asks, says and shows, each in a module of its own."""
