"""What the sheet of an evening is made of: its forms, what is at hand, arranging, the record."""
