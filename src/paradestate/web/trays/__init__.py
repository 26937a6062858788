"""The views of the sheet *Trays*."""
