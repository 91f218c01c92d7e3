"""Pure statics, strength and moisture: numbers in, numbers out, each formula with its source."""
