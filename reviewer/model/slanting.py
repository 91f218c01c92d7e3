"""Leaning and rising parts: how they slant, and what room that takes."""

from __future__ import annotations

import math
from typing import Literal

from reviewer.geometry.slanting import level_section
from reviewer.language import declarations as d
from reviewer.model.desk import Desk
from reviewer.model.leaning import OWN, Leaner
from reviewer.model.mirroring import towards_its_corner
from reviewer.model.naming import CORNERS
from reviewer.model.placing import FACES, RANK_STOCK, Placer
from reviewer.model.plan import Axis, Edge, Relation, Stock, Term
from reviewer.model.shapes import Lean, Rising
from reviewer.model.specs import Spec
from reviewer.model.turning import Lie
from reviewer.model.wood import RUNS, Wood, checked_degrees, either_face, wood_of

#: From what a level can just show to what stands more like a brace than like a leg.
_LEAN_DEGREES = (0.1, 60.0)

EndCut = Literal["square", "level", "plumb", "corner"]


# ------------------------------------------------------------ leaning


def leaning_copies(desk: Desk, spec: Spec, stock: Stock | None) -> dict[str, Leaner]:
    """Each name of a part statement that leans, and how: copies in corners may lean each their own way.

    Empty, and told, where the part can't lean; empty too where its stock is not known.
    """
    clause = spec.only(d.Leaning)
    if clause is None or stock is None:
        return {}
    if stock.kind == "sheet":
        desk.problem(
            clause.span,
            f"“{spec.family}” is cut from a sheet, and only a board leans.",
            "Cut it from a board, or leave this out.",
        )
        return {}
    if spec.long != Axis.UP:
        if spec.long is not None:  # else it is told how it lies
            desk.problem(
                clause.span,
                f"“{spec.family}” runs {RUNS[spec.long]}, and only an upright part leans.",
                "Let it be upright. A brace has no word for where it runs, such as: "
                "facing front, rising towards right",
            )
        return {}
    turned = spec.only(d.Turned)
    thick = Axis.ACROSS if turned is not None and turned.way == "side" else Axis.DEEP
    thickness = wood_of(desk, spec, stock).thickness
    found: dict[str, Leaner] = {}
    corners = spec.only(d.InCorners) is not None
    for copy, corner in CORNERS.items() if corners else ((None, None),):
        said = clause
        if clause.outwards:
            if corner is None:
                desk.problem(
                    clause.span,
                    f"“{spec.family}” stands in no corners, so it is not clear which way is outwards.",
                    f"Name the side: {clause.kind} 8 degrees towards left",
                )
                return {}
            said = towards_its_corner(clause, corner)
        lean = _lean(desk, spec, said)
        if lean is not None:
            found[f"{spec.name}.{copy}" if copy else spec.name] = Leaner(lean, thick, thickness)
    return found


def _lean(desk: Desk, spec: Spec, clause: d.Leaning) -> Lean | None:
    if clause.outwards:
        desk.problem(
            clause.span,
            "A part leans across or deep, not up.",
            f"Write: {clause.kind} 8 degrees outwards deep",
        )
        return None
    runs: dict[int, float] = {}
    broken = False
    for angle, word in zip(clause.angles, clause.faces, strict=True):
        what = "A lean" if clause.kind == "tilted" else "A splay"
        degrees = checked_degrees(desk, angle, _LEAN_DEGREES, what, "upright")
        text = spec.each if word.text == "each" and spec.each is not None else word.text
        if text not in FACES:
            desk.problem(
                word.span,
                f"“{text}” is no face: the faces are left, right, front, back, bottom and top.",
                "Name one of the six, or let the copies be called by faces: for each of left, right",
            )
            return None
        axis, which = FACES[text]
        if axis == Axis.UP:
            desk.problem(
                word.span,
                f"A part can't lean towards the {text}.",
                "Name the side: left, right, front or back.",
            )
            return None
        if axis in runs:
            desk.problem(
                clause.span,
                f"“{spec.family}” leans twice {RUNS[axis]}.",
                "Keep one of the two, or name a side that looks the other way.",
            )
            return None
        if degrees is None:
            broken = True
            continue
        # Its upper end is towards the high side when it is tilted that way, or splayed the other way.
        up = (which == "high") == (clause.kind == "tilted")
        runs[axis] = math.tan(math.radians(degrees)) * (1.0 if up else -1.0)
    return None if broken else Lean(runs.get(0, 0.0), runs.get(1, 0.0), clause.span)


