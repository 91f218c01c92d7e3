"""The proportions of joints that make room: tenons in mortises, dadoes, grooves and rabbets in boards."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING

from reviewer.language.source import Span
from reviewer.model.plan import GROUNDS, HousingKind
from reviewer.model.shapes import BoxCut, Reach
from reviewer.records import NamedTuple
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.result import Joint, Overlap
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.housing import Housed, housed

if TYPE_CHECKING:
    from reviewer.review import Review

#: Housings that take wood from one face and leave the rest of the thickness.
HOUSINGS: tuple[HousingKind, ...] = ("dado", "groove", "rabbet")


#: So many recesses that may lie across from one are looked at; a board has room for far fewer.
FACING_MOST = 50


class Tenon(NamedTuple):
    """One tenon in its mortise. Lengths in mm.

    ``depth`` is how far it goes in, ``through`` how much wood there is that way; ``stock`` is the thickness
    of the board that it is cut on. ``walls`` are what is left of the mortised part on its low and its high
    side, the tenon taken in the middle of what the two share. A thickness that the plan does not state is
    taken as a third of the board.
    """

    joint: Joint
    part: str
    into: str
    depth: float
    through: float
    stock: float
    thickness: float
    thickness_said: bool
    walls: tuple[float, float]

    @property
    def floor(self) -> float:
        """What is left of the mortised part below the mortise, mm; nothing of one that goes through."""
        return max(0.0, self.through - self.depth)

    @property
    def blind(self) -> bool:
        return self.floor > TOLERANCE_MM

    @property
    def share(self) -> float:
        return self.thickness / self.stock

    @property
    def bare(self) -> bool:
        """True for a part that is let in whole, such as a slat: it has no shoulders."""
        return self.thickness >= self.stock - TOLERANCE_MM


def tenons(review: Review) -> Iterator[Tenon]:
    """Every mortise and tenon of parts that stand square, in the order of the joints."""
    solids = review.setting.solids
    for joint in review.setting.joints:
        housing = joint.join.housing
        if housing is None or housing.kind != "mortise and tenon" or joint.overlap is None:
            continue
        made = housed(joint, solids)
        if made is None or not (solids[made.part].square and solids[made.into].square):
            continue
        part, into = solids[made.part], solids[made.into]
        if part.thick == made.axis:
            continue  # let in by its face: nothing of it is a tenon
        stock = part.extent(part.thick)
        thickness = housing.thickness or stock * usual_value("tenon-share")
        middle = (joint.overlap.low[part.thick] + joint.overlap.high[part.thick]) / 2
        yield Tenon(
            joint=joint,
            part=made.part,
            into=made.into,
            depth=made.depth,
            through=into.extent(made.axis),
            stock=stock,
            thickness=min(thickness, stock),
            thickness_said=housing.thickness is not None,
            walls=(
                middle - thickness / 2 - into.low[part.thick],
                into.high[part.thick] - middle - thickness / 2,
            ),
        )


class MeetingTenons(NamedTuple):
    """The tenons of two parts in a third, and how far they are in each other's way, mm; 0 where they pass."""

    one: str
    two: str
    into: str
    by: float
    span: Span


def tenons_meeting(
    ones: Sequence[Tenon], twos: Sequence[Tenon], solids: Mapping[str, Solid], overlap: Overlap
) -> MeetingTenons | None:
    """What is left of an overlap of two parts where both are tenoned into the wood that it lies in.

    ``ones`` and ``twos`` are the tenons of either part. None where the overlap lies elsewhere, so that the
    parts themselves are in each other's way.
    """
    twos_into = {tenon.into: tenon for tenon in twos}
    for one in ones:
        two, into = twos_into.get(one.into), solids[one.into]
        if two is None or not all(
            into.low[axis] - TOLERANCE_MM <= overlap.low[axis]
            and overlap.high[axis] <= into.high[axis] + TOLERANCE_MM
            for axis in range(3)
        ):
            continue
        shared = [
            min(first[1], second[1]) - max(first[0], second[0])
            for first, second in zip(_reach(one, solids), _reach(two, solids), strict=True)
        ]
        housing = two.joint.join.housing
        return MeetingTenons(
            one=overlap.first,
            two=overlap.second,
            into=one.into,
            by=max(0.0, min(shared)),
            span=housing.span if housing is not None else two.joint.join.span,
        )
    return None


def _reach(tenon: Tenon, solids: Mapping[str, Solid]) -> list[tuple[float, float]]:
    """From where to where a tenon stands on each axis, mm: its thickness in the middle of its board."""
    overlap = tenon.joint.overlap
    assert overlap is not None
    found = list(zip(overlap.low, overlap.high, strict=True))
    thick = solids[tenon.part].thick
    middle = sum(found[thick]) / 2
    found[thick] = (middle - tenon.thickness / 2, middle + tenon.thickness / 2)
    return found


