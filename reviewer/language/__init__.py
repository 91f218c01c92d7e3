"""Reading: text in, declarations with their source spans out, and every slip of the file at once."""
