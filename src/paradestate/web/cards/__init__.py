"""The cards for the bench, as they are shown and printed."""
