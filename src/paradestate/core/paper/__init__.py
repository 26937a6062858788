"""What each paper says, as frozen values; how it looks is a template of `sheet.paper`."""
