"""The workshop's own sums: fasteners in wood, finish calendar, cutting, shopping, order of work."""
