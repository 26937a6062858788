"""Drawings as SVG. Knows core values and no other package of the project."""
