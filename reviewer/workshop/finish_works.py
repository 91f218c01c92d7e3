"""What is done to a finish, in order: sanding, preparing and coats, each with its hours of hands-on work."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING, Literal, NamedTuple

from reviewer.model.plan import Coats, Sanding, Surfacing
from reviewer.reference.spreading import work_time
from reviewer.workshop.coating import ordinal
from reviewer.workshop.drying_times import Drying
from reviewer.workshop.finish_quantities import CoatKey

if TYPE_CHECKING:
    from reviewer.review import Review

Kind = Literal["sand", "prepare", "coat", "assemble"]


class Work(NamedTuple):
    """A work before it has its time."""

    kind: Kind
    said: str
    area: float
    hands_on: float
    waits: float
    whole: bool  # a coat is not left half done
    recoat_within: float | None = None
    products: tuple[str, ...] = ()
    key: CoatKey | None = None
    grits: tuple[int, ...] = ()


_PREPARED = {
    "fill holes": "fill holes",
    "seal knots": "seal the knots",
    "age": "age the wood",
    "wipe": "wipe down",
    "plug pockets": "plug the pockets",
    "raise grain": "raise the grain",
    "distress edges": "wear the edges",
    "distress faces": "wear the faces",
    "glue size": "brush on glue size",
    "clean off glue": "clean off glue",
    "strip old paint": "strip the old paint",
    "strip old finish": "strip the old finish",
    "test board": "try it all on a test board",
}


def _grits(grits: tuple[int, ...]) -> str:
    return f"sand {', '.join(map(str, grits))}"


def works_of(review: Review, place: int, area: float, drying: dict[CoatKey, Drying]) -> Iterator[Work]:
    """The works of one finish in order."""
    steps = review.plan.finishes[place].steps
    last = max((index for index, step in enumerate(steps) if isinstance(step, Coats)), default=-1)
    for index, step in enumerate(steps):
        match step:
            case Sanding(grits=grits):
                coated = any(isinstance(each, Coats) for each in steps[:index])
                took = work_time("sand between" if coated else "sand")
                hours = math.fsum(took.hands_on(area) for _ in grits)
                yield Work("sand", _grits(grits), area, hours, 0.0, False, grits=grits)
            case Surfacing(work=work, stuff=stuff, product=product):
                took = work_time(work)
                said = f"{_PREPARED[work]} with {stuff}" if stuff else _PREPARED[work]
                products = (product,) if product else ()
                yield Work("prepare", said, area, took.hands_on(area), took.waits, False, products=products)
            case Coats():
                for number in range(1, step.count + 1):
                    if number > 1 and step.sanded_between is not None:
                        yield _sanded_between(step.sanded_between, area)
                    key = CoatKey(place, index, number)
                    dries = drying.get(key, Drying(step.dry_hours or 0.0, None))
                    nth = f"{ordinal(number)} coat" if step.count > 1 else "coat"
                    hours = work_time(step.applied or "brush").hands_on(area)
                    yield Work(
                        "coat",
                        f"{nth} of {step.said}",
                        area,
                        hours,
                        dries.waits,
                        True,
                        dries.within,
                        (step.product,),
                        key,
                    )
                if step.count == 1 and step.sanded_between is not None and index < last:
                    yield _sanded_between(step.sanded_between, area)


def _sanded_between(grit: int, area: float) -> Work:
    took = work_time("sand between").hands_on(area)
    return Work("sand", f"sand {grit} lightly", area, took, 0.0, False, grits=(grit,))
