"""What all shaping clauses share: the part that is cut, its faces, and the cut that is still open.

A clause that places, stops or turns a cut goes with the cut before it, so a cut is held open until the
next one begins.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from reviewer.language import declarations as d
from reviewer.language.source import Span
from reviewer.model.desk import Desk
from reviewer.model.placing import DIRECTIONS, Placer
from reviewer.model.plan import Cut
from reviewer.model.shapes import Cutting, Hole, Reach, Side
from reviewer.model.specs import Spec
from reviewer.model.turning import Lie


@dataclass
class OpenCut:
    """A notch, dado, groove, rabbet or hole that the clauses behind it may place and stop.

    ``sizes`` are its sizes by axis (0 for a hole's middle), ``fixed`` its reaches that are known with the
    clause that says them; an axis without a size is taken whole. ``run`` is the axis that a trench runs
    along; None while only its place can tell, which ``width`` then belongs to.
    """

    kind: Literal["notch", "dado", "groove", "rabbet", "hole"]
    span: Span
    sizes: dict[int, float]
    fixed: dict[int, tuple[Reach, Span]]
    run: int | None = None
    width: float = 0.0
    stops: dict[Side, tuple[float, Span]] = field(default_factory=dict)
    hole: Hole | None = None


@dataclass
class OpenFace:
    """A mitre or a bevel that waits to hear which side keeps its length."""

    kind: Literal["mitre", "bevel"]
    span: Span
    degrees: float
    axis: int
    sides: tuple[Side, ...]
    long_axis: int
    long: tuple[Side, Span] | None = None


class CutMaker:
    """What every maker of cuttings knows of the part, and the cut that it holds open.

    ``slant`` says whether the part leans or rises; ``run_said`` is false for a sheet whose grain the plan
    leaves open, so that only its sizes tell which of its sides are its ends.
    """

    def __init__(
        self,
        desk: Desk,
        placer: Placer,
        spec: Spec,
        lie: Lie,
        *,
        sheet: bool,
        run_said: bool,
        slant: Literal["leans", "rises"] | None,
        bar: Cut | None,
    ) -> None:
        self.desk, self.placer, self.spec, self.name = desk, placer, spec, spec.family
        self.long, self.wide, self.thick = lie
        grain = spec.only(d.GrainClause)
        if sheet and grain is not None and DIRECTIONS[grain.direction] == lie.wide:
            self.long, self.wide = lie.wide, lie.long
        self.sheet, self.run_said, self.slant, self.bar = sheet, run_said, slant, bar
        self.made: list[Cutting] = []
        self.open: OpenCut | OpenFace | None = None
        self.lost = False  # whether the cut before could not be made, which is told

    def _problem(self, span: Span, says: str, do: str, also_at: tuple[Span, ...] = ()) -> None:
        self.desk.problem(span, says, do, also_at=also_at)

    def _face(self, word: d.Word) -> tuple[int, Side] | None:
        found = self.placer.face(word)
        return None if found is None else (int(found[0]), "low" if found[1] == "low" else "high")

    def _tell_nothing_before(self, span: Span, says: str, do: str) -> None:
        if (
            not self.lost and not self.spec.statement.damaged
        ):  # else it may go with a clause that was not read
            self._problem(span, says, do)

    def _in_plane(self, axis: int) -> int:
        """The other axis of the wide face."""
        return self.long + self.wide - axis
