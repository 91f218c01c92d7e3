"""Rules about movement."""
