"""What a plan's text gets wrong, in words for its writer."""

from __future__ import annotations

from reviewer.language.source import Span
from reviewer.records import NamedTuple


class ReadingProblem(NamedTuple):
    """Words that cannot be read: what was read, what fits there, and the nearest known names."""

    span: Span
    says: str
    do: str
    near: tuple[str, ...] = ()
    also_at: tuple[Span, ...] = ()


class FileProblem(NamedTuple):
    """A plan that cannot be opened at all."""

    name: str
    says: str
    do: str

    @property
    def what(self) -> str:
        """What went wrong, in three words."""
        return "file not read"


class MeasureProblem(FileProblem):
    """A plan that can't be reviewed because the call sets a measure that it can't take."""

    __slots__ = ()

    @property
    def what(self) -> str:
        return "measure not set"
