"""Stock, sources and supporting troops in spreadsheets: the same located tree, one row an entry."""
