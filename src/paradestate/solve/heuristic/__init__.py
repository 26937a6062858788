"""Good orders at once and better ones by and by, for large price lists; nothing here is proved."""
