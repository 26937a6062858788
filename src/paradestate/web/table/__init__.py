"""The table page: what a phone installs, and what it is given and takes back."""