def wood_sizes(wood: Wood, lie: Lie, slant: Lean | Rising | None) -> list[Relation]:
    """The relations that the board itself settles.

    A leaning part takes on each level axis its level section and how far it leans over its own height.
    The width of a rising board lies slanting in its box and settles nothing.
    """
    thick = Relation(lie.thick, "size", (), wood.thickness, RANK_STOCK, wood.thickness_span)
    if isinstance(slant, Rising):
        return [thick]
    if slant is None:
        if wood.width is None:
            return [thick]
        return [thick, Relation(lie.wide, "size", (), wood.width, RANK_STOCK, wood.width_span)]
    runs = (slant.run_across, slant.run_deep)
    level = level_section(*runs, lie.thick, wood.width or 0.0, wood.thickness)
    found = []
    for axis, span in ((lie.thick, wood.thickness_span), (lie.wide, wood.width_span)):
        if axis == lie.wide and wood.width is None:
            continue
        run = abs(runs[axis])
        terms = (Term(run, Edge(OWN, Axis.UP, "size")),) if run else ()
        found.append(Relation(axis, "size", terms, level[axis], RANK_STOCK, span))
    return found


# ------------------------------------------------------------ rising


def rising_of(desk: Desk, placer: Placer, spec: Spec, lie: Lie) -> Rising | None:
    """How a brace rises within its box; None where that can't be (told). ``lie`` has its plane."""
    clause = spec.only(d.RisingClause)
    assert clause is not None
    rip = spec.only(d.Rip)
    if rip is not None and rip.size is None:
        desk.problem(
            rip.span,
            f"“{spec.family}” rises from corner to corner of its room, so its width does not follow from it.",
            "Give its width, such as: rip 3",
        )
        return None
    face = placer.face(clause.face)
    if face is None:
        return None
    axis, which = face
    if axis != lie.long:
        says = (
            f"“{spec.family}” lies flat, so it climbs towards the back on its way to the left or the right."
        )
        do = "Write: rising towards left, or: rising towards right"
        if lie.thick != Axis.UP:
            turned = spec.only(d.Turned)
            assert turned is not None
            says = f"“{spec.family}” is facing {turned.way}, so it can't rise towards the {clause.face.text}."
            do = f"Name the {either_face(lie.long)}, or turn it: facing front, facing side or flat."
        desk.problem(clause.face.span, says, do)
        return None
    low, high = end_cuts(desk, spec)
    return Rising(axis, lie.wide, "low" if which == "low" else "high", low, high, clause.span)


def end_cuts(desk: Desk, spec: Spec) -> tuple[EndCut, EndCut]:
    """How the lower and the upper end of a brace are cut: square unless it is said."""
    said: dict[str, d.Ended] = {}
    for clause in spec.clauses:
        if not isinstance(clause, d.Ended):
            continue
        for end in ("lower", "upper") if clause.end == "both" else (clause.end,):
            if end in said:
                desk.problem(
                    clause.span,
                    f"“{spec.family}” says twice how its {end} end is cut.",
                    "Keep one of the two.",
                    also_at=(said[end].span,),
                )
                break
            said[end] = clause
    low, high = (
        "square" if end not in said else "corner" if said[end].way == "pointed" else said[end].way
        for end in ("lower", "upper")
    )
    return low, high  # type: ignore[return-value]


def tell_strange_slant(desk: Desk, spec: Spec) -> None:
    """Tell what a part says of its slant that does not go together."""
    leaning, rising = spec.only(d.Leaning), spec.only(d.RisingClause)
    if leaning is not None and rising is not None:
        desk.problem(
            max(leaning.span, rising.span),
            f"“{spec.family}” leans and rises at once.",
            "Keep one of the two.",
            also_at=(min(leaning.span, rising.span),),
        )
    if rising is not None:
        return
    for clause in spec.clauses:
        if not isinstance(clause, d.Ended) or (leaning is not None and clause.way == "level"):
            continue
        if leaning is not None:
            desk.problem(
                clause.span,
                f"“{spec.family}” leans, and the ends of a leaning part are cut level.",
                "Leave this out, or write: ends cut level",
            )
        elif not spec.statement.damaged:
            desk.problem(
                clause.span,
                f"“{spec.family}” does not rise, and only a rising part says how its ends are cut.",
                "Leave this out, or let it rise: facing front, rising towards right",
            )
