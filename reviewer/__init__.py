"""dryfit reads a build plan, sets the piece out in space and reviews it before any wood is bought."""

__version__ = "0.1.0"
