"""Random tests without a clock and without chance: the same examples on every machine."""

from __future__ import annotations

from hypothesis import settings

settings.register_profile("calm", deadline=None, derandomize=True)
settings.load_profile("calm")
