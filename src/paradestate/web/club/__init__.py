"""What the sheet of the club shows: its weeks, what is short, its boxes and what is out."""
