"""Every kind of joint of a plan, drawn once in section: which joints are alike, and which come first."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from reviewer.findings import Finding, Severity
from reviewer.geometry.vectors import dot
from reviewer.model.plan import GROUNDS, Fastening, FasteningKind, HousingKind, Join
from reviewer.records import NamedTuple
from reviewer.reports.content import counted_word
from reviewer.reports.drawing import finding_anchor
from reviewer.reports.joint_section import Section, section_of
from reviewer.reports.section_drawing import SectionDrawing, draw_section
from reviewer.review import Review
from reviewer.setting_out.result import Joint
from reviewer.wording import listed
from reviewer.workshop.placed import Placed

#: At most so many sections are shown for a plan, and so many are drawn to find which of them are alike.
DRAWN, LOOKED_AT = 24, 200
#: Names of joints that are like a drawn one before it says how many more there are.
_NAMES = 4

#: Kinds of fastener that no section shows, and why.
NOT_DRAWN: Mapping[FasteningKind, str] = {
    "brackets": "The bracket is not drawn: the plan gives no measures of it.",
    "shelf pins": "The shelf pins are not drawn: the plan does not say where their holes are bored.",
    "wedges": "The wedges are not drawn: they follow the saw cut that the maker gives the tenon.",
    "clips": "The clip is not drawn: its measures are those of the clip that is bought.",
    "none": "",
}
#: Housings of which the plan leaves the inner shape open: it is drawn as usual.
_AS_USUAL: Mapping[HousingKind, str] = {
    "dovetails": "How many tails there are and how they lean is drawn as usual.",
    "box joint": "How many fingers there are is drawn as usual.",
    "bridle": "The tongue is drawn a third thick, as usual.",
    "tongue and groove": "The tongue is drawn a third thick, as usual.",
    "splined mitre": "The spline is drawn a quarter thick, as usual.",
}


class JointDrawn(NamedTuple):
    """A joint in section, for the page: its words, its picture, and the findings about it."""

    title: str
    said: str
    alike: str  # "8 joints like this: …"
    measures: tuple[tuple[str, str], ...]
    remarks: tuple[str, ...]
    svg: str
    weight: str  # of the heaviest finding; empty without
    findings: tuple[tuple[int, str, str], ...]  # number, where it stands on the page, rule


class JointDrawings(NamedTuple):
    """The sections of a plan, and what a reader must know of those left out."""

    drawn: tuple[JointDrawn, ...]
    remarks: tuple[str, ...]


NO_DRAWINGS = JointDrawings((), ())


class _Found(NamedTuple):
    joint: Joint
    fastening: Fastening | None
    placed: Placed | None
    section: Section
    drawing: SectionDrawing
    fasteners: int  # in the joint


def _spans_of(join: Join) -> list[tuple[int, int]]:
    spans = [join.span, *(fastening.span for fastening in join.fastenings)]
    spans += [fastening.from_span for fastening in join.fastenings if fastening.from_span is not None]
    spans += [
        span for span in (join.glue_span, join.housing.span if join.housing else None) if span is not None
    ]
    return [(span.start, span.end) for span in spans]


class _About:
    """Which findings speak of a joint: they stand in its words and name one of its parts."""

    def __init__(self, findings: Sequence[Finding], first: int) -> None:
        self.numbered = [
            (number, finding, frozenset(finding.parts))
            for number, finding in enumerate(findings, first)
            if finding.weight is not Severity.NOTE
        ]
        self._by_join: dict[int, list[tuple[int, Finding, frozenset[str]]]] = {}

    def of(self, joint: Joint, fastening: Fastening | None) -> list[tuple[int, Finding]]:
        key = id(joint.join)
        near = self._by_join.get(key)
        if near is None:
            spans = _spans_of(joint.join)
            near = [
                each
                for each in self.numbered
                if any(
                    start <= at.start < end for at in (each[1].at, *each[1].also_at) for start, end in spans
                )
            ]
            self._by_join[key] = near
        others = [
            (other.span.start, other.span.end) for other in joint.join.fastenings if other is not fastening
        ]
        return [
            (number, finding)
            for number, finding, parts in near
            if (joint.left in parts or joint.right in parts)
            and not any(start <= finding.at.start < end for start, end in others)
        ]


class _Words:
    """What a join says of one kind of fastener, without where it says so; asked once for each join."""

    def __init__(self) -> None:
        self._known: dict[tuple[int, int], tuple[object, ...]] = {}

    def of(self, join: Join, fastening: Fastening | None) -> tuple[object, ...]:
        key = id(join), id(fastening)
        if key not in self._known:
            said = fastening.model_dump(exclude={"span", "from_span"}) if fastening is not None else {}
            made = join.housing.model_dump(exclude={"span"}) if join.housing is not None else {}
            self._known[key] = (
                tuple(said.items()),
                tuple(made.items()),
                join.glue is not None,
                join.butt,
                join.reason is not None,
            )
        return self._known[key]


def _rounded(amounts: Iterable[float]) -> tuple[float, ...]:
    # A little more than nothing: no usual measure then lies right between two.
    return tuple(round(abs(each) + 0.0137, 1) for each in amounts)


def _at_a_glance(
    joint: Joint, fastening: Fastening | None, review: Review, words: _Words
) -> tuple[object, ...]:
    """What joints have in common that look alike, mirrored or not, without drawing them."""
    solids, parts = review.setting.solids, review.plan.parts
    found: list[object] = [words.of(joint.join, fastening)]
    for name in (joint.left, joint.right):
        solid = solids[name] if name not in GROUNDS else None
        if solid is not None:
            found += [parts[name].stock, solid.long, solid.wide, _rounded(solid.size)]
            found += [_rounded(way) for way in solid.directions] if not solid.square else []
    if joint.left not in GROUNDS and joint.right not in GROUNDS:
        left, right = solids[joint.left], solids[joint.right]
        found.append(_rounded(a - b for a, b in zip(left.centre, right.centre, strict=True)))
    for place in (joint.contact, joint.overlap):
        if place is not None:
            found.append(_rounded(a - b for a, b in zip(place.high, place.low, strict=True)))
    return tuple(found)


def _worst_of(joint: Joint, fastening: Fastening | None, review: Review) -> Placed | None:
    """The fastener of a joint that leaves least wood beyond its point: where something is wrong, it shows."""
    return next(
        (each.worst for each in review.driven if each.joint is joint and each.fastening is fastening), None
    )


def _drawing_of(joint: Joint, fastening: Fastening | None, review: Review, flagged: bool) -> _Found | None:
    """The section of a joint through one of its fasteners: the worst where a finding speaks of it."""
    here = review.placed_by_joint.get((joint.left, joint.right, joint.join.span), ())
    mine = [each for each in here if each.fastening is fastening]
    worst = _worst_of(joint, fastening, review) if flagged else None
    one = worst or (mine[0] if mine else None)
    section = section_of(joint, review.setting, one)
    if section is None:
        return None
    drawing = draw_section(section, one, review.plan, review.setting.solids)
    return _Found(joint, fastening, one, section, drawing, len(mine))


class _Kind(NamedTuple):
    """Joints that are alike, and the one of them that is drawn: one with findings, where some have any."""

    found: _Found
    alike: list[tuple[Joint, Fastening | None]]


def _kinds(review: Review, about: _About) -> tuple[list[_Kind], int]:
    """The kinds of joint, those with findings first, and how many kinds were left out."""
    words = _Words()
    glanced: dict[tuple[object, ...], list[tuple[Joint, Fastening | None]]] = {}
    for joint in review.setting.joints:
        fastenings: tuple[Fastening | None, ...] = joint.join.fastenings or (None,)
        for fastening in fastenings if joint.meets else ():
            glanced.setdefault(_at_a_glance(joint, fastening, review, words), []).append((joint, fastening))
    rows = sorted(glanced.values(), key=lambda row: not any(about.of(*each) for each in row))
    kinds: dict[tuple[object, ...], _Kind] = {}
    for row in rows[:LOOKED_AT]:
        flagged = next((each for each in row if about.of(*each)), None)
        joint, fastening = flagged or row[0]
        found = _drawing_of(joint, fastening, review, flagged is not None)
        if found is not None:
            key = (words.of(joint.join, fastening), found.fasteners, found.drawing.alike)
            kinds.setdefault(key, _Kind(found, [])).alike.extend(row)
    return list(kinds.values()), max(0, len(rows) - LOOKED_AT)


def _said(found: _Found, review: Review) -> str:
    from reviewer.reports.buying import fastening_said

    join, units = found.joint.join, review.units
    said: list[str] = []
    if join.housing is not None:
        said.append(join.housing.kind)
    if join.butt:
        said.append("butt joint")
    if found.fastening is not None and found.fastening.kind != "none":
        said.append(fastening_said(found.fastening, found.fasteners, units))
    placed = found.placed
    if placed is not None and placed.mouth is not None:
        said.append(f"through {placed.head_part} into {placed.point_part}")
    if join.reason is not None:
        said.append("not fastened")
    if join.glue is not None:
        said.append("glued")
    return ", ".join(said) or "not fastened"


def _remarks(found: _Found) -> tuple[str, ...]:
    said = []
    fastening, housing = found.fastening, found.joint.join.housing
    if fastening is not None:
        if found.placed is None:
            why = NOT_DRAWN.get(
                fastening.kind, "Where the fasteners go is not worked out, so they are not drawn."
            )
            said.append(why)
        elif found.placed.pattern_assumed:
            said.append("Where they stand is taken for granted: the plan does not say.")
    if housing is not None:
        said.append(_AS_USUAL.get(housing.kind, ""))
    placed = found.placed
    if placed is not None:
        slant = dot(placed.direction, placed.surface_normal)
        if slant < 0.9999 and placed.mouth is not None and placed.kind != "pocket screws":
            said.append("It is driven at a slant.")
    return tuple(each for each in said if each)


def _told(found: _Found, title: str, said: str) -> str:
    parts = [f"{title}: {said}."]
    parts += [f"{each.name} {each.value}." for each in found.drawing.measures]
    if found.drawing.out:
        parts.append("The point comes out of the wood.")
    return " ".join(parts)


def _drawn(
    kind: _Kind, about: _About, review: Review, prefix: str, number: int
) -> tuple[tuple[int, int, int], JointDrawn]:
    found = kind.found
    told: dict[int, Finding] = {}
    for each in kind.alike:
        told.update(about.of(*each))
    title = f"{found.section.upper} on {found.section.lower}"
    said = _said(found, review)
    names = [f"{joint.left} to {joint.right}" for joint, _ in kind.alike]
    many = counted_word(len(names), "joint")
    weight = max((finding.weight for finding in told.values()), default=None)
    anchor = f"{prefix}section-{number}"
    drawn = JointDrawn(
        title=title,
        said=said,
        alike=f"{many} like this: {listed(tuple(names), most=_NAMES)}" if len(names) > 1 else "",
        measures=tuple((each.name, each.value) for each in found.drawing.measures),
        remarks=_remarks(found),
        svg=found.drawing.svg(anchor, f"Section: {title}", _told(found, title, said)),
        weight=weight.word if weight is not None else "",
        findings=tuple(
            (each, finding_anchor(prefix, each), finding.rule) for each, finding in sorted(told.items())
        ),
    )
    heavy = -int(weight) if weight is not None else 0
    return (heavy, min(told, default=0), number), drawn


def joint_drawings(review: Review, findings: Sequence[Finding], first: int, prefix: str) -> JointDrawings:
    """The joints of a plan in section, those with findings first. ``first`` numbers the first finding."""
    about = _About(findings, first)
    kinds, left_out = _kinds(review, about)
    ranked = sorted(
        (_drawn(kind, about, review, prefix, number) for number, kind in enumerate(kinds, 1)),
        key=lambda each: each[0],
    )
    remarks = []
    if len(ranked) > DRAWN or left_out:
        many = f"at least {len(ranked) + 1}" if left_out else str(len(ranked))
        remarks.append(
            f"{min(DRAWN, len(ranked))} of {many} kinds of joint are drawn: those with findings first, then "
            "in the plan's order."
        )
    return JointDrawings(tuple(drawn for _, drawn in ranked[:DRAWN]), tuple(remarks))
