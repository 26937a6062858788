"""What the page of the organisation asks and shows, each in a module of its own."""
