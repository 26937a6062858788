"""Files to a located tree, a located tree to core values with findings, and back to files."""
