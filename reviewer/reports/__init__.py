"""Telling: one sorted list of findings, one renderer a format. No renderer knows a rule by name."""
