"""Shaping and slanting clauses as they read for the mirror image of a part: its faces change sides."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

from reviewer.language import declarations as d
from reviewer.model.naming import CORNERS, with_each
from reviewer.model.placing import FACES
from reviewer.model.plan import Axis

if TYPE_CHECKING:
    from reviewer.model.specs import Mirror

_OPPOSITE = {
    "left": "right",
    "right": "left",
    "front": "back",
    "back": "front",
    "bottom": "top",
    "top": "bottom",
}


def mirrored_clauses(clauses: Iterable[Any], mirror: Mirror, each: str | None) -> list[Any]:
    """The clauses with every face of the mirror's axis on the other side.

    ``each`` is the word of the copy that is mirrored, so that its own faces and names are meant. Names of
    other parts stay: a notch for a rail is one for that rail.
    """
    corner = CORNERS.get(mirror.of.rpartition(".")[2])
    return [_mirrored(clause, mirror.axis, each, corner) for clause in clauses]


def _mirrored(clause: Any, axis: Axis, each: str | None, corner: dict[str, str] | None) -> Any:
    if isinstance(clause, d.Leaning) and clause.outwards and corner is not None:
        clause = towards_its_corner(clause, corner)
    if isinstance(clause, d.FittedNotchClause):
        return clause._replace(name=clause.name._replace(text=with_each(clause.name.text, each)))
    changed: dict[str, object] = {}
    for field in ("face", "faces", "end", "along"):
        said = getattr(clause, field, None)
        if isinstance(said, d.Word):
            changed[field] = _other_side(said, axis, each)
        elif isinstance(said, tuple):
            changed[field] = tuple(_other_side(word, axis, each) for word in said)
    return clause._replace(**changed) if changed else clause


def _other_side(word: d.Word, axis: Axis, each: str | None) -> d.Word:
    text = each if word.text == "each" and each in FACES else word.text
    on_axis = text in FACES and FACES[text][0] == axis
    return d.Word(_OPPOSITE[text] if on_axis else text, word.span)


def towards_its_corner(clause: d.Leaning, corner: dict[str, str]) -> d.Leaning:
    """A lean outwards as a lean towards the faces of one corner. A lean outwards ``up`` stays as it is."""
    if "up" in clause.outwards:
        return clause
    ways = ("across", "deep") if clause.outwards == (None,) else clause.outwards
    faces = tuple(d.Word(corner[way or ""], clause.span) for way in ways)
    angles = clause.angles if len(clause.angles) == len(faces) else clause.angles * len(faces)
    return clause._replace(angles=angles, faces=faces, outwards=())
