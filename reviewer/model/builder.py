"""Understanding: declarations in, a plan in real units out, with everything that could not be understood."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING

from reviewer.language.declarations import Statement, Words
from reviewer.language.numbers import SYSTEM_UNIT
from reviewer.language.problems import ReadingProblem
from reviewer.language.reading import MAX_TOLD, Read, for_use
from reviewer.language.source import Span
from reviewer.language.wordings import did_you_mean
from reviewer.limits import Limit
from reviewer.model import finishing, joining, using
from reviewer.model.desk import Desk
from reviewer.model.left_out import LeftOut, conditional
from reviewer.model.naming import PartNames
from reviewer.model.parts import PartMaker
from reviewer.model.plan import Assembly, BareNumber, Finish, Fit, Moving, Plan, Step, Trial, UnknownName
from reviewer.model.stocks import stocks_of
from reviewer.records import NamedTuple
from reviewer.units import UnitSystem

if TYPE_CHECKING:
    from reviewer.model.assemblies import Made
    from reviewer.model.sharing import Shared

#: The plan's own words in a message are cut after so many letters.
_LONG_WORDS = re.compile(r"(“[^”]{60})[^”]+(?=”)")


def _by_kind(statements: Iterable[Statement]) -> dict[str, list[Statement]]:
    kinds: dict[str, list[Statement]] = {}
    for statement in statements:
        kinds.setdefault(statement.kind, []).append(statement)
    return kinds


class Understood(NamedTuple):
    """A plan, or the problems that keep it from being one."""

    plan: Plan | None
    problems: tuple[ReadingProblem, ...]


def _unknown_as_problem(unknown: UnknownName) -> ReadingProblem:
    return ReadingProblem(
        unknown.span,
        f"No {unknown.what} is called “{unknown.name}”.",
        did_you_mean(unknown.near, "Look at its spelling."),
        unknown.near,
    )


def _movings(
    desk: Desk, maker: PartMaker, made: tuple[Made, ...], assemblies: tuple[Assembly, ...]
) -> tuple[Moving, ...]:
    if not maker.moving and not any(each.moving for each in made):
        return ()
    from reviewer.model.moving import Mover, movings_of

    movers = [
        Mover(each.name, assembly.parts, each.moving)
        for each, assembly in zip(made, assemblies, strict=True)
        if each.moving
    ]
    for name, clauses in maker.moving:
        copies = (name, *maker.names.below(name))
        movers += [Mover(copy, (copy,), clauses) for copy in copies if copy in maker.parts]
    return movings_of(desk, movers)


def _fits(
    desk: Desk,
    statements: list[Statement],
    names: PartNames,
    assemblies: tuple[Assembly, ...],
    movings: tuple[Moving, ...],
    *,
    all_read: bool,
) -> tuple[Fit, ...]:
    from reviewer.model.fitting import fits_of

    return fits_of(desk, statements, names, assemblies, movings, all_read=all_read)


def _fastener_bounds(
    unit: str, kinds: dict[str, list[Statement]], limits: dict[str, Limit]
) -> tuple[float, float, float]:
    """Beyond what bare sizes of fasteners are kept for the rule that doubts them, mm: see ``Desk``.

    A plan may set these limits itself, and is only heard on them later: then all such sizes are kept.
    """
    own = any(
        each.name and each.name.text.startswith(("bare-fastener-", "bare-screw-"))
        for each in kinds.get("limit", ())
    )
    if unit == "mm":
        return math.inf, math.inf, math.inf if own else limits["bare-fastener-shortest"].amount
    if own:
        return 0.0, 0.0, 0.0
    thickest = min(limits["bare-fastener-thickest"].amount, limits["bare-screw-thickest"].amount)
    return thickest, limits["bare-fastener-longest"].amount, 0.0


def understand(
    read: Read, limits: dict[str, Limit], outside: Mapping[str, float] | None = None
) -> Understood:
    """The plan that the declarations make. ``outside`` sets measures in place of the plan's own, in its unit.

    With any problem in hand there is no plan: a review of half a plan would tell half truths. Unknown
    names alone do not stop it; a rule tells those.
    """
    statements = read.statements
    kinds = _by_kind(statements)
    titles = kinds.get("plan", [])
    # Without a title nothing tells the unit. Millimetres let the rest be looked through all the same: they
    # make no size too long, and the plan is not reviewed before it has a title.
    units, unit = SYSTEM_UNIT[titles[0].name.text if titles and titles[0].name else "millimetres"]
    desk = Desk(units, unit, unit_said=bool(titles), outside=outside)
    if units is UnitSystem.INCH:
        # A plan may set this limit itself, and is only heard on it later: then every bare number is kept.
        own = any(each.name and each.name.text == "bare-number-most" for each in kinds.get("limit", ()))
        desk.longest_bare = 0 if own else limits["bare-number-most"].amount
    if "join" in kinds or "restrain" in kinds:
        desk.fastener_bounds = _fastener_bounds(unit, kinds, limits)
    for extra in titles[1:]:
        desk.problem(
            extra.span, "The plan has a second title.", "Keep one of the two.", also_at=(titles[0].span,)
        )
    lends = not read.lost and for_use(kinds)
    desk.declare_measures(kinds.get("measure", []))
    shared = _shared(desk, read, kinds)
    trials: tuple[Trial, ...] = ()
    if "try" in kinds:
        from reviewer.model.trying import trials_of

        trials = trials_of(desk, kinds["try"])
    left_out: LeftOut | None = None
    if conditional(statements):
        from reviewer.model.conditions import standing

        statements, left_out = standing(desk, statements)
        kinds = _by_kind(statements)
        if shared is not None:
            shared.own = kinds
    stocks = stocks_of(desk, kinds.get("stock", []))
    if shared is not None:
        stocks |= shared.stocks()
    maker = PartMaker(desk, stocks, left_out)
    made: tuple[Made, ...] = ()
    if "assembly" in kinds:
        from reviewer.model.assemblies import assemblies_of, expanded

        said_out = expanded(desk, statements, maker.too_many)
        made = said_out.made
        kinds = _by_kind(said_out.statements)
        if shared is not None:
            shared.own = kinds
        maker.make(said_out.statements, said_out.homes, said_out.families, said_out.groups)
    else:
        maker.make(statements)
    unmade = (name for name in maker.names.wood() if name not in maker.parts)
    names = PartNames(maker.parts, unmade, left_out)
    # The outline of the whole piece means all of it; that of an assembly means the assembly's parts.
    outlines = {name for name, box in maker.boxes.items() if box.kind == "outline"}
    outlines.difference_update(each.name for each in made)
    assemblies = assemblies_of(made, maker.parts) if made else ()
    tools = tuple(
        clause.text
        for statement in kinds.get("tools", [])
        for clause in statement.clauses
        if isinstance(clause, Words)
    )
    finish_statements = kinds.get("finish", [])
    if shared is not None:
        finish_statements = shared.finishes(names)
    elif lends:  # a finish there need not say what it goes on
        finish_statements = [statement._replace(damaged=True) for statement in finish_statements]
    in_assemblies = {name for each in assemblies for name in each.parts}
    case = tuple(name for name in maker.parts if name not in in_assemblies)
    finishes = finishing.finishes_of(desk, finish_statements, names, dict.fromkeys(outlines, case))
    basket = using.basket_of(desk, kinds.get("buy", []), stocks)
    movings = _movings(desk, maker, made, assemblies)
    if shared is not None:
        stocks = shared.needed(stocks, maker.parts, basket)
    plan = Plan(
        title=titles[0].text or "" if titles else "",
        units=units,
        stocks=stocks,
        boxes=maker.boxes,
        parts=maker.parts,
        joins=joining.joins_of(desk, kinds.get("join", []), names),
        restraints=joining.restraints_of(desk, kinds.get("restrain", []), names, maker.parts, outlines),
        finishes=finishes,
        loads=using.loads_of(desk, kinds.get("load", []), names),
        room=using.room_of(desk, kinds.get("room", [])),
        shop=finishing.shop_of(desk, kinds["shop"]) if "shop" in kinds else None,
        steps=_steps(desk, kinds.get("step", []), names, finishes),
        basket=basket,
        tools=tools,
        tools_span=kinds["tools"][0].head if "tools" in kinds else None,
        waivers=using.waivers_of(desk, kinds.get("accept", []), names),
        limits=using.limits_of(desk, kinds.get("limit", []), limits),
        assemblies=assemblies,
        movings=movings,
        fits=_fits(desk, kinds["fit"], names, assemblies, movings, all_read=not read.problems)
        if "fit" in kinds
        else (),
        measures=desk.measures(),
        trials=trials,
        unknown=tuple(desk.unknown),
        bare_numbers=tuple(BareNumber(*each) for each in desk.bare_numbers.items()),
        bare_fasteners=tuple(desk.bare_fasteners),
        doubtful=frozenset(maker.doubtful),
        span=titles[0].span if titles else Span(0, 0),
    )
    if not read.problems and not desk.problems:
        if left_out is not None and left_out.parts and not plan.parts:
            return Understood(None, (_all_left_out(plan.span),))
        if not plan.parts and (lends or not plan.unknown):
            return Understood(None, (_nothing_to_build(read.statements[0].span, bool(titles), lends),))
        if _leaves_over(plan):
            from reviewer.model.leftovers import with_leftovers

            plan = with_leftovers(plan, desk, read, outside or ())
        return Understood(plan, ())
    problems = [*read.problems, *desk.problems]
    if made:
        from reviewer.model.assemblies import told_once

        problems = told_once(problems, read.statements)
    if not read.lost:
        # A name is only called unknown when every statement's own name could be read, and how many there are.
        lost_parts = {problem.span for problem in problems}
        unknown = [name for name in plan.unknown if name.span not in lost_parts]
        if unknown and read.problems:
            from reviewer.model.unread_copies import without_unread_copies

            unknown = without_unread_copies(unknown, kinds, made, desk.inner)
        problems += [_unknown_as_problem(name) for name in unknown]
    return Understood(None, _shortened(sorted(set(problems), key=lambda each: (each.span, each.says))))


def _leaves_over(plan: Plan) -> bool:
    """Whether some stock or measure may be one that nothing names: no part is cut from it, no sum has it."""
    cut = {part.stock for part in plan.parts.values()}
    return any(name not in cut for name in plan.stocks) or not all(each.used for each in plan.measures)


def _steps(
    desk: Desk, statements: list[Statement], names: PartNames, finishes: tuple[Finish, ...]
) -> tuple[Step, ...]:
    if not statements:
        return ()
    from reviewer.model.stepping import steps_of

    return steps_of(desk, statements, names, finishes)


def _all_left_out(span: Span) -> ReadingProblem:
    return ReadingProblem(
        span,
        "At these sizes every part of the plan is left out.",
        "Look at the conditions of the parts (only when …), or at the sizes.",
    )


def _shared(desk: Desk, read: Read, kinds: dict[str, list[Statement]]) -> Shared | None:
    """What the plan's used files lend to it, their measures declared; None where it uses none."""
    if not read.shared:
        return None
    from reviewer.model.sharing import Shared

    return Shared(desk, read.shared, kinds)


