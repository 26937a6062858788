"""What to get next, as values: baskets of packs or of work, and what they bring."""
