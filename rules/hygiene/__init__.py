"""Rules about hygiene."""
