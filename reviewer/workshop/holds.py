"""What holds a joint, and how much: the records that joints' capacities are made of."""

from __future__ import annotations

from typing import Literal

from reviewer.model.plan import Fastening
from reviewer.records import NamedTuple


class Hold(NamedTuple):
    """A force (N) that a fastener, a housing or a glue line may bear, and what gives way first.

    ``mode`` is that in words. ``certain`` is true where a published design value stands behind it as a whole,
    so that more is an error; else it is an estimate, and more is a warning.
    """

    force: float
    mode: str
    who: str
    source: str
    certain: bool

    def times(self, factor: float, said: str = "", certain: bool = True) -> Hold:
        """The same, a factor of it."""
        return self._replace(
            force=self.force * factor, mode=f"{self.mode}{said}", certain=self.certain and certain
        )


class Holder(NamedTuple):
    """One thing that holds a joint: all fasteners alike, its housing, or its glue.

    ``shear`` and ``pull`` are of one of ``number``; None where no value is given, which ``why`` explains.
    ``heights`` are how far above the low edge of the joint each stands, mm. ``open_shear`` and ``open_pull``
    are true where it may well hold but nobody knows how much: then nothing is judged by the others alone.
    """

    kind: str  # "screws", "dado", "glue"
    what: Literal["fastening", "housing", "glue"]
    number: int
    shear: Hold | None
    pull: Hold | None
    why: str
    heights: tuple[float, ...] = ()
    open_shear: bool = False
    open_pull: bool = False
    end_grain: bool = False
    fastening: Fastening | None = None
    head_part: str = ""
    point_part: str = ""
