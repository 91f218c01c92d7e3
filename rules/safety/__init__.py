"""Rules about safety."""
