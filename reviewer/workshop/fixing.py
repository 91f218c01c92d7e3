"""What holds solid wood across its grain: every fixing of each board or glued-up panel, over its width.

A board swells and shrinks across its grain and hardly along it. What it is fixed to keeps it from moving
when that does not move along: a part whose grain runs across it, a sheet, the wall, or two parts that
are kept apart by the rest of the piece.
"""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.language.source import Span
from reviewer.model.plan import GROUNDS, Fastening, Plan
from reviewer.records import NamedTuple
from reviewer.reference.materials import Material, material
from reviewer.setting_out.result import Joint, SettingOut
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.driving import Patch, fastener_count, joint_axis, patch_of
from reviewer.workshop.fastener_rows import row_ends

#: What each kind of fixing gives way to, by the name of its limit. Clips are not there: they slide.
_GIVES = {
    "screws": "movement-screwed",
    "pocket screws": "movement-screwed",
    "bolts": "movement-screwed",
    "brackets": "movement-screwed",
    "nails": "movement-nailed",
    "dowels": "movement-dowelled",
    "loose tenons": "movement-dowelled",
}
_SLOTTED = "movement-slotted"


#: Joints whose glue holds long grain to long grain at an end.
_TONGUED = ("tongue and groove", "bridle", "half lap")


class Fixing(NamedTuple):
    """A fixing of a board: from where to where along its width (mm in space), and what it gives way to.

    ``kind`` is ``glue``, ``tenon`` or the kind of fastener; ``at_end`` is true at the board's end, where
    glue counts only inside a housing or with biscuits. ``laminated`` is glue between two broad faces,
    ``tongued`` that of a tongue, whose cheeks are long grain.
    """

    part: str
    to: str
    low: float
    high: float
    gives: str
    kind: str
    at_end: bool
    span: Span
    fastening: Fastening | None
    laminated: bool = False
    tongued: bool = False


class Held(NamedTuple):
    """A board, or boards glued edge to edge, and the fixings of it that the piece keeps apart."""

    parts: tuple[str, ...]
    axis: int
    fixings: tuple[Fixing, ...]


class _Sets:
    """Things that belong together: union by the order in which they are met."""

    def __init__(self) -> None:
        self._of: dict[str, str] = {}

    def find(self, name: str) -> str:
        path = []
        while self._of.get(name, name) != name:
            path.append(name)
            name = self._of[name]
        for each in path:
            self._of[each] = name
        return name

    def join(self, one: str, other: str) -> None:
        self._of[self.find(other)] = self.find(one)


