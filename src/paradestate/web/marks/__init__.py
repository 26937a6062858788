"""What the sheet of marks says."""
