"""The sheet of the bench: its ladder, its batches, and evenings written down on it."""
