"""The page: parse a request, call a journey, fill a template. No decisions."""