class Recess(NamedTuple):
    """A dado, a groove or a rabbet in a board: how deep it goes, and how much wood there is that way, mm.

    ``other`` is the part that goes in; empty where the board's own clauses cut it. ``high`` says which of
    the two faces on ``axis`` it is cut in. ``low`` and ``top`` bound it.
    """

    part: str
    other: str
    kind: HousingKind
    axis: int
    high: bool
    depth: float
    through: float
    low: tuple[float, float, float]
    top: tuple[float, float, float]
    span: Span

    @property
    def share(self) -> float:
        return self.depth / self.through

    @property
    def left(self) -> float:
        return self.through - self.depth


def _right_through(joint: Joint, left: Solid, right: Solid) -> bool:
    """True where the shared space is the whole thickness of both, so that either might be cut through."""
    overlap = joint.overlap
    return overlap is not None and all(
        overlap.depths[solid.thick] >= solid.thickness - TOLERANCE_MM for solid in (left, right)
    )


def _of_joint(made: Housed, into: Solid, kind: HousingKind, span: Span) -> Recess:
    overlap = made.joint.overlap
    assert overlap is not None
    depth = made.room if made.room_said else made.depth
    middle = (overlap.low[made.axis] + overlap.high[made.axis]) / 2
    centre = (into.low[made.axis] + into.high[made.axis]) / 2
    return Recess(
        made.into, made.part, kind, made.axis, middle > centre, depth, into.extent(made.axis),
        overlap.low, overlap.high, span,
    )  # fmt: skip


def _stretch(reach: Reach, low: float, high: float) -> tuple[float, float]:
    match reach.start:
        case "low":
            return low + reach.away, low + reach.away + reach.size
        case "high":
            return high - reach.away - reach.size, high - reach.away
        case "middle":
            middle = (low + high) / 2 + reach.away
            return middle - reach.size / 2, middle + reach.size / 2
        case "short":
            return low + reach.away, high - reach.size
        case _:
            return low, high


def recess_of_cut(cut: BoxCut, solid: Solid) -> Recess | None:
    """The recess that a clause cuts into a face; None where it is cut into an edge or an end."""
    reaches = (cut.across, cut.deep, cut.up)
    into = reaches[solid.thick]
    if cut.kind == "notch" or into.start not in ("low", "high") or into.away > TOLERANCE_MM:
        return None
    bounds = [_stretch(reach, solid.low[axis], solid.high[axis]) for axis, reach in enumerate(reaches)]
    low, top = ((bounds[0][end], bounds[1][end], bounds[2][end]) for end in (0, 1))
    return Recess(
        solid.name, "", cut.kind, solid.thick, into.start == "high", into.size, solid.extent(solid.thick),
        low, top, cut.span,
    )  # fmt: skip


def recesses(review: Review) -> Iterator[Recess]:
    """Every dado, groove and rabbet that goes into the thickness of a board that stands square."""
    solids = review.setting.solids
    for joint in review.setting.joints:
        housing = joint.join.housing
        if housing is None or housing.kind not in HOUSINGS or joint.left in GROUNDS or joint.right in GROUNDS:
            continue
        made = housed(joint, solids)
        if made is None:
            continue
        if _right_through(joint, solids[joint.left], solids[joint.right]):
            # The first list goes into the second.
            into = solids[joint.right]
            made = made._replace(
                axis=into.thick, part=joint.left, into=joint.right, depth=into.extent(into.thick)
            )
        into = solids[made.into]
        if into.square and solids[made.part].square and made.axis == into.thick:
            yield _of_joint(made, into, housing.kind, housing.span)
    for name, part in review.plan.parts.items():
        if part.shape is None or name not in solids or not solids[name].square:
            continue
        for cutting in part.shape.cuttings:
            if isinstance(cutting, BoxCut):
                found = recess_of_cut(cutting, solids[name])
                if found is not None:
                    yield found


def facing_pairs(found: list[Recess]) -> Iterator[tuple[Recess, Recess]]:
    """Recesses of one board that lie back to back, from its low and from its high face."""
    by_part: dict[str, tuple[list[Recess], list[Recess]]] = {}
    for each in found:
        by_part.setdefault(each.part, ([], []))[each.high].append(each)
    for low, high in by_part.values():
        if not low or not high:
            continue
        axis = low[0].axis
        one, two = (other for other in range(3) if other != axis)
        # Swept along the board, so that a board with many shelves costs little more than its shelves.
        run = max((one, two), key=lambda other: max(each.top[other] for each in low) - low[0].low[other])
        low.sort(key=lambda each: each.low[run])
        high.sort(key=lambda each: each.low[run])
        start = 0
        for each in low:
            while start < len(high) and high[start].top[run] <= each.low[run] + TOLERANCE_MM:
                start += 1
            for place in range(start, min(len(high), start + FACING_MOST)):
                other = high[place]
                if other.low[run] >= each.top[run] - TOLERANCE_MM:
                    break
                if all(
                    min(each.top[way], other.top[way]) - max(each.low[way], other.low[way]) > TOLERANCE_MM
                    for way in (one, two)
                ):
                    yield each, other
