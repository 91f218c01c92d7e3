"""Join and restraint statements to joins and restraints."""

from __future__ import annotations

from typing import Any

from reviewer.language import declarations as d
from reviewer.language.source import Span
from reviewer.model.desk import Desk
from reviewer.model.naming import PartNames, parts_meant
from reviewer.model.plan import WALL, Fastening, Housing, Join, Part, Restraint
from reviewer.reference import gauges, glues

_MAX_FASTENERS = 1_000
#: A fastener driven nearer to the joint's own face than this never leaves the part it starts in.
_STEEPEST_DEGREES = 90


def fastener_sizes(desk: Desk, clause: d.FastenerClause | d.RestraintFact) -> dict[str, Any] | None:
    """Gauge, diameter and length of a fastener clause; None when a size is not known (told)."""
    lengths = [desk.size_mm(size, "fastener") for size in clause.sizes]
    if None in lengths:
        return None
    if clause.gauge is not None:
        screw = gauges.gauge(clause.gauge)
        if screw is None:
            desk.problem(
                clause.span,
                f"“{clause.gauge}” is no screw gauge that the tables list.",
                "Common gauges are #6, #8, #10 and #12.",
            )
            return None
        return {"gauge": clause.gauge, "diameter": screw.diameter, "length": lengths[0]}
    if len(lengths) == 3:  # a loose tenon: thick x wide x long
        return {"diameter": lengths[0], "width": lengths[1], "length": lengths[2]}
    if len(lengths) == 2:
        return {"diameter": lengths[0], "length": lengths[1]}
    return {"length": lengths[0]} if lengths else {}


def joins_of(desk: Desk, statements: list[d.Statement], names: PartNames) -> tuple[Join, ...]:
    """Every join, with the parts of both its lists."""
    found = []
    for statement in statements:
        left = parts_meant(desk, names, statement.names, grounds=(WALL,))
        right = parts_meant(desk, names, statement.others, grounds=(WALL, "floor"))
        if not left or not right:
            _join(desk, statement, left, right, ())
            continue
        groups = tuple(
            meant or (word.text,)
            for word in statement.others
            if (meant := names.meant_by(word.text)) or not names.waits(word.text)
        )
        join = _join(desk, statement, left, right, groups)
        if join is not None:
            found.append(join)
    return tuple(found)


def _join(
    desk: Desk,
    statement: d.Statement,
    left: tuple[str, ...],
    right: tuple[str, ...],
    groups: tuple[tuple[str, ...], ...],
) -> Join | None:
    fastenings: list[dict[str, Any]] = []
    housing: Housing | None = None
    glue: str | None = None
    glue_span = None
    reason: str | None = None
    butt = False
    for clause in statement.clauses:
        if isinstance(clause, d.FastenerClause) and clause.kind == "butt":
            butt = True  # it names no fastener
        elif isinstance(clause, d.FastenerClause):
            sizes = fastener_sizes(desk, clause)
            if sizes is not None:
                fastenings.append({"kind": clause.kind, "span": clause.span, **sizes})
        elif isinstance(clause, d.HousingClause):
            depth = desk.size_mm(clause.depth, "depth") if clause.depth is not None else None
            thick = desk.size_mm(clause.thick, "thickness") if clause.thick is not None else None
            housing = Housing(kind=clause.kind, depth=depth, thickness=thick, span=clause.span)  # type: ignore[arg-type]
        elif isinstance(clause, d.GlueClause):
            glue_span = clause.span
            glue = _glue(desk, clause)
        elif isinstance(clause, d.Unfastened):
            reason = clause.reason
        elif isinstance(clause, d.JoinFact):
            _fact(desk, clause, fastenings)
    if not left or not right:
        return None
    words = (*statement.names, *statement.others)
    left_end = statement.names[-1].span.end
    return Join(
        left=left,
        right=right,
        right_groups=groups,
        fastenings=tuple(Fastening(**fastening) for fastening in fastenings),
        housing=housing,
        glue=glue,
        glue_span=glue_span,
        butt=butt,
        reason=reason,
        left_span=Span(words[0].span.start, left_end),
        right_span=Span(statement.others[0].span.start, words[-1].span.end),
        span=statement.head,
    )


def _glue(desk: Desk, clause: d.GlueClause) -> str | None:
    text = " ".join(word.text for word in clause.name) or "pva"
    key = glues.find_glue(text)
    if key is None:
        whole = Span(clause.name[0].span.start, clause.name[-1].span.end)
        desk.unknown_name(d.Word(text, whole), "glue", glues.glue_names())
    return key


