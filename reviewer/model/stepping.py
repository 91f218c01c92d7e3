"""Step statements to the order of work that the writer has in mind."""

from __future__ import annotations

from reviewer.language import declarations as d
from reviewer.model.desk import Desk
from reviewer.model.half_said import tell_half_said
from reviewer.model.naming import PartNames, parts_meant
from reviewer.model.plan import Finish, Remark, Step, Verb, Waiting, Work


def steps_of(
    desk: Desk, statements: list[d.Statement], names: PartNames, finishes: tuple[Finish, ...]
) -> tuple[Step, ...]:
    """Every step in the order of the plan. Names that nothing declares are told, and left out.

    A step vanishes when all that it works on is left out at these sizes.
    """
    schedules = {finish.name: finish for finish in finishes}
    found = []
    for statement in statements:
        step = _step(desk, statement, names, schedules)
        if step.items or not _all_left_out(statement, names):
            found.append(step)
    return tuple(found)


def _all_left_out(statement: d.Statement, names: PartNames) -> bool:
    words = [clause.name.text for clause in statement.clauses if isinstance(clause, d.WorkOn)]
    words += [clause.word.text for clause in statement.clauses if isinstance(clause, d.More)]
    return bool(words) and all(names.waits(word) or _without(names, word) for word in words)


def _without(names: PartNames, finish: str) -> bool:
    """Whether a finish is declared and left out at these sizes."""
    return names.left_out is not None and finish in names.left_out.finishes


def _step(desk: Desk, statement: d.Statement, names: PartNames, schedules: dict[str, Finish]) -> Step:
    items: list[Work | Waiting | Remark] = []
    verb: Verb | None = None
    in_the_room = False
    for clause in statement.clauses:
        lone = clause.word if isinstance(clause, d.More) and not names.meant_by(clause.word.text) else None
        if lone is not None and tell_half_said(desk, lone, "step"):
            continue
        if isinstance(clause, d.WorkOn):
            verb = clause.verb
            items += _work(desk, verb, clause.name, names, schedules)
        elif isinstance(clause, d.More) and verb is not None:
            items += _work(desk, verb, clause.word, names, schedules)
        elif isinstance(clause, d.More):
            desk.problem(
                clause.span,
                f"“{clause.word.text}” stands alone, and what comes before it is no list that it could go on "
                "with.",
                f"Say what is done to it: join {clause.word.text}",
            )
        else:
            verb = None
            in_the_room = in_the_room or isinstance(clause, d.InTheRoom)
            if isinstance(clause, d.Wait):
                items.append(Waiting(clause.hours, clause.span))
            elif isinstance(clause, d.Remark):
                items.append(Remark(clause.text, clause.span))
    return Step(
        title=(statement.text or "").strip(), items=tuple(items), in_the_room=in_the_room, span=statement.head
    )


def _work(
    desk: Desk, verb: Verb, word: d.Word, names: PartNames, schedules: dict[str, Finish]
) -> tuple[Work, ...]:
    """What is done to a name; nothing where it is not known (told)."""
    if verb != "finish":
        parts = parts_meant(desk, names, (word,))
        return (Work(verb, word.text, parts, word.span),) if parts else ()
    schedule = schedules.get(word.text)
    if schedule is None and _without(names, word.text):
        return ()
    if schedule is None:
        desk.unknown_name(word, "finish schedule", schedules)
        return ()
    return (Work(verb, word.text, schedule.on, word.span, schedule.name),)