def _nothing_to_build(span: Span, titled: bool, lends: bool) -> ReadingProblem:
    add = "Add a stock and a part: part leg: stud, upright, facing front, 16 tall, on floor"
    if not lends:
        return ReadingProblem(span, "The plan has a title but no parts yet.", add)
    if titled:
        return ReadingProblem(
            span,
            "The plan has a title but no parts yet.",
            "Add a part: part leg: stud, upright, facing front, 16 tall, on floor. If the file is there for "
            'other plans, review one that says: use "shop-stock.plan"',
        )
    return ReadingProblem(
        span,
        "This is no plan but a file for plans to use: it has stock, finishes or measures and no parts.",
        'Review a plan that says: use "shop-stock.plan". For a plan of its own begin with a title, '
        'such as: plan "Reading bench" in inches',
    )


def _shortened(problems: list[ReadingProblem]) -> tuple[ReadingProblem, ...]:
    """The first problems of the text, long words cut; of very many, the rest only counted."""
    told = [
        problem._replace(says=_LONG_WORDS.sub(r"\1…", problem.says), do=_LONG_WORDS.sub(r"\1…", problem.do))
        for problem in problems[:MAX_TOLD]
    ]
    rest = problems[MAX_TOLD:]
    if not rest:
        return tuple(told)
    more = ReadingProblem(
        rest[0].span,
        f"From here on {len(rest)} more things cannot be understood.",
        "Mend those above first, then review the plan again.",
    )
    return (*told, more)