def _fact(desk: Desk, clause: d.JoinFact, fastenings: list[dict[str, Any]]) -> None:
    """Put a fact on the fastener before it; without one it has nothing to say anything about."""
    if clause.kind == "no glue":
        return
    if not fastenings:
        desk.problem(
            clause.span,
            "This says how a fastener goes in, but no fastener stands before it.",
            "Name the fastener first: screws #8 x 2, 2 per end",
        )
        return
    last = fastenings[-1]
    if clause.kind == "count":
        assert isinstance(clause.size, d.Number)
        last["count"] = desk.whole(clause.size, "number of fasteners", _MAX_FASTENERS)
    elif clause.kind == "every":
        assert clause.size is not None
        last["spacing"] = desk.size_mm(clause.size, "spacing")
    elif clause.kind == "from":
        last["driven_from"], last["from_span"] = clause.text, clause.span
    elif clause.kind == "counterbored":
        assert clause.size is not None
        depth = desk.size_mm(clause.size, "counterbore")
        last["counterbore"] = depth or 0.0
    elif clause.kind in ("pilot", "no pilot"):
        last["pilot"] = "drilled" if clause.kind == "pilot" else "none"
        if clause.size is not None:
            last["pilot_diameter"] = desk.size_mm(clause.size, "pilot hole")
    elif clause.kind in ("from end", "from edge"):
        assert clause.size is not None
        last[clause.kind.replace(" ", "_")] = desk.size_mm(clause.size, "distance")
    elif clause.kind == "angle":
        assert isinstance(clause.size, d.Number)
        last["angle"] = _angle(desk, clause.size)
    elif clause.kind == "metal":
        last["metal"] = clause.text
    elif clause.kind in ("coarse", "fine"):
        last["thread"] = clause.kind
    elif clause.kind == "slotted":
        last["slotted"] = True


def _angle(desk: Desk, number: d.Number) -> float | None:
    """An angle that something can be driven at, degrees; None when it is not (told)."""
    if number.unit is None and 0 < number.amount < _STEEPEST_DEGREES:
        return number.amount
    unit = f" {number.unit}" if number.unit else ""
    desk.problem(
        number.span,
        f"A fastener can't be driven at {number.amount:g}{unit} degrees.",
        f"Write an angle above 0 and below {_STEEPEST_DEGREES}, or leave it out where it goes in square.",
    )
    return None


#: Devices with an end at the piece and another at the wall, and the clauses about those ends.
_STRAPS = ("strap", "bracket")
_TWO_ENDS = ("wall height", "on top", "piece screws")


def _strap_ends(desk: Desk, clause: d.RestraintFact) -> dict[str, Any]:
    """What a clause says about the two ends of a strap, as fields of the restraint."""
    if clause.kind == "wall height":
        return {"wall_height": desk.size_mm(clause.sizes[0], "height")}
    if clause.kind == "on top":
        off = desk.size_mm(clause.sizes[0], "distance") if clause.sizes else 0.0
        return {"on_top": True, "from_back": off or 0.0}
    facts: dict[str, Any] = {}
    sizes = fastener_sizes(desk, clause)
    if sizes is not None:
        facts = {f"piece_{name}": size for name, size in sizes.items()}
    if clause.number is not None:
        facts["piece_screws"] = desk.whole(clause.number, "number of screws", 100) or 1
    return facts


def _told_of_ends(desk: Desk, device: str, clauses: list[tuple[str, Span]]) -> None:
    """Only a strap or a bracket has two ends: what else is said of them is told."""
    said = next((span for kind, span in clauses if kind in _TWO_ENDS), None)
    if said is None:
        return
    if device == "cleat":
        desk.problem(
            said,
            "A cleat is a rail on the wall, which the piece is screwed to: it has no other end.",
            "Leave this out, or write strap or bracket in place of cleat.",
        )
        return
    desk.problem(
        said,
        "Screws through the piece go straight into the wall, and this is about a strap or a bracket.",
        "Write strap or bracket besides, or leave this out.",
    )


def restraints_of(
    desk: Desk, statements: list[d.Statement], names: PartNames, parts: dict[str, Part], outlines: set[str]
) -> tuple[Restraint, ...]:
    """Every wall restraint. Naming an outline means the piece as a whole."""
    found = []
    for statement in statements:
        what: tuple[str, ...] = ()
        for word in statement.names:
            if word.text in outlines:
                what += tuple(parts) if desk.room_for_names(len(parts), word.span) else ()
            else:
                what += parts_meant(desk, names, (word,))
        facts: dict[str, Any] = {"device": "screws"}
        clauses: list[tuple[str, Span]] = []
        for clause in statement.clauses:
            if not isinstance(clause, d.RestraintFact):
                continue
            clauses.append((clause.kind, clause.span))
            if clause.kind == "device":
                facts["device"] = clause.text
            elif clause.kind == "screws":
                sizes = fastener_sizes(desk, clause)
                if sizes is not None:
                    facts |= sizes
                if clause.text:
                    facts["into"] = clause.text
            elif clause.kind == "height":
                facts["height"] = desk.size_mm(clause.sizes[0], "height")
            elif clause.kind in _TWO_ENDS:
                facts |= _strap_ends(desk, clause)
            elif clause.kind == "count":
                number = clause.sizes[0]
                assert isinstance(number, d.Number)
                facts["count"] = desk.whole(number, "number of restraints", 100) or 1
        if facts["device"] not in _STRAPS:
            _told_of_ends(desk, facts["device"], clauses)
        if what:
            said = ", ".join(word.text for word in statement.names)
            found.append(
                Restraint(
                    what=tuple(dict.fromkeys(what)),
                    said=said,
                    clauses=tuple(clauses),
                    span=statement.head,
                    **facts,
                )
            )
    return tuple(found)
