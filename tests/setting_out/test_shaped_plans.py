"""Shaped parts on the whole road: a plan whose parts are given shapes by hand, to masses, feet and reports."""

from __future__ import annotations

import json
import math
from importlib import resources

import jsonschema
import pytest

from reviewer.judging import judge
from reviewer.mechanics.mass import combined
from reviewer.model.plan import Part, Relation
from reviewer.model.shapes import Hole, Lean, Reach, Rising, Rounded, Shape
from reviewer.reference.materials import material
from reviewer.review import Review
from reviewer.rulebook import all_rules
from reviewer.setting_out.setting import set_out
from tests.setting_out.shaped_by_hand import SPAN, WHOLE, notch
from tests.support import review_of

#: A lean with whole numbers: 7 to the side on 24 up (about 16°) is 25 along the leg.
RUN, LONG = 7 / 24, 25 / 24


def shaped(text: str, shapes: dict[str, Shape], sizes: dict[tuple[str, int], float] | None = None) -> Review:
    """A plan's review with shapes given to parts; sizes of boxes on an axis in place of the stock's."""
    review = review_of(text)
    parts = dict(review.plan.parts)
    for name, shape in shapes.items():
        parts[name] = parts[name].model_copy(update={"shape": shape})
    for (name, axis), size in (sizes or {}).items():
        parts[name] = parts[name].model_copy(update={"relations": resized(parts[name], axis, size)})
    plan = review.plan.model_copy(update={"parts": parts})
    return Review(review.source, plan, set_out(plan), review.limits)


def resized(part: Part, axis: int, size: float) -> tuple[Relation, ...]:
    return tuple(
        relation._replace(offset=size) if relation.axis == axis and relation.which == "size" else relation
        for relation in part.relations
    )


TEXT = """
    plan "Stool" in millimetres
    stock post: actual 48 x 48 pine
    stock plank: actual 30 x 300 pine
    part leg.a: post, upright, facing side, 480 tall, on floor, left at 20, front at 100
    part leg.b: post, upright, facing side, 480 tall, on floor, right at 580, front at 100
    part seat: plank, across, flat, 600 long, left at 0, front at 0, bottom at 480
    room hall: indoors, wall behind, no children
    join leg.* to seat: screws 5 x 80, 2 per joint, from above
"""
#: Level section 48 · 25/24 = 50, and 480 · 7/24 = 140: the box is 190 across.
SPLAYED = {
    "leg.a": Shape(Lean(RUN, 0.0, SPAN)),
    "leg.b": Shape(Lean(-RUN, 0.0, SPAN)),
}
BOXES = {("leg.a", 0): 190.0, ("leg.b", 0): 190.0}


def test_splayed_legs_weigh_and_stand_as_they_are_cut() -> None:
    review = shaped(TEXT, SPLAYED, BOXES)
    density = material(review.stock_of("leg.a").material).density / 1e9
    mass = review.masses["leg.a"]
    assert mass.kg == pytest.approx(48 * 50 * 480 * density)
    assert (mass.x, mass.y, mass.z) == pytest.approx((20 + 190 / 2, 124, 240))
    assert review.setting.whole
    assert review.setting.miscuts == ()
    (piece,) = review.pieces
    assert piece.polygon is not None
    # The feet: 50 by 48 at both outer sides, since the legs splay outwards below.
    assert [(round(x, 6), round(y, 6)) for x, y in sorted(piece.polygon)] == [
        (20, 100),
        (20, 148),
        (580, 100),
        (580, 148),
    ]
    whole = combined(review.masses.values())
    assert whole is not None
    assert whole.x == pytest.approx(300)
    # Both legs meet the seat on their level ends, 140 further in.
    tops = [c for c in review.setting.contacts if c.second == "seat"]
    assert [(c.low, c.high, c.axis) for c in tops] == [
        (pytest.approx((160, 100, 480)), pytest.approx((210, 148, 480)), 2),
        (pytest.approx((390, 100, 480)), pytest.approx((440, 148, 480)), 2),
    ]
    assert all(held.how == "rests" for held in review.holding.supports["seat"])


def test_no_rule_stumbles_over_shaped_parts() -> None:
    shapes = dict(SPLAYED)
    shapes["seat"] = Shape(None, (Hole(2, "high", 40, None, (Reach("middle"), Reach("low", 60)), SPAN),
                                  notch(Reach("low", 0, 30), Reach("low", 0, 30), WHOLE)))  # fmt: skip
    review = shaped(TEXT, shapes, BOXES)
    found = judge(review, all_rules())
    assert [finding for finding in found.findings if finding.rule == "rule-crashed"] == []
    assert not found.waiting


def test_a_foot_on_a_slant_is_a_polygon_of_its_own() -> None:
    """A leg that leans both ways has a slanting foot; its footprint is that outline, not the bounds."""
    from reviewer.geometry.slanting import level_section

    across, deep = level_section(0.2, 0.3, 0, 48, 48)
    boxes = {("leg.a", 0): across + 480 * 0.2, ("leg.a", 1): deep + 480 * 0.3}
    review = shaped(TEXT, {"leg.a": Shape(Lean(0.2, 0.3, SPAN))}, boxes)
    (foot,) = [c for c in review.setting.contacts_of("floor") if c.second == "leg.a"]
    assert foot.area < (foot.high[0] - foot.low[0]) * (foot.high[1] - foot.low[1]) - 1
    assert len(foot.corners) == 4
    (piece,) = [piece for piece in review.pieces if "leg.a" in piece.parts]
    assert piece.polygon is not None
    assert {(round(x, 6), round(y, 6)) for x, y, _ in foot.corners} & {
        (round(x, 6), round(y, 6)) for x, y in piece.polygon
    }


def test_a_part_that_cannot_be_made_holds_up_what_needs_the_whole_piece() -> None:
    review = shaped(TEXT, {"seat": Shape(Rising(0, 2, "high", "square", "square", SPAN))})
    assert "seat" not in review.setting.solids
    assert not review.setting.whole
    (told,) = review.setting.miscuts
    assert (told.part, told.what, told.figures) == ("seat", "brace does not fit", (300, 600, 30))
    assert "tips" in judge(review, all_rules()).waiting


def test_reports_know_shaped_parts() -> None:
    from reviewer.reports.drawing import drawing_of
    from reviewer.reports.lists_json import part_json
    from reviewer.units import UnitSystem

    shelf = resources.files("reviewer.reports") / "review.schema.json"
    schema = json.loads(shelf.read_text(encoding="utf-8"))
    review = shaped(TEXT, SPLAYED | {"seat": Shape(None, (Rounded(20, SPAN),))}, BOXES)
    leg = part_json(review.setting.solids["leg.a"], review)
    assert leg["volume_mm3"] == 48 * 50 * 480
    assert leg["length_mm"] == pytest.approx(480 * LONG + 48 * RUN)
    jsonschema.validate(json.loads(json.dumps(leg)), schema["$defs"]["part"] | {"$defs": schema["$defs"]})
    bar = part_json(review.setting.solids["seat"], review)
    assert bar["volume_mm3"] == pytest.approx(math.pi * 100 * 600)
    drawing = drawing_of(tuple(review.setting.solids.values()), UnitSystem.METRIC, {})
    for view in drawing.views:
        assert 'class="rim"' in view.svg
