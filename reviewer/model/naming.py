"""Names of parts: exact ones for placing, patterns and families for lists."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache

from reviewer.language.declarations import Word
from reviewer.language.source import Span
from reviewer.model.desk import MAX_NAME, Desk
from reviewer.model.left_out import LeftOut
from reviewer.model.plan import GROUNDS, WALL

#: The corners that a part can stand in, by the last word of the copy's name, with their faces by direction.
CORNERS = {
    f"{deep}-{across}": {"deep": deep, "across": across}
    for deep in ("front", "back")
    for across in ("left", "right")
}


def with_each(text: str, each: str | None) -> str:
    """``leg.front-each`` with the copy's own word in the place of ``each``."""
    if each is None or "each" not in text:
        return text
    return re.sub(r"(?<![^.-])each(?![^.-])", lambda _: each, text)


class SolidNames:
    """Every name with a place in space: parts, outlines, rows. A reference means exactly one of them."""

    def __init__(self, desk: Desk, left_out: LeftOut | None = None) -> None:
        self.desk = desk
        self._left_out = left_out
        self._known: dict[str, tuple[bool, Span]] = {}  # whether it is wood, and where it is declared
        self._stems: dict[str, str] = {}  # what several names begin with, and one of them
        self.wall_meant = False  # whether anything is placed by the wall
        self._told_left_out: set[Span] = set()
        self.groups: dict[str, Span] = {}  # assemblies that have no outline

    def __contains__(self, name: str) -> bool:
        return name in self._known

    def __len__(self) -> int:
        return len(self._known)

    def free(self, name: str, span: Span) -> bool:
        """Whether a name can still be given; told when not."""
        if name in GROUNDS:
            self.desk.problem(
                span,
                f"“{name}” is the room's own {name}, so nothing else can have that name.",
                "Choose another name.",
            )
            return False
        if len(name) > MAX_NAME:
            self.desk.problem(
                span,
                f"This name is {len(name)} characters long; dryfit takes up to {MAX_NAME}.",
                "Choose a shorter name.",
            )
            return False
        if "*" in name:
            self.desk.problem(
                span,
                "A name can't hold a star: a star stands for many names.",
                "Choose a name without it.",
            )
            return False
        if name in self._known:
            self.desk.problem(
                span,
                f"The name “{name}” is given twice.",
                "Give one of the two another name.",
                also_at=(self._known[name][1],),
            )
            return False
        return True

    def know(self, name: str, span: Span, *, wood: bool) -> None:
        """Make a name known, and every stem of it."""
        self._known[name] = wood, span
        stem = name.rpartition(".")[0]
        while stem and stem not in self._stems:
            self._stems[stem] = name
            stem = stem.rpartition(".")[0]

    def forget(self, name: str) -> None:
        """Let go of a name that turns out to stand only before those of its copies."""
        del self._known[name]

    def below(self, stem: str) -> list[str]:
        """The known names that begin with a stem."""
        return [name for name in self._known if name.startswith(f"{stem}.")] if stem in self._stems else []

    def wood(self) -> list[str]:
        """Every declared part, in the plan's order."""
        return [name for name, (is_wood, _) in self._known.items() if is_wood]

    def is_wood(self, name: str) -> bool:
        """True for a part; false for an outline, a row and the room's own faces."""
        return self._known.get(name, (False, None))[0]

    def found(self, word: Word, each: str | None, by: str) -> str | None:
        """The one name that a word refers to; None when it can't be had (told). ``by`` is what it places."""
        name = with_each(word.text, each)
        if name in self._known:
            return name
        if name in GROUNDS:
            self.wall_meant = self.wall_meant or name == WALL
            return name
        if name in self.groups:
            self.desk.problem(
                word.span,
                f"The assembly “{name}” has no size and place of its own, so nothing can be placed by it.",
                f"Give it a size and a place: assembly {name}: 14 across, 18 deep, 5 tall, …",
            )
        elif name in self._stems:
            self.desk.problem(
                word.span,
                f"“{name}” stands for several parts, and a place needs just one.",
                f"Name one of them, such as {self._stems[name]}.",
            )
        elif "*" in name:
            self.desk.problem(
                word.span,
                f"“{name}” stands for every part that it fits, and a place needs just one.",
                "Name one of them.",
            )
        elif not self._tell_left_out(word.span, name, by):
            self.desk.unknown_name(word._replace(text=name), "part", [*self._known, *GROUNDS])
        return None

    def _tell_left_out(self, span: Span, name: str, by: str) -> bool:
        """Whether a name is missing because it is left out at these sizes; told once for a place."""
        reason = self._left_out.reason(name) if self._left_out is not None else None
        if reason is not None and span not in self._told_left_out:
            self._told_left_out.add(span)
            whom = f"“{by}”" if by else "another part"
            self.desk.problem(
                span,
                f"“{name}” is left out when {reason.when}, but {whom} is placed by it.",
                f"Give {whom} the same condition, or place it by something that stands at every size.",
                also_at=(reason.span,),
            )
        return reason is not None


