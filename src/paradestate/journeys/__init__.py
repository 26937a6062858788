"""One function for each thing that a person wants done."""
