"""The words of the force folder: one definition that reads, writes and describes each section."""
