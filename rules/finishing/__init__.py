"""Rules about finishing."""
