"""The last grit on bare wood below each first coat, with what the sanding table says of it."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.records import NamedTuple
from reviewer.reference.finishes import finish
from reviewer.reference.sanding import SandingRule, last_grit
from reviewer.review import Review
from reviewer.workshop.coating import Layer


class LastGrit(NamedTuple):
    """The first coat of a set of parts, the last grit below it, and the line that says what it should be."""

    where: dict[str, str]  # by part, what of it
    layer: Layer
    grit: int
    line: SandingRule


def last_grits(review: Review) -> Iterator[LastGrit]:
    """Each first coat on bare wood whose plan says what it was sanded with, once for a step and a line."""
    found: dict[tuple[int, str], LastGrit] = {}
    for schedule in review.finished_alike:
        if not schedule.layers or not schedule.layers[0].sanded:
            continue
        layer = schedule.layers[0]
        group = finish(layer.product).compat_group
        for name in schedule.parts:
            line = last_grit(group, review.material_of(name).family)
            if line is None:
                continue
            key = (layer.step.span.start, line.name)
            one = found.setdefault(key, LastGrit({}, layer, layer.sanded[-1], line))
            one.where[name] = schedule.where[name]
    yield from found.values()
