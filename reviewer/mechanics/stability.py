"""Tipping of a rigid piece over an edge of its footprint: plain moments, level or tilted.

Places are in mm (x and y along the floor, z up from it), forces in N, moments in N·mm, angles in
degrees. A tipping edge is a side of the polygon around all floor contacts. An *arm* is the level
distance from the edge, positive on the piece's own side, negative outside. Each function names its
equation in statics of a body about a line, which needs no source; (n) is its number in the project's
safety reference, section 2.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from reviewer.mechanics.mass import Mass
from reviewer.records import NamedTuple
from reviewer.units import TOLERANCE_MM

Point = tuple[float, float]


class TippingEdge(NamedTuple):
    """The line between two floor contacts that the piece would turn about; the piece lies to its left."""

    start: Point
    end: Point

    @property
    def outward(self) -> Point:
        """The unit vector along the floor in which the piece would fall."""
        length = math.dist(self.start, self.end)
        return ((self.end[1] - self.start[1]) / length, (self.start[0] - self.end[0]) / length)

    def arm(self, x: float, y: float) -> float:
        """The level distance of a place from the edge, mm: positive inside, negative outside."""
        # As with ``outward``, written out: this is asked more often than anything else of a piece.
        start_x, start_y = start = self.start
        end_x, end_y = end = self.end
        length = math.dist(start, end)
        return (start_x - x) * ((end_y - start_y) / length) + (start_y - y) * ((start_x - end_x) / length)


class Load(NamedTuple):
    """A force in newtons straight down at a place: a child on an open drawer, a sitter on a bench end."""

    force: float
    x: float
    y: float
    z: float


class Push(NamedTuple):
    """A level force in newtons at a place, straight towards whichever edge is looked at."""

    force: float
    x: float
    y: float
    z: float


class Balance(NamedTuple):
    """Moments about an edge in N·mm: what keeps the piece down, and what would turn it over."""

    edge: TippingEdge
    restoring: float
    overturning: float

    @property
    def margin(self) -> float:
        """What is left before it tips, N·mm; below 0 it tips. (7)"""
        return self.restoring - self.overturning

    @property
    def ratio(self) -> float:
        """Restoring over overturning; below 1 it tips. Without end when nothing would turn it. (7)"""
        if self.overturning > 0:
            return self.restoring / self.overturning
        return math.inf if self.restoring > 0 else 0.0


def support_polygon(contacts: Iterable[Point]) -> tuple[Point, ...] | None:
    """The corners of the footprint, anticlockwise from the leftmost; None when all contacts lie in a line.

    Contacts that stand out by no more than the tolerance are no corners.
    """
    points = sorted(set(contacts))
    hull = _half_hull(points)[:-1] + _half_hull(points[::-1])[:-1]
    if len(hull) < 3:
        return None
    # The corner furthest from another one is a sharp one, so it can be kept untried.
    first = max(range(len(hull)), key=lambda i: (math.dist(hull[i], hull[0]), hull[i]))
    hull = hull[first:] + hull[:first]
    corners = hull[:1]
    passed: list[Point] = []
    for corner, following in zip(hull[1:], hull[2:] + hull[:1], strict=True):
        passed.append(corner)
        if any(_distance(point, corners[-1], following) > TOLERANCE_MM for point in passed):
            corners.append(corner)
            passed.clear()
    if len(corners) < 3:
        return None
    leftmost = corners.index(min(corners))
    return tuple(corners[leftmost:] + corners[:leftmost])


def _half_hull(points: Sequence[Point]) -> list[Point]:
    """The lower side of points in order (the upper side when they run backwards)."""
    kept: list[Point] = []
    for x, y in points:
        while len(kept) >= 2:
            (ax, ay), (bx, by) = kept[-2:]
            if (bx - ax) * (y - ay) - (by - ay) * (x - ax) > 0:
                break
            kept.pop()
        kept.append((x, y))
    return kept


def _distance(point: Point, start: Point, end: Point) -> float:
    """From a point to the straight line that joins two others, mm, ends included."""
    run_x, run_y = end[0] - start[0], end[1] - start[1]
    run = run_x * run_x + run_y * run_y
    along = ((point[0] - start[0]) * run_x + (point[1] - start[1]) * run_y) / run if run else 0.0
    share = min(max(along, 0.0), 1.0)
    return math.dist(point, (start[0] + share * run_x, start[1] + share * run_y))


def tipping_edges(polygon: Sequence[Point]) -> tuple[TippingEdge, ...]:
    """The sides of a footprint in order. ``polygon`` runs anticlockwise, as from :func:`support_polygon`."""
    return tuple(TippingEdge(a, b) for a, b in zip(polygon, (*polygon[1:], polygon[0]), strict=True))


def base_depth(edge: TippingEdge, polygon: Sequence[Point]) -> float:
    """The distance from an edge to the contact furthest from it, mm."""
    return max(edge.arm(x, y) for x, y in polygon)


def tilt_over_block(rise: float, base_depth: float) -> float:
    """The tilt in degrees when the far contacts stand higher by ``rise`` mm: sin θ = t / b."""
    return math.degrees(math.asin(min(rise / base_depth, 1.0)))


def _turned(arm: float, height: float, tilt_degrees: float) -> float:
    """The lever of a weight once the piece leans towards the edge."""
    tilt = math.radians(tilt_degrees)
    return arm * math.cos(tilt) - height * math.sin(tilt)


def restoring_moment(edge: TippingEdge, masses: Iterable[Mass], tilt_degrees: float = 0.0) -> float:
    """The moment of the piece's own weight about the edge, N·mm; positive stands. (1)-(4)

    Open drawers and doors are given where they are when open (:meth:`Mass.moved`). Leave out what may be
    gone tomorrow: counting it would flatter the piece.
    """
    return math.fsum(mass.weight * _turned(edge.arm(mass.x, mass.y), mass.z, tilt_degrees) for mass in masses)


def load_moment(edge: TippingEdge, load: Load, tilt_degrees: float = 0.0) -> float:
    """The overturning moment of a downward load, N·mm; negative when it helps the piece to stand. (5)"""
    return -load.force * _turned(edge.arm(load.x, load.y), load.z, tilt_degrees)


def push_moment(edge: TippingEdge, push: Push, tilt_degrees: float = 0.0) -> float:
    """The overturning moment of a level push, N·mm: F·h, and F·(h·cos θ + x·sin θ) once it leans. (6)"""
    tilt = math.radians(tilt_degrees)
    return push.force * (push.z * math.cos(tilt) + edge.arm(push.x, push.y) * math.sin(tilt))


def balance(
    edge: TippingEdge,
    masses: Iterable[Mass],
    loads: Iterable[Load] = (),
    pushes: Iterable[Push] = (),
    tilt_degrees: float = 0.0,
) -> Balance:
    """Every moment about one edge. A load inside the edge counts as restoring. (7), (11), (12)"""
    restoring = [restoring_moment(edge, masses, tilt_degrees)]
    overturning = [push_moment(edge, push, tilt_degrees) for push in pushes]
    for load in loads:
        moment = load_moment(edge, load, tilt_degrees)
        if moment > 0:
            overturning.append(moment)
        else:
            restoring.append(-moment)
    return Balance(edge, math.fsum(restoring), math.fsum(overturning))


def weakest(balances: Iterable[Balance]) -> Balance | None:
    """The balance nearest to tipping: least ratio, then least margin; None when there are none."""
    return min(balances, key=lambda one: (one.ratio, one.margin, one.edge), default=None)


def load_that_tips(
    edge: TippingEdge, restoring: float, x: float, y: float, z: float, tilt_degrees: float = 0.0
) -> float:
    """The downward force at a place that just tips the piece, N. (8), (11)

    Without end for a place inside the edge, 0 when the piece falls by itself.
    """
    if restoring <= 0:
        return 0.0
    lever = -_turned(edge.arm(x, y), z, tilt_degrees)
    return restoring / lever if lever > 0 else math.inf


def push_that_tips(restoring: float, height: float) -> float:
    """The level force at a height that just tips the piece, N. (8)"""
    if restoring <= 0:
        return 0.0
    return restoring / height if height > 0 else math.inf


def slides_first(push: float, weight: float, friction: float) -> bool:
    """True when the piece slides before a push so great would tip it: μ·W < F. (9)"""
    return friction * weight < push


def tilt_that_tips(edge: TippingEdge, mass: Mass) -> float:
    """The tilt in degrees at which an unloaded piece falls over the edge: tan θ = arm / height. (10)

    ``mass`` is the whole piece as one (:func:`reviewer.mechanics.mass.combined`).
    """
    return math.degrees(math.atan2(edge.arm(mass.x, mass.y), mass.z))


def restraint_force(
    margin: float, strap_height: float, strap_arm: float = 0.0, slope_degrees: float = 0.0
) -> float:
    """The pull in a wall strap that makes up what the balance lacks, N; 0 when it lacks nothing. (14)

    ``strap_arm`` is how far the strap's hold on the piece lies behind the edge, ``slope_degrees`` how
    steeply it falls towards the wall (below 0: rises). Without end when such a strap cannot help.
    """
    if margin >= 0:
        return 0.0
    slope = math.radians(slope_degrees)
    lever = strap_height * math.cos(slope) + strap_arm * math.sin(slope)
    return -margin / lever if lever > 0 else math.inf


def wall_hung_pull(weight: float, centre_out: float, screws_above_bearing: float) -> float:
    """The pull on the hanging screws of a wall piece together, N: W·c / g. (13)

    ``centre_out`` is how far the centre of mass stands off the wall, ``screws_above_bearing`` how high the
    screws lie above the line where the piece bears on the wall, mm. The same screws carry W in shear.
    """
    return weight * centre_out / screws_above_bearing