@lru_cache(maxsize=1024)
def _pattern(text: str) -> re.Pattern[str]:
    pieces = [r"[^.]+" if piece == "*" else re.escape(piece) for piece in text.split(".")]
    if text.endswith("*"):
        pieces[-1] = r".+"
    else:
        pieces[-1] += r"(?:\..+)?"
    return re.compile(r"\.".join(pieces))


def _all_below(text: str) -> bool:
    """Whether a pattern is a plain name with all that is below it: ``leg.*``."""
    return text.endswith(".*") and text.count("*") == 1


class PartNames:
    """The parts of a plan by name, in the plan's order."""

    def __init__(
        self, names: Iterable[str], unmade: Iterable[str] = (), left_out: LeftOut | None = None
    ) -> None:
        self.ordered = tuple(names)
        self._unmade = tuple(unmade)  # declared, but something in them is wrong and told already
        self.left_out = left_out
        self._known = set(self.ordered)
        self._below: dict[str, list[str]] = {}
        self._matched: dict[str, tuple[str, ...]] = {}  # what patterns were found to mean
        for name in self.ordered:
            pieces = name.split(".")
            for length in range(1, len(pieces)):
                self._below.setdefault(".".join(pieces[:length]), []).append(name)

    def __contains__(self, name: str) -> bool:
        return name in self._known

    def meant_by(self, text: str) -> tuple[str, ...]:
        """Every part that a word of a list stands for: itself, its copies, or a pattern's matches."""
        if "*" not in text:
            if text in self._known:
                return (text,)
            return tuple(self._below.get(text, ()))
        if text == "*":
            return self.ordered
        if _all_below(text):
            return tuple(self._below.get(text.removesuffix(".*"), ()))
        if text in self._matched:
            return self._matched[text]
        pattern = _pattern(text)
        found = [name for name in self.ordered if pattern.fullmatch(name)]
        if not text.endswith("*"):  # drawer.*.side stands for its copies, as side does
            found = [name for name in found if name.count(".") == text.count(".")] or found
        self._matched[text] = tuple(found)
        return self._matched[text]

    def sought_among(self, text: str) -> int:
        """How many names are looked through for what a word of a list stands for."""
        return len(self.ordered) if "*" in text and text != "*" and not _all_below(text) else 1

    def waits(self, text: str) -> bool:
        """True when a word stands for parts that are declared but left out here, or could not be made."""
        if self.left_out is not None and self.left_out.reason(text) is not None:
            return True
        return bool(self._unmade) and bool(PartNames(self._unmade).meant_by(text))

    def families(self) -> list[str]:
        """Every name that a word could mean: parts and the stems of copies, for near names."""
        return list(dict.fromkeys([*self._below, *self.ordered]))


def parts_meant(
    desk: Desk, names: PartNames, words: Iterable[Word], *, grounds: tuple[str, ...] = ()
) -> tuple[str, ...]:
    """All parts that a list of words stands for, in the plan's order, each once; unknown ones are told."""
    found: dict[str, None] = {}
    for word in words:
        if word.text in grounds and word.text not in names:
            found[word.text] = None
            continue
        if not desk.room_for_names(names.sought_among(word.text), word.span):
            return ()
        meant = names.meant_by(word.text)
        if not desk.room_for_names(len(meant), word.span):
            return ()
        if not meant and not names.waits(word.text):
            desk.unknown_name(word, "part", [*names.families(), *grounds])
        for name in meant:
            found[name] = None
    return tuple(found)
