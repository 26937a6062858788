"""Stands in their trays: what fits, in rows that can be read, in how few trays, and how sure."""
