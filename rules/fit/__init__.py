"""Rules about fit: what meets, what overlaps, what holds up what."""
