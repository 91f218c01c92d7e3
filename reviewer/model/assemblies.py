"""Assemblies to plain statements: each copy of an assembly says its members again, by their full names.

``drawer.2.front`` is the front of the second drawer. Inside an assembly a name means its own member
first, its own name its own outline, and anything else the plan's; that is settled here, word by word,
so that nothing after this knows of assemblies but by the names. A plan without any never comes here.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import Any

from reviewer.language import declarations as d
from reviewer.language.source import Span
from reviewer.model import rows
from reviewer.model.desk import MAX_NAME, Desk
from reviewer.model.members import MAX_DEPTH, MemberNames, Tree, members_of
from reviewer.model.naming import with_each
from reviewer.model.parts import MAX_COPIES, MAX_PARTS
from reviewer.model.plan import Assembly, Part
from reviewer.records import NamedTuple

_MOVING = (d.Opens, d.Hinged, d.SlidesOut, d.LiftsOut)
_FACE_FIELDS = frozenset(("face", "faces", "end", "along"))
#: Clauses whose words are no names of parts.
_OTHER_WORDS = (d.OfStock, d.CoatsClause, d.GlueClause, d.LoadUse, d.LoadWeight, d.Sand, d.Dry)


#: By kind of clause, the fields that may hold names of parts, or faces: filled as kinds are met.
_fields: dict[type[Any], tuple[str, ...]] = dict.fromkeys(_OTHER_WORDS, ())


def _fields_of(kind: type[Any]) -> tuple[str, ...]:
    found = _fields.get(kind)
    if found is None:
        said = kind.__annotations__.items()
        found = tuple(field for field, what in said if "Word" in str(what) or "Point" in str(what))
        _fields[kind] = found
    return found


class Made(NamedTuple):
    """One assembly, or one copy of one, under its full name."""

    name: str
    stem: str  # what all its copies are called: drawer for drawer.2
    has_outline: bool
    moving: tuple[Any, ...]
    statement: d.Statement


class Expanded(NamedTuple):
    """Plain statements in the order of the plan, and what they were made from.

    ``homes`` has the outline inside which an outline stands; ``families`` what all copies of a part are
    called; ``groups`` the assemblies without an outline, each with its span.
    """

    statements: tuple[d.Statement, ...]
    made: tuple[Made, ...]
    homes: dict[str, str]
    families: dict[str, str]
    groups: dict[str, Span]


class _Scope(NamedTuple):
    """One copy of an assembly, seen from inside: its full name, its own word, and its members' names."""

    prefix: str
    family: str  # the prefix with a star for each number or word of a copy
    own: str
    members: Tree
    home: str | None  # the outline that is nearest: its own, else that of the assembly around it


