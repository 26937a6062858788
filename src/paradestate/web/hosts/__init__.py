"""The views of the sheet *Hosts*."""
