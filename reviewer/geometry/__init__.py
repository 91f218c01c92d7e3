"""Convex bodies in plain numbers: cut, measured, and laid against each other. Knows no wood and no plan."""
