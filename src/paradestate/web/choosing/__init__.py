"""What the sheet of choosing is made of: its question, its entries, its plan, its answers."""
