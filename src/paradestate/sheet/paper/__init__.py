"""Papers to exact size, as PDF: values go to our templates, which a typesetting library sets."""