class _Fixer:
    def __init__(self, plan: Plan, setting: SettingOut, narrow: float) -> None:
        self.solids, self.narrow = setting.solids, narrow
        self.joints = [joint for joint in setting.joints if joint.meets]
        woods: dict[str, Material] = {name: material(stock.material) for name, stock in plan.stocks.items()}
        #: The axis across the grain of all solid wood; sheets are absent.
        self.across = {
            name: int(solid.wide)
            for name, solid in setting.solids.items()
            # A slanting board moves along no axis of the piece, so what holds it is not known here.
            if woods[plan.parts[name].stock].moves and solid.square
        }
        self.panels = self._panels()
        widths = self._widths()
        #: The same for what is so wide that its movement counts.
        self.moving = {
            name: axis for name, axis in self.across.items() if widths[self.panels.find(name)] > narrow
        }
        self.kept_apart = tuple(self._kept_apart(axis) for axis in range(3))

    def _panels(self) -> _Sets:
        """Boards glued edge to edge with their grain alike: they move as one."""
        panels = _Sets()
        for joint in self.joints:
            left, right = self.across.get(joint.left), self.across.get(joint.right)
            if joint.join.glue is None or left is None or left != right:
                continue
            one, other = self.solids[joint.left], self.solids[joint.right]
            if joint_axis(joint, self.solids) == left and one.long == other.long:
                panels.join(joint.left, joint.right)
        return panels

    def _widths(self) -> dict[str, float]:
        """The width of each board or panel across its grain, by the board that stands for the panel."""
        reach: dict[str, tuple[float, float]] = {}
        for name, axis in self.across.items():
            solid, panel = self.solids[name], self.panels.find(name)
            low, high = reach.get(panel, (solid.low[axis], solid.high[axis]))
            reach[panel] = min(low, solid.low[axis]), max(high, solid.high[axis])
        return {panel: high - low for panel, (low, high) in reach.items()}

    def _kept_apart(self, axis: int) -> _Sets:
        """Parts that the piece holds at their places along an axis, through what does not move along it."""
        frame = _Sets()
        for joint in self.joints:
            if self.moving.get(joint.left) != axis and self.moving.get(joint.right) != axis:
                frame.join(joint.left, joint.right)
        return frame

    def held(self) -> Iterator[Held]:
        """Every board or panel with fixings that could keep it from moving, in the order of the joints."""
        found: dict[tuple[str, str], list[Fixing]] = {}
        for joint in self.joints:
            for part, other in ((joint.left, joint.right), (joint.right, joint.left)):
                axis = self.moving.get(part)
                if axis is None or self.panels.find(part) == self.panels.find(other):
                    continue  # boards of one panel move as one
                # What moves along with it is never kept apart from anything, so it holds it at one place.
                key = (self.panels.find(part), self.kept_apart[axis].find(other))
                found.setdefault(key, []).extend(self._fixings(joint, part, other, axis))
        for fixings in found.values():
            if fixings:
                parts = dict.fromkeys(fixing.part for fixing in fixings)
                yield Held(tuple(parts), self.moving[fixings[0].part], tuple(fixings))

    def _fixings(self, joint: Joint, part: str, other: str, axis: int) -> Iterator[Fixing]:
        patch, driving = patch_of(joint), joint_axis(joint, self.solids)
        assert patch is not None
        assert driving is not None
        solid, join = self.solids[part], joint.join
        at_end = solid.surface(driving) == "end"
        low, high = patch.low[axis], patch.high[axis]
        if not self._crosses(other, axis):
            low = high = (low + high) / 2  # thin there, or alike: it holds the board at one place

        def fixing(
            low: float, high: float, gives: str, kind: str, span: Span, fastening: Fastening | None
        ) -> Fixing:
            return Fixing(part, other, low, high, gives, kind, at_end, span, fastening)

        housing = join.housing
        if join.glue is not None:
            span = join.glue_span or join.span
            if housing is not None and housing.kind == "mortise and tenon":
                yield fixing(low, high, "movement-dowelled", "tenon", span, None)
            elif housing is not None or not at_end:
                glue = fixing(low, high, "movement-glued", "glue", span, None)
                yield glue._replace(
                    laminated=self._laminated(part, other, patch, driving, low < high),
                    tongued=housing is not None and housing.kind in _TONGUED,
                )
        for fastening in join.fastenings:
            gives = _GIVES.get(fastening.kind)
            if fastening.kind == "wedges" or (
                fastening.kind == "biscuits" and at_end and join.glue is not None
            ):
                gives = "movement-dowelled"  # a wedged tenon and a glued biscuit hold as a dowel does
            if gives is None:
                continue
            first, last = self._row(joint, fastening, patch, driving, axis, (low, high))
            kind = fastening.kind
            yield fixing(
                first, last, _SLOTTED if fastening.slotted else gives, kind, fastening.span, fastening
            )

    def _laminated(self, part: str, other: str, patch: Patch, driving: int, crosses: bool) -> bool:
        """True where two broad faces meet over more than a narrow width both ways, with crossed grain."""
        if not crosses or other in GROUNDS:
            return False
        faces = all(self.solids[name].thick == driving for name in (part, other))
        across = [patch.extent(axis) for axis in range(3) if axis != driving]
        return faces and min(across) > self.narrow + TOLERANCE_MM

    def _crosses(self, other: str, axis: int) -> bool:
        """True for what stays as it is along a board's width: crossed grain, a sheet, the wall."""
        return other in GROUNDS or other not in self.across or self.solids[other].long == axis

    def _row(
        self,
        joint: Joint,
        fastening: Fastening,
        patch: Patch,
        driving: int,
        axis: int,
        reach: tuple[float, float],
    ) -> tuple[float, float]:
        """Where the outermost of a row of fasteners hold the board across its width."""
        low, high = reach
        if high <= low or patch.run(driving) != axis:
            return (low + high) / 2, (low + high) / 2
        count, _ = fastener_count(joint, fastening, driving)
        return row_ends(low, high, count, fastening)


def held_boards(plan: Plan, setting: SettingOut, narrow: float) -> Iterator[Held]:
    """Every solid board or glued-up panel wider than ``narrow`` (mm), with what holds it across its grain.

    Solid wood up to that width moves so little that it counts as unmoving.
    """
    return _Fixer(plan, setting, narrow).held()
