"""A shape that no saw can make of the board."""

from __future__ import annotations

import re
from collections.abc import Iterator

from reviewer.findings import Filling, Finding, Severity
from reviewer.language.source import Span
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.rulebook import Timing, rule
from reviewer.setting_out.result import Fault, Miscut
from reviewer.units import count, fine_length
from reviewer.wording import listed


class _Words(NamedTuple):
    """How a fault is told: its figures by name, what is wrong, and the next step; ``<one|many>`` agrees."""

    figures: tuple[str, ...]
    says: str
    do: str


_TOLD: dict[Fault, _Words] = {
    "leans too far": _Words(
        ("lean", "room"),
        "{parts} <leans|lean> over by {lean} from bottom to top, but <has|have> only {room} of room "
        "for that and the wood.",
        "Give {parts} more room, or let <it|them> lean less.",
    ),
    "brace does not fit": _Words(
        ("width", "along", "up"),
        "{parts} <is|are> {width} wide, and can't rise in a room of {along} by {up} "
        "with <its|their> ends cut so.",
        "Give {parts} more room, use a narrower board, or have the ends cut another way.",
    ),
    "end meets nothing": _Words(
        (),
        "An end of {parts} is to be cut to suit {other}, but does not look at any face of {other}.",
        "Move {parts} or {other} until the middle of that end looks at {other}.",
    ),
    "mitre takes the length": _Words(
        ("taken", "length"),
        "The {kind} takes {taken} off one side of {parts}, where there is only {length}.",
        "Use a smaller angle, or make {parts} longer.",
    ),
    "taper too wide": _Words(
        ("to", "board"),
        "{parts} <is|are> to taper to {to}, but <is|are> only {board} wide to begin with.",
        "Taper <it|them> to less than {board}.",
    ),
    "taper too long": _Words(
        ("over", "board"),
        "The taper of {parts} is to run over {over}, but the wood is only {board} long.",
        "Let the taper run over {board} or less.",
    ),
    "bar too thick": _Words(
        ("round", "board"),
        "A round bar of {round} does not come out of {parts}: the board is only {board} thick.",
        "Make <it|them> round {board} or less, or use thicker stock.",
    ),
    "corner too big": _Words(
        ("size", "most"),
        "Corners {kind} by {size} do not fit on {parts}: there is room for {most} at each.",
        "Make them {most} or less.",
    ),
    "arris too big": _Words(
        ("size", "most"),
        "Edges {kind} by {size} do not fit on {parts}: half of the wood is {most}.",
        "Make them {most} or less.",
    ),
    "takes everything": _Words(
        (),
        "The {kind} takes away all of {parts}.",
        "Make the {kind} smaller, or leave {parts} out.",
    ),
    "cuts in two": _Words(
        (),
        "The {kind} cuts {parts} in two.",
        "Make the {kind} smaller, or write two parts.",
    ),
    "misses the wood": _Words(
        (),
        "The {kind} takes no wood away from {parts}: it lies outside of the wood.",
        "Look at the sizes of the {kind} and at where it begins: "
        "its place counts from the faces of the part.",
    ),
    "hole misses the wood": _Words(
        (),
        "A hole in {parts} has its middle outside of the wood.",
        "Look at where the hole is: its place counts from the faces of the part.",
    ),
    "hole breaks out": _Words(
        ("hole",),
        "A hole of {hole} breaks out at the side of {parts}.",
        "Move its middle further in, or make it smaller: "
        "it needs half of {hole} of wood all round its middle.",
    ),
    "hole too deep": _Words(
        ("depth", "wood"),
        "A hole in {parts} is to be {depth} deep, but there the wood is only {wood} thick.",
        "Make it less than {wood} deep, or let it go right through.",
    ),
    "too many cuts": _Words(
        ("most",),
        "{parts} <has|have> so many cuts that the wood comes to more than {most} bits, "
        "so the {kind} is left out.",
        "Leave out the cuts that do not matter for the review, or write several parts.",
    ),
}
_NO_WIDTH = _Words(
    (),
    "{parts} <rises|rise> slanting, but the plan does not say how wide the board is.",
    "Say it, such as: rip 3",
)
_NOT_SHARED = _Words(
    (),
    "{parts} <has|have> a notch for {other}, but {other} does not go through the wood there.",
    "Move {parts} or {other} until they share space, or leave the notch out.",
)


def _words(miscut: Miscut) -> _Words:
    if miscut.what == "brace does not fit" and not miscut.figures[0]:
        return _NO_WIDTH
    if miscut.what == "misses the wood" and miscut.other:
        return _NOT_SHARED
    return _TOLD[miscut.what]


def _agreeing(template: str, number: int) -> str:
    """The template for so many parts: of ``<one|many>`` the word that agrees."""
    return re.sub(r"<(\w+)\|(\w+)>", r"\1" if number == 1 else r"\2", template)


@rule("cannot-be-cut", topic="fit", severity=Severity.ERROR, timing=Timing.ALWAYS, needs=("setting.miscuts",))
def cannot_be_cut(review: Review) -> Iterator[Finding]:
    """A cut, a slant or a round that can't be made from the board.

    Goes wrong: The part is drawn but can't be made. It shows at the saw, with the mark past the end of
    the wood or the part in two on the floor.

    Judged by: Each part's solid, made cut by cut from its board as it is set out. A mitre or bevel has
    to leave both ends of its long side, a taper has to narrow the board and end on it, a notch has to
    take some wood and leave the rest in one piece, a hole has to begin in wood and have wood all round
    it, rounds and chamfers have to fit on the wood, a brace and its end cuts have to fit into its room.
    A cut that can't be made is left out of everything else that is worked out; a part that can't be
    made at all keeps the rules waiting that need the whole piece.

    Leaves out: Whether the tools at hand can make it, and whether enough wood is left to be strong.

    Sources: plain geometry

    Flagged:

        plan "Bench leg" in inches
        stock post: actual 1 3/4 x 3 1/2 red oak
        part leg: post, upright, facing front, 16 tall, left at 0, front at 0, on floor
            taper to 4 at bottom end over 12

    Quiet:

        plan "Bench leg" in inches
        stock post: actual 1 3/4 x 3 1/2 red oak
        part leg: post, upright, facing front, 16 tall, left at 0, front at 0, on floor
            taper to 2 at bottom end over 12
    """
    alike: dict[tuple[Fault, Span, tuple[float, ...], str], list[Miscut]] = {}
    for miscut in review.setting.miscuts:
        figures = tuple(round(figure, 2) for figure in miscut.figures)
        alike.setdefault((miscut.what, miscut.span, figures, miscut.other), []).append(miscut)
    for group in alike.values():
        first = group[0]
        words = _words(first)
        names = tuple(dict.fromkeys(miscut.part for miscut in group))
        values: dict[str, Filling] = {"parts": listed(names)}
        if first.kind:
            values["kind"] = first.kind
        if first.other:
            values["other"] = first.other
        plain = first.what == "too many cuts"
        for name, figure in zip(words.figures, first.figures, strict=False):
            values[name] = count(figure) if plain else fine_length(figure)
        yield Finding(
            parts=names,
            at=first.span,
            also_at=(review.span_of(first.part),) if first.span != review.span_of(first.part) else (),
            says=_agreeing(words.says, len(names)),
            do=_agreeing(words.do, len(names)),
            values=values,
        )
