"""``python -m reviewer`` is ``dryfit``."""

from reviewer.cli import command

command()
