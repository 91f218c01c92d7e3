"""Rules about fasteners."""
