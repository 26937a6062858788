"""What the page of papers is made of: its question, the printer, the press, what is shown."""
