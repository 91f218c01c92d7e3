"""All parts with a shape as solids: in the order in which they are fitted to each other, copies made once.

A notch that makes room for another part, and an end cut to the face of one, need that part's solid. Parts
that wait for each other in a circle take each other uncut.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from reviewer.geometry.vectors import SAME, Vector, minus
from reviewer.model.plan import Part
from reviewer.model.shapes import EndToSuit, FittedNotch
from reviewer.records import NamedTuple
from reviewer.setting_out.blanks import blank_of
from reviewer.setting_out.making import Maker
from reviewer.setting_out.result import Miscut
from reviewer.setting_out.solid import Solid


class Placed(NamedTuple):
    """A part with a shape in its setting-out box; ``width`` is the board's own, None when not known."""

    part: Part
    low: Vector
    high: Vector
    width: float | None


def _fitted_to(part: Part) -> list[str]:
    assert part.shape is not None
    return [each.other for each in part.shape.cuttings if isinstance(each, FittedNotch | EndToSuit)]


def _in_order(placed: Mapping[str, Placed]) -> Iterator[tuple[str, frozenset[str]]]:
    """Parts after those that they are fitted to. Beside one in a circle those that it has to take uncut."""
    waits = {name: {each for each in _fitted_to(one.part) if each in placed} for name, one in placed.items()}
    wanted: dict[str, list[str]] = {}
    for name, others in waits.items():
        for other in others:
            wanted.setdefault(other, []).append(name)
    ready = [name for name in placed if not waits[name]]
    left = dict.fromkeys(placed)
    while left:
        if not ready:
            # Those that no other one of the rest waits for only hang on a circle, and can wait for it.
            asked = {name: sum(1 for each in wanted.get(name, ()) if each in left) for name in left}
            loose = [name for name in left if not asked[name]]
            inside = dict.fromkeys(left)
            while loose:
                name = loose.pop()
                del inside[name]
                for other in waits[name]:
                    asked[other] -= 1
                    if not asked[other]:
                        loose.append(other)
            ready = list(inside)
        done, ready = ready, []
        for name in done:
            del left[name]
            yield name, frozenset(waits[name])
        for name in done:
            for other in wanted.get(name, ()):
                waits[other].discard(name)
                if not waits[other] and other in left and other not in ready:
                    ready.append(other)


class Shaped(NamedTuple):
    """The solids of all shaped parts that can be made, and what can't be cut, in the order of the plan."""

    solids: dict[str, Solid]
    miscuts: tuple[Miscut, ...]


def shaped_solids(placed: Mapping[str, Placed], square: Mapping[str, Solid]) -> Shaped:
    """Every part with a shape as a solid. ``square`` are the parts without one, that others are fitted to."""
    made: dict[str, Solid] = {}
    miscuts: dict[str, tuple[Miscut, ...]] = {}
    known: dict[object, tuple[Solid, tuple[Miscut, ...], Vector]] = {}
    uncut: dict[str, Solid] = {}
    for name, unmade in _in_order(placed):
        one = placed[name]
        part = one.part
        fitted = _fitted_to(part)
        # Copies of one part are the same board somewhere else.
        sizes = tuple(round(one.high[axis] - one.low[axis], 6) for axis in range(3))
        key = (part.shape, part.long, part.wide, part.thick, one.width, sizes)
        if not fitted and key in known:
            like, told, at = known[key]
            made[name] = _snapped(_moved(like, name, minus(one.low, at)), one)
            miscuts[name] = tuple(each._replace(part=name) for each in told)
            continue
        blank = blank_of(part, one.low, one.high, one.width)
        if isinstance(blank, Miscut):
            miscuts[name] = (blank,)
            continue
        others: dict[str, Solid] = {}
        for other in fitted:
            if other in square:
                others[other] = square[other]
            elif other in unmade:
                if other not in uncut:
                    theirs = placed[other]
                    bare = blank_of(theirs.part, theirs.low, theirs.high, theirs.width)
                    plain = None if isinstance(bare, Miscut) else Maker(theirs.part, bare, {}).solid()
                    if plain is None:
                        continue
                    uncut[other] = plain
                others[other] = uncut[other]
            elif other in made:
                others[other] = made[other]
        maker = Maker(part, blank, others)
        solid = maker.solid()
        if solid is not None:
            made[name] = solid = _snapped(solid, one)
            if not fitted:
                known[key] = solid, tuple(maker.miscuts), one.low
        else:
            suits = (
                [each for each in part.shape.cuttings if isinstance(each, EndToSuit)] if part.shape else []
            )
            span, other = (suits[0].span, suits[0].other) if suits else (part.span, "")
            maker.miscuts.append(Miscut(name, "takes everything", span, other=other, unmade=True))
        miscuts[name] = tuple(maker.miscuts)
    return Shaped(
        {name: made[name] for name in placed if name in made},
        tuple(each for name in placed for each in miscuts.get(name, ())),
    )


def _moved(solid: Solid, name: str, way: Vector) -> Solid:
    """The same solid under another name somewhere else."""
    assert solid.body is not None
    body = solid.body.moved(way)
    return replace(solid, name=name, low=body.low, high=body.high, body=body)


def _snapped(solid: Solid, one: Placed) -> Solid:
    """Bounds that differ from the setting-out box by rounding alone are the box's own."""
    x0, y0, z0 = (
        there if abs(there - here) <= SAME else here for here, there in zip(solid.low, one.low, strict=True)
    )
    x1, y1, z1 = (
        there if abs(there - here) <= SAME else here for here, there in zip(solid.high, one.high, strict=True)
    )
    return replace(solid, low=(x0, y0, z0), high=(x1, y1, z1))
