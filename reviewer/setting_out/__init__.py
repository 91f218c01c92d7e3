"""Setting out: each part's solid in space, what touches what, and the part-and-joint graph."""
