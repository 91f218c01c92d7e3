"""Parts that are not square boards of their stock: what :mod:`reviewer.model.parts` needs of them.

Only a plan that has such a part comes here.
"""

from __future__ import annotations

from collections.abc import Iterable

from reviewer.language import declarations as d
from reviewer.model.desk import Desk
from reviewer.model.leaning import Leaners
from reviewer.model.naming import CORNERS, SolidNames, with_each
from reviewer.model.placing import Placer, Placing
from reviewer.model.plan import Axis, Cut, Part, Relation, Stock
from reviewer.model.shapes import EndTowards, Lean, Rising, Shape
from reviewer.model.shaping import Shaper
from reviewer.model.slanting import leaning_copies, rising_of, tell_strange_slant, wood_sizes
from reviewer.model.specs import Spec, axes_of
from reviewer.model.turning import Lie
from reviewer.model.wood import wood_of
from reviewer.records import NamedTuple


class ShapedWood(NamedTuple):
    """The placing of a shaped part, what its board settles, and its shape."""

    placer: Placer
    placing: Placing
    sizes: list[Relation]
    ripped: Cut | None
    shape: Shape | None


def shaped_wood(
    desk: Desk,
    names: SolidNames,
    leaners: Leaners | None,
    spec: Spec,
    stock: Stock,
    lie: Lie,
    run_said: bool,
) -> ShapedWood:
    """A part statement with a clause that shapes or slants, or one of a round stock."""
    tell_strange_slant(desk, spec)
    wood = wood_of(desk, spec, stock)
    rises, leans = spec.only(d.RisingClause) is not None, spec.only(d.Leaning) is not None
    placer = Placer(
        desk,
        names,
        lie.long if run_said and not rises else None,
        spec.each,
        "A rising part" if rises else "A part of a sheet",
        None if rises or leans else leaners,
    )
    slant: Lean | Rising | None = None
    if rises:
        slant = rising_of(desk, placer, spec, lie)
    elif leans and leaners is not None:
        # Copies in corners lean as far as each other; which way each leans follows.
        leaner = leaners.get(spec.name) or leaners.get(f"{spec.name}.{next(iter(CORNERS))}")
        slant = leaner.lean if leaner is not None else None
    placing = placer.place(spec.name, spec.clauses)
    shaper = Shaper(
        desk,
        placer,
        spec,
        lie,
        sheet=stock.kind == "sheet",
        run_said=run_said or spec.only(d.GrainClause) is not None,
        slant="rises" if rises else "leans" if leans else None,
        bar=wood.bar,
    )
    cuttings = (*shaper.cuttings(), *placing.slanting)
    shape = Shape(slant, cuttings) if slant is not None or cuttings else None
    return ShapedWood(placer, placing, wood_sizes(wood, lie, slant), wood.ripped, shape)


def leaners_of(desk: Desk, specs: Iterable[Spec], counts: Iterable[int], stocks: dict[str, Stock]) -> Leaners:
    """Every name of a plan that leans: parts, copies in corners and in rows."""
    found = Leaners()
    for spec, count in zip(specs, counts, strict=True):
        if spec.only(d.Leaning) is None:
            continue
        stock = spec.only(d.OfStock)
        for name, leaner in leaning_copies(
            desk, spec, stocks.get(stock.name.text) if stock else None
        ).items():
            found[name] = leaner
            for number in range(1, count + 1):
                found[f"{name}.{number}"] = leaner
    return found


def in_row(part: Part, axis: Axis) -> Part:
    """A part as the copies of its row have it: ends along the row meet no neighbour but the next copy."""
    assert part.shape is not None
    slant, cuttings = part.shape
    kept = tuple(each for each in cuttings if not (isinstance(each, EndTowards) and each.axis == axis))
    shape = Shape(slant, kept) if slant is not None or kept else None
    return part.model_copy(update={"shape": shape})


def mirror_ends(parts: dict[str, Part], specs: Iterable[Spec]) -> None:
    """Give parts that mirror others the ends of those that are cut to a slanting face, mirrored."""
    mirrors = {spec.name: spec for spec in specs if spec.mirror is not None}
    done: set[str] = set()
    for first in mirrors:
        chain: list[str] = []
        name = first
        while name in mirrors and name not in done:
            done.add(name)
            chain.append(name)
            mirror = mirrors[name].mirror
            assert mirror is not None
            name = mirror.of
        for name in reversed(chain):
            _mirror_ends_of(parts, mirrors[name])


def _mirror_ends_of(parts: dict[str, Part], spec: Spec) -> None:
    mirror = spec.mirror
    assert mirror is not None
    part, of = parts.get(spec.name), parts.get(mirror.of)
    if part is None or of is None or of.shape is None:
        return
    mine = part.shape or Shape()
    own = {axis for clause in spec.clauses for axis in axes_of(clause, spec.long, spec.each, None)}
    about = with_each(mirror.about.text, spec.each)
    ends = tuple(
        each._replace(mirrors=(*each.mirrors, (int(mirror.axis), about)))
        for each in of.shape.cuttings
        if isinstance(each, EndTowards) and each.axis not in own
    )
    if ends:
        shape = mine._replace(cuttings=(*mine.cuttings, *ends))
        parts[spec.name] = part.model_copy(update={"shape": shape})
