"""Rules about buying."""
