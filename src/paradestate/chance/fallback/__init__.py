"""The best play when the dice may refuse: what to ask for first, and what then."""