class _Expander:
    def __init__(self, desk: Desk, too_many: Callable[[Span], None]) -> None:
        self.desk = desk
        self.too_many = too_many
        self.statements: list[d.Statement] = []
        self.made: list[Made] = []
        self.homes: dict[str, str] = {}
        self.families: dict[str, str] = {}
        self.groups: dict[str, Span] = {}
        self.counted = 0
        self.names = MemberNames()
        self._members: dict[int, Tree] = {}

    # ------------------------------------------------------------ names

    def meant(self, text: str, scopes: Sequence[_Scope]) -> str:
        """The full name that a word has inside assemblies, from the innermost outwards."""
        if text == "*":
            return f"{scopes[-1].prefix}.*"
        if len(text) > MAX_NAME:
            return text
        pieces = text.split(".")
        for scope in reversed(scopes):
            if self.names.owns(scope.members, pieces):
                return f"{scope.prefix}.{text}"
            if text == scope.own:
                return scope.prefix
            if text.startswith(f"{scope.own}."):
                rest = text[len(scope.own) + 1 :]
                if self.names.owns(scope.members, rest.split(".")) and not rest.startswith("*"):
                    return f"{scope.prefix}.{rest}"
        return text

    def _word(self, word: d.Word, scopes: Sequence[_Scope], each: str | None) -> d.Word:
        if not scopes:
            return d.Word(with_each(word.text, each), word.span)
        self.desk.inner.setdefault(word.span, f"{scopes[-1].prefix}.")
        return d.Word(self.meant(with_each(word.text, each), scopes), word.span)

    def _clause(self, clause: Any, scopes: Sequence[_Scope], each: str | None) -> Any:
        """A clause with the full names of all parts in it, and the assembly's word in the place of each."""
        fields = _fields_of(type(clause))
        if not fields or (isinstance(clause, d.More) and clause.number is not None):
            return clause
        changed: dict[str, Any] = {}
        for field in fields:
            value = getattr(clause, field)
            if isinstance(value, d.Word):
                if field not in _FACE_FIELDS:
                    changed[field] = self._word(value, scopes, each)
                elif each is not None:
                    changed[field] = self._word(value, (), each)
            elif isinstance(value, d.Point):
                changed[field] = self._clause(value, scopes, each)
            elif isinstance(value, tuple) and value and isinstance(value[0], d.Word):
                inside = () if field in _FACE_FIELDS else scopes
                changed[field] = tuple(self._word(word, inside, each) for word in value)
            elif isinstance(value, tuple) and value and isinstance(value[0], d.Point):
                changed[field] = tuple(self._clause(point, scopes, each) for point in value)
        return clause._replace(**changed) if changed else clause

    # ------------------------------------------------------------ slips

    def _room_for(self, span: Span) -> bool:
        self.counted += 1
        if self.counted > MAX_PARTS:
            self.too_many(span)
            return False
        return True

    # ------------------------------------------------------------ the expansion

    def assembly(self, statement: d.Statement, scopes: tuple[_Scope, ...], each: str | None) -> None:
        """All copies of an assembly, those inside it too."""
        assert statement.name is not None
        if len(scopes) >= MAX_DEPTH:
            self.desk.problem(
                statement.head,
                f"This assembly stands inside {len(scopes)} others, one in another; "
                f"dryfit takes up to {MAX_DEPTH}.",
                "Set it in less far, or make plain parts of it.",
            )
            return
        if not statement.members and statement.damaged:
            return
        if not statement.members:
            self.desk.problem(
                statement.head,
                f"The assembly “{statement.name.text}” has no parts.",
                "Set its parts in below it, each on a line of its own: part front: pine, across, on edge",
            )
        key = id(statement)
        if key not in self._members:
            self._members[key] = members_of(statement, len(scopes) + 1)
        seen: dict[str, Span] = {}
        for copy in statement.others or (None,):
            if copy is not None and copy.text in seen:
                self.desk.problem(
                    copy.span,
                    f"The copy “{copy.text}” is named twice.",
                    "Keep one of the two.",
                    also_at=(seen[copy.text],),
                )
                continue
            name, word = statement.name.text, each
            if copy is not None:
                seen[copy.text] = copy.span
                name, word = f"{name}.{copy.text}", copy.text
            self._copies(statement, name, scopes, word)

    def _copies(
        self, statement: d.Statement, name: str, scopes: tuple[_Scope, ...], each: str | None
    ) -> None:
        """The outline of an assembly under one name, with the row that it stands in, and its members."""
        assert statement.name is not None
        clauses = tuple(
            self._clause(clause, scopes, each)
            for clause in statement.clauses
            if not isinstance(clause, d.OnlyWhen)
        )
        moving = tuple(clause for clause in clauses if isinstance(clause, _MOVING))
        placing = tuple(clause for clause in clauses if not isinstance(clause, _MOVING))
        full = f"{scopes[-1].prefix}.{name}" if scopes else name
        own = statement.name.text
        family = f"{scopes[-1].family}.{own}" if scopes else own
        if statement.others:
            family += ".*"
        row = next((clause for clause in placing if isinstance(clause, d.Copies)), None)
        if placing:
            head = d.Word(full, statement.name.span)
            self.statements.append(statement._replace(name=head, others=(), clauses=placing, members=()))
            self._house(full, scopes)
        elif full in self.groups:
            self.desk.problem(
                statement.name.span,
                f"The name “{own}” is given twice.",
                "Give one of the two another name.",
                also_at=(self.groups[full],),
            )
        else:
            self.groups[full] = statement.name.span
        names = [full]
        if row is not None:
            family += ".*"
            names = [f"{full}.{n}" for n in range(1, rows.count_of(self.desk, row, MAX_COPIES) + 1)]
        # What the copies have in common is said once for all of them.
        shared = [member for member in statement.members if member.kind == "finish"]
        members = [member for member in statement.members if member.kind != "finish"]
        around = scopes[-1].home if scopes else None
        inside = [
            (*scopes, _Scope(each, family, own, self._members[id(statement)], each if placing else around))
            for each in names
        ]
        for inner in inside:
            if not self._room_for(statement.head):
                return
            prefix = inner[-1].prefix
            self.made.append(Made(prefix, full, bool(placing), moving, statement))
            for member in members:
                if member.kind == "assembly":
                    self.assembly(member, inner, each)
                elif self._room_for(member.head):
                    self._member(member, inner, each)
                else:
                    return
        for member in shared:
            self._finish(member, inside, each)

    def _house(self, name: str, scopes: tuple[_Scope, ...]) -> None:
        home = scopes[-1].home if scopes else None
        if home is not None:
            self.homes[name] = home

    def _member(self, member: d.Statement, scopes: tuple[_Scope, ...], each: str | None) -> None:
        scope = scopes[-1]
        if member.kind == "part" and member.others:
            each = None  # the part has copies of its own, and the word is theirs
        name = member.name
        if name is not None:
            full = f"{scope.prefix}.{name.text}"
            if member.kind == "part":
                self.families[full] = f"{scope.family}.{name.text}"
            elif member.kind == "outline":
                self._house(full, scopes)
            name = d.Word(full, name.span)
        self.statements.append(
            member._replace(
                name=name,
                names=tuple(self._word(word, scopes, each) for word in member.names),
                others=member.others
                if member.kind == "part"
                else tuple(self._word(word, scopes, each) for word in member.others),
                clauses=tuple(self._clause(clause, scopes, each) for clause in member.clauses),
            )
        )

    def _finish(self, member: d.Statement, inside: Iterable[tuple[_Scope, ...]], each: str | None) -> None:
        """One schedule for all copies: what it goes on is said again for each of them."""
        clauses: list[Any] = []
        listed: list[Any] = []

        def put_list() -> None:
            clauses.extend(self._clause(one, scopes, each) for scopes in inside for one in listed)
            listed.clear()

        inside = tuple(inside)
        for clause in member.clauses:
            goes_on = isinstance(clause, d.More) and clause.number is None and bool(listed)
            if isinstance(clause, d.FinishOn) or goes_on:
                listed.append(clause)
                continue
            put_list()
            clauses.append(clause)
        put_list()
        if inside:
            self.statements.append(member._replace(clauses=tuple(clauses)))


