"""What lies where on a page of paper, exactly: frames, gutters, bleed, cut marks, both sides."""
