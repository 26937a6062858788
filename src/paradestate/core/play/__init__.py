"""A game that is played: its terms, its rolls, what was asked for, and how things stand."""