def expanded(desk: Desk, statements: Iterable[d.Statement], too_many: Callable[[Span], None]) -> Expanded:
    """The statements of a plan with every assembly said out. ``too_many`` tells of too many parts."""
    expander = _Expander(desk, too_many)
    for statement in statements:
        if statement.kind == "assembly":
            expander.assembly(statement, (), None)
        else:
            expander.statements.append(statement)
    if expander.names.given_up:
        desk.problem(
            Span(0, 0),
            "So many patterns stand inside the assemblies that the search for what they mean was given up.",
            "Name the parts one by one, or split the plan.",
        )
    return Expanded(
        tuple(expander.statements),
        tuple(expander.made),
        expander.homes,
        expander.families,
        expander.groups,
    )


def assemblies_of(made: Iterable[Made], parts: dict[str, Part]) -> tuple[Assembly, ...]:
    """Each assembly with the parts that were made for it, in the plan's order."""
    inside: dict[str, list[str]] = {each.name: [] for each in made}
    for name in parts:
        stem = name.rpartition(".")[0]
        while stem:
            if stem in inside:
                inside[stem].append(name)
            stem = stem.rpartition(".")[0]
    return tuple(
        Assembly(
            name=each.name,
            stem=each.stem,
            parts=tuple(inside[each.name]),
            outline=each.name if each.has_outline else None,
            span=each.statement.head,
        )
        for each in made
    )


def told_once(problems: Iterable[Any], statements: Iterable[d.Statement]) -> list[Any]:
    """Problems without those that only say again, of another copy, what is told of the first."""
    import re

    quoted = re.compile(r"“[^”]*”")
    ranges = [
        (statement.span.start, _last(statement).span.end)
        for statement in statements
        if statement.kind == "assembly"
    ]
    seen: set[tuple[Span, str]] = set()
    kept = []
    for problem in problems:
        if any(start <= problem.span.start < end for start, end in ranges):
            key = (problem.span, quoted.sub("", problem.says))
            if key in seen:
                continue
            seen.add(key)
        kept.append(problem)
    return kept


def _last(statement: d.Statement) -> d.Statement:
    while statement.members:
        statement = statement.members[-1]
    return statement
