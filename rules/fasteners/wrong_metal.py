"""Fasteners that rust, or that eat or stain the wood they are in."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Filling, Finding, Severity
from reviewer.model.plan import GROUNDS, Fastening, FasteningKind
from reviewer.plan_words import called
from reviewer.records import NamedTuple
from reviewer.reference.fastener_metals import Metal, MetalVerdict, Place, metal_verdict
from reviewer.reference.materials import material
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.wording import listed

#: Fasteners that are made of metal. Shelf pins and clips are hardware of dry rooms.
_OF_METAL: tuple[FasteningKind, ...] = ("screws", "pocket screws", "nails", "bolts", "brackets")
_SAID: dict[Metal, str] = {
    "plain": "plain steel",
    "galvanised": "galvanised",
    "brass": "brass",
    "stainless": "stainless",
}
#: The harshest place first: it decides what is told.
_PLACES: tuple[Place, ...] = ("treated", "tannic outdoors", "outdoors")


class _Pick(NamedTuple):
    """What is wrong with a metal, where, and which part's wood decides it."""

    place: Place
    verdict: MetalVerdict
    part: str


def _places(review: Review) -> dict[str, tuple[Place, ...]]:
    """By stock, the places that a fastener in it stands in; stocks of dry rooms are absent."""
    room = review.plan.room
    outdoors = room is not None and room.outdoors
    found: dict[str, tuple[Place, ...]] = {}
    for name, stock in review.plan.stocks.items():
        bleeds = material(stock.material).bleeds
        tannic = outdoors and bleeds.startswith(("tannin", "extractive"))
        places = tuple(
            place for place, true in zip(_PLACES, (stock.treated, tannic, outdoors), strict=True) if true
        )
        if places:
            found[name] = places
    return found


def _worst(
    review: Review, names: tuple[str, ...], metal: Metal, places: dict[str, tuple[Place, ...]]
) -> _Pick | None:
    for place in _PLACES:
        for name in names:
            if place in places.get(review.plan.parts[name].stock, ()):
                verdict = metal_verdict(metal, place)
                if verdict.verdict != "yes":
                    return _Pick(place, verdict, name)
    return None


def _finding(review: Review, group: list[tuple[Fastening, Metal, _Pick]], parts: tuple[str, ...]) -> Finding:
    fastening, metal, pick = group[0]
    wood, room = review.material_of(pick.part), review.plan.room
    spans = tuple(dict.fromkeys(each.span for each, _, _ in group))
    kinds = tuple(dict.fromkeys(each.kind for each, _, _ in group))
    values: dict[str, Filling] = {
        "kinds": listed(kinds),
        "parts": called(review.plan, parts),
        "wood": wood.said,
        "room": room.name if room is not None else "",
        "why": pick.verdict.why,
        "who": pick.verdict.source,
    }
    where = {
        "outdoors": "{room} is outdoors",
        "treated": "the wood is treated",
        "tannic outdoors": "{room} is outdoors, and {wood} is rich in tannin and the like",
    }[pick.place]
    of_metal = (
        "name no metal and are taken to be plain or zinc-plated steel"
        if metal == "plain"
        else f"are {_SAID[metal]}"
    )
    cure = "stainless" if pick.place == "tannic outdoors" else "stainless or hot-dip galvanised"
    words = review.source.words(fastening.span)
    single = len(spans) == 1 and "\n" not in words and metal == "plain"
    return Finding(
        parts=parts,
        at=spans[0],
        also_at=spans[1:],
        says=f"The {{kinds}} of {{parts}} {of_metal}, and {where}: {{why}} ({{who}}).",
        do=f"Take {cure} ones, and say so: “stainless” after the fastener.",
        values=values,
        edit=Edit(fastening.span, f"{words}, stainless") if single else None,
        severity=Severity.NOTE if pick.verdict.verdict == "doubtful" else None,
    )


@rule("wrong-metal", topic="fasteners", severity=Severity.WARNING)
def wrong_metal(review: Review) -> Iterator[Finding]:
    """Fasteners of a metal that rusts where the piece stands, or that its wood eats or stains about.

    Goes wrong: Two winters on, black streaks run down from every screw of the oak bench, and the heads break
    off when it is taken apart. In treated wood plain screws waste away unseen.

    Judged by: Where the room says outdoors, where a stock is treated, and where the species table says that
    tannin or a like extractive bleeds from the wood: the table of metals says which metal bears that. A
    fastener of no stated metal is taken to be plain or zinc-plated steel, and the finding says so.
    Galvanised in tannic wood outdoors is a note.

    Leaves out: Tannic wood in dry rooms. Hardware of a fit, and wall restraints. Unheated rooms. Zinc that is
    thinner than hot-dip, which many packets call galvanised too.

    Sources: International Residential Code R317.3 (treated wood; from memory); the rest common practice, no
    source

    Flagged:

        plan "Porch shelf" in inches
        stock board: actual 3/4 x 5 white oak
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        part lip: board, across, on edge, 24 long, left at 0, against front of shelf, on floor
        join lip to shelf: screws #8 x 1 1/2, every 8
        room porch: outdoors

    Quiet:

        plan "Porch shelf" in inches
        stock board: actual 3/4 x 5 white oak
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        part lip: board, across, on edge, 24 long, left at 0, against front of shelf, on floor
        join lip to shelf: screws #8 x 1 1/2, every 8, stainless
        room porch: outdoors
    """
    places = _places(review)
    if not places:
        return
    groups: dict[tuple[Metal, Place, str], list[tuple[Fastening, Metal, _Pick]]] = {}
    parts: dict[tuple[Metal, Place, str], dict[str, None]] = {}
    for joint in review.setting.joints:
        if not joint.meets:
            continue
        names = tuple(name for name in (joint.left, joint.right) if name not in GROUNDS)
        for fastening in joint.join.fastenings:
            if fastening.kind not in _OF_METAL:
                continue
            metal: Metal = fastening.metal or "plain"
            pick = _worst(review, names, metal, places)
            if pick is None:
                continue
            key = (metal, pick.place, review.plan.stocks[review.plan.parts[pick.part].stock].material)
            groups.setdefault(key, []).append((fastening, metal, pick))
            parts.setdefault(key, {}).update(dict.fromkeys(names))
    for key, group in groups.items():
        yield _finding(review, group, tuple(parts[key]))
