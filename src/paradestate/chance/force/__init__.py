"""Legal forces: how many there are, which is worth most, what of them can be fielded."""
