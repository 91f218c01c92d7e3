"""How a part's wood differs from a square board: what is cut away, and how it slants. All in mm and degrees.

These are plain facts in the piece's own axes. :mod:`reviewer.setting_out` makes solids of them. A place
on an axis is counted from a face of the part's setting-out box, so that a cut follows the part when its
size follows from its neighbours.
"""

from __future__ import annotations

from typing import Literal

from reviewer.language.source import Span
from reviewer.records import NamedTuple

Side = Literal["low", "high"]


class Reach(NamedTuple):
    """The stretch of one axis that a cut takes: ``size`` mm, beginning ``away`` mm from a face.

    ``start`` ``low`` or ``high`` counts inward from that face; ``middle`` centres the stretch on the box
    (``away`` then shifts it towards the high side); ``whole`` takes all of the axis. ``short`` takes all but
    ``away`` mm at the low face and ``size`` mm at the high one.
    """

    start: Literal["low", "high", "middle", "whole", "short"]
    away: float = 0.0
    size: float = 0.0


class BoxCut(NamedTuple):
    """A square piece taken out: a notch, a dado, a groove or a rabbet. One reach for each axis."""

    kind: Literal["notch", "dado", "groove", "rabbet"]
    across: Reach
    deep: Reach
    up: Reach
    span: Span


class FittedNotch(NamedTuple):
    """A notch that makes room for another part, with ``clear`` mm all round it."""

    other: str
    clear: float
    span: Span


class FaceCut(NamedTuple):
    """A face that is not square to its neighbours: a mitred or bevelled end, or a bevelled edge.

    The face at ``side`` of ``axis`` is turned by ``degrees`` from square. It keeps its place at the side
    ``long_side`` of ``long_axis`` (the long point) and falls back from there towards the other side.
    A mitre slants across the width of the board, a bevel through its thickness.
    """

    kind: Literal["mitre", "bevel"]
    axis: int
    side: Side
    degrees: float
    long_axis: int
    long_side: Side
    span: Span


class Taper(NamedTuple):
    """A board that narrows to ``to`` mm on ``across_axis`` at one end, over the last ``over`` mm.

    ``over`` None: along the whole board. ``faces`` says which face of ``across_axis`` is cut back.
    """

    axis: int
    side: Side
    across_axis: int
    faces: Literal["low", "high", "both"]
    to: float
    over: float | None
    span: Span


class Hole(NamedTuple):
    """A round hole of ``diameter`` mm that goes in at the face at ``side`` of ``axis``.

    ``depth`` None: right through. ``places`` are the middles on the other two axes, in the order of the
    axes; their ``size`` is 0 and they are never ``whole``.
    """

    axis: int
    side: Side
    diameter: float
    depth: float | None
    places: tuple[Reach, Reach]
    span: Span


class Corners(NamedTuple):
    """Corners of the wide face (seen through the thickness) rounded or chamfered to ``size`` mm.

    ``which`` names them by their sides on the two axes of the wide face, in the order of the axes; empty:
    all four.
    """

    kind: Literal["rounded", "chamfered"]
    size: float
    which: tuple[tuple[Side, Side], ...]
    span: Span


class Arrises(NamedTuple):
    """Every long edge of the board eased: rounded or chamfered by ``size`` mm."""

    kind: Literal["rounded", "chamfered"]
    size: float
    span: Span


class Rounded(NamedTuple):
    """A board turned or planed to a round bar of ``diameter`` mm along its length."""

    diameter: float
    span: Span


class Lean(NamedTuple):
    """A part out of plumb: for each mm up its middle line moves ``run_across`` and ``run_deep`` mm.

    Its ends are cut level. The setting-out box bounds it, so on each axis that it leans along, the box is
    the level section of the board plus its height times the run.
    """

    run_across: float
    run_deep: float
    span: Span


class Rising(NamedTuple):
    """A board that runs slanting within its setting-out box, in the plane of its wide face.

    It climbs on ``up_axis`` while it goes towards the high side of ``along_axis`` (``towards`` high) or
    towards the low side. ``low_end`` and ``high_end`` say how the lower and the upper end are cut:
    ``square`` to the board, ``level`` or ``plumb`` (along ``along_axis`` or along ``up_axis``), or to the
    ``corner`` of the box, both at once.
    """

    along_axis: int
    up_axis: int
    towards: Side
    low_end: Literal["square", "level", "plumb", "corner"]
    high_end: Literal["square", "level", "plumb", "corner"]
    span: Span


class EndToSuit(NamedTuple):
    """An end that is cut to the slanting face of the part it meets."""

    axis: int
    side: Side
    other: str
    span: Span


class EndTowards(NamedTuple):
    """The end on ``axis`` that looks towards ``other`` is to be cut to its slanting face.

    Which end that is shows once both stand; setting out makes an :class:`EndToSuit` of it. A part that
    mirrors another has the ends of that one with the ``mirrors`` (an axis and what the mirror is about,
    the first one first): its end looks towards the part that stands where the mirror has ``other``.
    """

    axis: int
    other: str
    span: Span
    mirrors: tuple[tuple[int, str], ...] = ()


Slant = Lean | Rising
Cutting = BoxCut | FittedNotch | FaceCut | Taper | Hole | Corners | Arrises | Rounded | EndTowards | EndToSuit


class Shape(NamedTuple):
    """All that makes a part other than a square board."""

    slant: Slant | None = None
    cuttings: tuple[Cutting, ...] = ()
