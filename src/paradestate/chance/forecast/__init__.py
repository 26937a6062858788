"""When work will be done: weeks drawn from the log, and what is assumed beside it."""
