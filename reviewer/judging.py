"""Judging: every rule reads the review, waivers and settings are applied, the findings come out sorted."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from operator import attrgetter

from reviewer.findings import SAFETY, Finding, Severity, rank
from reviewer.model.plan import Waiver
from reviewer.records import dataclass
from reviewer.review import Review
from reviewer.rulebook import Rule, Timing

CRASHED = "rule-crashed"


@dataclass(frozen=True)
class Judgement:
    """What the rules said of one plan.

    ``findings`` are in force, ``waived`` were accepted with a reason; both are sorted: what can hurt
    someone first, however heavy it is, then the rest, each from the heaviest down. What is accepted though
    it can hurt someone stays in ``findings``, as a note with its reason: others use the piece too. ``ran``
    names every rule that judged, so that a quiet rule can be told from an absent one.
    """

    findings: tuple[Finding, ...]
    waived: tuple[Finding, ...]
    ran: tuple[str, ...]
    waiting: tuple[str, ...] = ()  # rules that wait until every part has its place

    @property
    def worst(self) -> Severity | None:
        """The heaviest severity in force; None for a clean plan. What was accepted weighs nothing."""
        return max((f.weight for f in self.findings if f.waived_because is None), default=None)

    def counted(self, severity: Severity) -> int:
        """How many findings of exactly that severity are in force."""
        return sum(1 for finding in self.findings if finding.weight is severity)


def _order(finding: Finding) -> tuple[object, ...]:
    return (
        *rank(finding),
        finding.at.start,
        finding.topic,
        finding.rule,
        finding.parts,
        finding.says,
    )


def _crash(rule: Rule, review: Review, error: Exception) -> Finding:
    return Finding(
        parts=(),
        at=review.plan.span,
        says="The rule {rule} could not finish, so what it looks for is not judged: {kind}, {why}.",
        do="Report this plan to the makers of dryfit, and check by hand what {rule} is about.",
        values={"rule": rule.name, "kind": type(error).__name__, "why": str(error) or "no more is known"},
    ).stamped(CRASHED, "hygiene", Severity.ERROR)


def _has(review: Review, needs: tuple[str, ...]) -> bool:
    """Whether a plan has all of what a rule is about."""
    return all(attrgetter(need)(review) for need in needs)


def _waiver_for(finding: Finding, review: Review) -> Waiver | None:
    """The waiver that covers a finding: by its rule, and by all copies that the finding is about.

    A finding tells copies together. One that is about shelf.1 to shelf.3 is not waived for shelf.1 alone.
    """
    for waiver in review.plan.waivers:
        if waiver.rule == finding.rule and (not waiver.on or _covers(waiver, finding, review)):
            return waiver
    return None


def _covers(waiver: Waiver, finding: Finding, review: Review) -> bool:
    on = set(waiver.on)
    families = {_family(name, review) for name in finding.parts if name in on}
    return bool(families) and all(name in on for name in finding.parts if _family(name, review) in families)


def _family(name: str, review: Review) -> str:
    part = review.plan.parts.get(name)
    return part.family if part else name


def _unsettled(found: list[Finding]) -> list[Finding]:
    """Without what only follows from words that a finding tells to be wrong, and weighs no more than it.

    What can hurt someone is told all the same.
    """
    settling = [each for each in found if each.settles and each.waived_because is None]
    if not settling:
        return found
    wrong = [(span, each) for each in settling for span in each.settles]

    def follows(finding: Finding) -> bool:
        return any(
            teller.weight >= finding.weight and span.start <= at.start and at.end <= span.end
            for at in (finding.at, *finding.also_at)
            for span, teller in wrong
        )

    return [
        finding
        for finding in found
        if finding.settles or finding.topic == SAFETY or finding.waived_because or not follows(finding)
    ]


def _told_once(found: list[Finding]) -> list[Finding]:
    """Without what another rule tells of the same parts; never where that one weighs less or was accepted."""
    found = _unsettled(found)
    if not any(finding.told_by for finding in found):
        return found
    tellers: dict[tuple[str, str], Severity] = {}
    for finding in found:
        if finding.waived_because is None:
            for part in finding.parts:
                key = finding.rule, part
                tellers[key] = max(finding.weight, tellers.get(key, Severity.NOTE))

    def told(finding: Finding) -> bool:
        keys = [(finding.told_by, part) for part in finding.parts]
        return bool(keys) and all(key in tellers and tellers[key] >= finding.weight for key in keys)

    return [
        finding
        for finding in found
        if not finding.told_by or finding.waived_because is not None or not told(finding)
    ]


def judge(
    review: Review,
    rules: Mapping[str, Rule],
    severities: Mapping[str, Severity | None] | None = None,
) -> Judgement:
    """All findings of a plan. ``severities`` overrides by rule name; None there keeps a rule silent.

    A rule about safety is never silent: its findings are notes then. A rule that raises becomes a finding
    of its own and the others go on.
    """
    asked = severities or {}
    found: list[Finding] = []
    waived: list[Finding] = []
    used: set[int] = set()
    ran: list[str] = []
    waiting: list[str] = []
    placed = review.setting.whole and not review.plan.unknown
    for name, rule in sorted(rules.items(), key=lambda item: item[1].timing is Timing.LAST):
        severity = asked.get(name, rule.severity)
        if severity is None and rule.topic != SAFETY:
            continue
        if rule.timing is Timing.WHOLE and not placed:
            waiting.append(name)
            continue
        if rule.timing is Timing.LAST:
            review = review.with_waivers_used(frozenset(used), tuple(ran))
        ran.append(name)
        try:
            raw = list(rule.judge(review)) if _has(review, rule.needs) else []
        except Exception as error:  # noqa: BLE001 - one broken rule must not silence the others
            found.append(_crash(rule, review, error))
            continue
        for finding in raw:
            weight = Severity.NOTE
            if severity is not None:
                weight = asked.get(name) or finding.severity or rule.severity
            stamped = finding.stamped(name, rule.topic, weight)
            waiver = _waiver_for(stamped, review)
            if waiver is None:
                found.append(stamped)
                continue
            used.add(review.plan.waivers.index(waiver))
            accepted = replace(stamped, waived_because=waiver.reason)
            if rule.topic == SAFETY:
                found.append(replace(accepted, weight=Severity.NOTE))
            else:
                waived.append(accepted)
    return Judgement(
        tuple(sorted(_told_once(found), key=_order)),
        tuple(sorted(waived, key=_order)),
        tuple(sorted(ran)),
        tuple(waiting),
    )
