"""What must be on a war-game table, what is owned, what is lacking, and the cheapest order."""

__version__ = "0.1.0"
