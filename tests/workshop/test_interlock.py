"""Drawers with an interlock: which are open at once, against every allowed set and against sums by hand.

The dresser is that of the safety notes' checks W5 to W8; see ``test_tipping_open``.
"""

from __future__ import annotations

import json
import math
import random
from dataclasses import replace
from itertools import combinations
from pathlib import Path

import pytest

from reviewer.reports.json_report import render_json
from reviewer.reports.stability import stability_of
from reviewer.units import NEWTON_PER_KG
from reviewer.workshop.opening import Opening
from reviewer.workshop.steadying import tried_changes
from reviewer.workshop.tipping import side_of
from reviewer.workshop.tipping_scene import Scene
from tests.reports.test_standing import report
from tests.support import findings_of, look_at, review_of, told
from tests.workshop.test_tipping_open import LEVEL, dresser, dresser_text, margin, mass, scene_of

Openings = tuple[Opening, ...]


def locked(opens: Openings, *groups: int | None) -> Openings:
    return tuple(each._replace(lock=lock) for each, lock in zip(opens, groups, strict=True))


def front_of(scene: Scene):  # type: ignore[no-untyped-def]
    (front,) = [edge for edge in scene.edges if side_of(edge) == "front"]
    return front


# ------------------------------------------------------------------ by hand


def test_four_filled_drawers_with_and_without_an_interlock() -> None:
    # Safety notes W8 and equations (1), (3): a case of 70 lb at 9 in and four drawers of 10 lb with 12.4 lb
    # in each, travel 14 in. All open 70 x 9 = 630 holds, 4 x 22.4 x 5 = 448 turns, 182 lb in are left. One
    # open: 70 x 9 + 3 x 10 x 9 = 900 holds, 22.4 x 5 = 112 turns, 788 are left.
    review, piece, opens = dresser(filling=12.4)
    free = scene_of((review, piece, opens))
    state = free.all_opened(front_of(free))
    assert state is not None
    assert margin(state) == pytest.approx(182, abs=1)
    assert state.kept_shut == ()
    scene = scene_of((review, piece, locked(opens, 0, 0, 0, 0)))
    front = front_of(scene)
    assert scene.all_opened(front) is None
    ones = list(scene.opened(front))
    assert [margin(one) for one in ones] == pytest.approx([788] * 4, abs=1)
    assert ones[0].balance.ratio == pytest.approx(900 / 112, abs=0.01)
    assert ones[0].kept_shut == ("drawer1", "drawer2", "drawer3")


def test_a_push_with_an_interlock() -> None:
    # W5 with equation (6): one open leaves 850 lb in, all open 430; 10 lb at 36 in takes 360 of it.
    review, piece, opens = dresser()
    for groups, left in (((None,) * 4, 430 - 360), ((0, 0, 0, 0), 850 - 360), ((0, 0, 1, 1), 710 - 360)):
        scene = scene_of((review, piece, locked(opens, *groups)))
        state = scene.push_open(front_of(scene))
        assert state is not None
        assert margin(state) == pytest.approx(left, abs=0.5)
        assert len(state.opened) == (4 if groups[0] is None else len(set(groups)))


def test_a_child_hangs_on_the_one_open_drawer() -> None:
    # W6: 60 lb on the top drawer on carpet is short of 83.2 lb in with that drawer open alone.
    review, piece, opens = dresser()
    scene = scene_of((review, piece, locked(opens, 0, 0, 0, 0)))
    front = front_of(scene)
    child = scene.child(front)
    assert child is not None
    assert margin(child) == pytest.approx(-83.2, abs=0.5)
    assert [opening.name for opening, _ in child.opened] == ["drawer3"]
    assert child.kept_shut == ("drawer0", "drawer1", "drawer2")
    assert scene.child_all_open(front) is None


def test_a_child_may_hang_on_any_of_two_sets() -> None:
    # Two locked pairs: on the top drawer, which is no heavier than its mate but higher, one of the others open.
    review, piece, opens = dresser()
    heavy = tuple(
        each._replace(mass=each.mass._replace(kg=each.mass.kg * (2 if number == 2 else 1)))
        for number, each in enumerate(opens)
    )
    masses = (piece.masses[0], *(each.mass for each in heavy))
    scene = scene_of((review, replace(piece, masses=masses), locked(heavy, 0, 0, 1, 1)))
    child = scene.child_all_open(front_of(scene))
    assert child is not None
    # By itself the heavy third drawer is the worst of its pair; with a child's 60 lb on it the fourth is.
    assert [o.name for o, _ in scene.together(front_of(scene))][:1] == ["drawer2"]
    assert child.on in ("drawer2", "drawer3")
    assert len(child.opened) == 2


# ------------------------------------------------------------------ every allowed set


def random_chest(seed: int):  # type: ignore[no-untyped-def]
    """The dresser with drawers of random weight, filling, travel and interlocks, on a random case."""
    dice = random.Random(seed)
    review, piece, opens = dresser()
    made = []
    for number, each in enumerate(opens):
        z = 6 + 8 * number
        travel = each.moved.moving.model_copy(update={"distance": dice.uniform(2, 17) * 25.4})
        filling = dice.uniform(1, 40) if dice.random() < 0.8 else None
        made.append(
            each._replace(
                mass=mass(dice.uniform(3, 30), 15, dice.uniform(6, 11), z),
                contents=mass(filling, 15, dice.uniform(5, 12), z + 1) if filling else None,
                moved=each.moved._replace(moving=travel),
                lock=dice.choice((None, 0, 0, 1)),
            )
        )
    case = mass(dice.uniform(20, 90), 15, dice.uniform(7, 12), 18)
    return review, replace(piece, masses=(case, *(each.mass for each in made))), tuple(made)


def allowed(opens: Openings, least: int) -> list[Openings]:
    return [
        some
        for many in range(least, len(opens) + 1)
        for some in combinations(opens, many)
        if all(sum(o.lock == lock for o in some) <= 1 for lock in {o.lock for o in some} - {None})
    ]


def ratio_by_hand(piece, some: Openings, lever, extra=()) -> float:  # type: ignore[no-untyped-def]
    """Held over turned with some drawers out: shut weights are one, contents count only where they turn."""
    held = turned = 0.0
    shut_kg, shut_y, shut_z = 0.0, 0.0, 0.0
    opened = {each.mass: each for each in some}
    for one in piece.masses:
        if one not in opened:
            shut_kg += one.kg
            shut_y += one.kg * one.y
            shut_z += one.kg * one.z
    forces = [(shut_kg * NEWTON_PER_KG, shut_y / shut_kg, shut_z / shut_kg)]
    for each in some:
        out = each.moved.moving.distance
        forces.append((each.mass.weight, each.mass.y - out, each.mass.z))
        if each.contents is not None:
            inside = (each.contents.weight, each.contents.y - out, each.contents.z)
            if lever(inside[1], inside[2]) < 0:
                forces.append(inside)
    for newtons, y, z in (*forces, *extra):
        moment = newtons * lever(y, z)
        held, turned = held + max(0.0, moment), turned + max(0.0, -moment)
    return held / turned if turned > 1e-9 else math.inf


@pytest.mark.parametrize("seed", range(150))
def test_the_worst_set_is_the_worst_of_all_allowed_sets(seed: int) -> None:
    review, piece, opens = random_chest(seed)
    scene = Scene(piece, review.plan, review.setting, LEVEL, opens)
    front = front_of(scene)
    feet = front.start[1]
    sets = allowed(opens, 2)
    found = scene.all_opened(front)
    assert (found is None) == (not sets)
    if found is not None:
        expected = min(ratio_by_hand(piece, some, lambda y, z: y - feet) for some in sets)
        assert found.balance.ratio == pytest.approx(expected, rel=1e-6)
    # A push: 10 lb at the top adds to what turns.
    push = scene.push(front).balance.overturning
    pushed = scene.push_open(front)
    assert pushed is not None
    expected = min(
        ratio_by_hand(piece, some, lambda y, z: y - feet, [(push, feet - 1.0, 0.0)])
        for some in allowed(opens, 1)
    )
    assert pushed.balance.ratio == pytest.approx(expected, rel=1e-6)
    # A child on any open one of each set, carpet under the back.
    lean = math.radians(scene.block(front))

    def lever(y: float, z: float) -> float:
        return (y - feet) * math.cos(lean) - z * math.sin(lean)

    weight = LEVEL["child-weight"].amount * NEWTON_PER_KG
    expected = min(
        (
            ratio_by_hand(piece, some, lever, [(weight, hold[1], hold[2])])
            for some in sets
            for hold in (o.hold(front, o.turn(front)) for o in some)
        ),
        default=math.inf,
    )
    child = scene.child_all_open(front)
    assert (child is None) == (not sets)
    if child is not None:
        assert child.balance.ratio == pytest.approx(expected, rel=1e-6)
    # By what is left instead of by the ratio, for the pull on restraints.
    by_margin = Scene(piece, review.plan, review.setting, LEVEL, opens, worst_by="margin").all_opened(front)
    if by_margin is not None and found is not None:
        assert by_margin.balance.margin <= found.balance.margin + 1e-3


# ------------------------------------------------------------------ what a plan says of it

CHEST = (Path(__file__).parents[2] / "plans" / "games-chest.plan").read_text(encoding="utf-8")
FREE = CHEST.replace(", one at a time", "")


def test_the_chest_holds_with_its_interlock_and_tips_without() -> None:
    assert findings_of(CHEST, "tips") == ()
    (line,) = told(FREE, "tips")
    assert line.startswith("error ")
    assert "tips over to the front with everything open that can be open together and filled" in line
    assert "→ Give drawer.1, drawer.2 and drawer.3 an interlock, by itself or with the slides" in line
    assert "It can wear or be forced and is no restraint" in line
    assert "too little" not in line


def test_the_remedy_told_is_what_the_interlock_then_does() -> None:
    review = review_of(FREE)
    (tipping,) = review.tipping
    (tried,) = [each for each in tried_changes(tipping, review) if each.change == "interlock"]
    (then,) = review_of(CHEST).tipping
    assert then.worst is not None
    assert tried.ratio == pytest.approx(then.worst.balance.ratio, rel=1e-9)
    assert tried.amount.amount == tried.enough.amount == 3
    # One that is there already is not tried again.
    (locked_one,) = review_of(CHEST.replace("30 tall", "44 tall")).tipping
    assert locked_one.worst is not None
    changes = tried_changes(locked_one, review_of(CHEST.replace("30 tall", "44 tall")))
    assert changes
    assert all(each.change != "interlock" for each in changes)


def test_an_interlock_is_tried_only_on_drawers_that_run_on_slides() -> None:
    review = review_of(FREE.replace("fit drawer.* to side.*: slides 18 at 19, screws #6 x 5/8\n", ""))
    (tipping,) = review.tipping
    assert all(each.change != "interlock" for each in tried_changes(tipping, review))


def test_with_a_wall_the_restraint_is_told_and_not_the_interlock() -> None:
    by_wall = FREE.replace("indoors, no children", "indoors, wall behind, no children")
    lines = [*told(by_wall, "tips"), *told(by_wall, "restraint-missing")]
    assert any("restrain case to wall" in line for line in lines)
    assert not any("interlock" in line for line in lines)
    assert findings_of(CHEST.replace("indoors, no", "indoors, wall behind, no"), "restraint-missing") != ()


def test_states_say_one_at_a_time() -> None:
    (shown,) = stability_of(review_of(CHEST))
    rows = {row.state.kind: row for row in shown.rows if row.state.judged}
    assert rows["open"].what == "drawer.3 open, filled, one at a time, by its interlock"
    assert "all open" not in rows
    assert rows["push open"].what.endswith("open, filled, one at a time, by its interlock")
    (failed,) = [row for row in shown.rows if "did not hold" in row.what]
    assert failed.what == (
        "all open that can be open together, filled (for information: as if its interlock did not hold)"
    )
    assert failed.outcome == "not judged"
    (without,) = stability_of(review_of(FREE))
    (everything,) = [row for row in without.rows if row.state.kind == "all open"]
    assert failed.ratio == everything.ratio
    assert "It is no restraint. It can wear, be left off or be forced" in shown.scope
    assert "pulls with 30 lb at what it keeps shut" in shown.scope
    assert "the two texts differ" in shown.scope
    assert "interlock" not in without.scope


def test_the_finding_says_what_is_open() -> None:
    (line,) = told(CHEST.replace("30 tall", "40 tall"), "tips")
    assert line.startswith("warning ")
    assert "drawer.1 open (one at a time, by its interlock)" in line


def test_json_has_what_is_kept_shut() -> None:
    (piece,) = json.loads(render_json([report(CHEST)]))["plans"][0]["stability"]
    (one,) = [state for state in piece["states"] if state["kind"] == "open"]
    assert one["open"] == ["drawer.3"]
    assert one["kept_shut"] == ["drawer.1", "drawer.2"]
    assert all(state["kept_shut"] == [] for state in piece["states"] if not state["open"])


def test_one_interlock_is_bought_for_the_set() -> None:
    from reviewer.reports.buying import buying_of

    lines = [(each.how_many, each.said, each.why) for each in buying_of(review_of(CHEST)).hardware]
    assert (1, "interlock that lets one open at a time", "for drawer.1, drawer.2 and drawer.3") in lines
    assert any(said.startswith("pairs of slides") and number == 3 for number, said, _ in lines)


# ------------------------------------------------------------------ the model


def locks(text: str) -> list[tuple[str, ...]]:
    return [fit.locked for fit in review_of(text).plan.fits if fit.locked]


def test_each_statement_is_an_interlock_of_its_own() -> None:
    text = dresser_text()
    for n in range(4):
        text = text.replace(f"fit drawer{n} to side.*: slides 16\n", "")
    both = "fit drawer0, drawer1 to side.*: slides 16, one at a time\nfit drawer2, drawer3 to side.*: slides 16\n"
    assert locks(text + both) == [("drawer0", "drawer1")]
    two = both.replace("slides 16\n", "slides 16, one at a time\n")
    assert locks(text + two) == [("drawer0", "drawer1"), ("drawer2", "drawer3")]
    # One box of it is enough to mean the drawer, and an interlock may be bought by itself.
    parts = both + "fit drawer2.wall.left, drawer3.floor: one at a time\n"
    assert locks(text + parts) == [("drawer0", "drawer1"), ("drawer2", "drawer3")]
    twice = two + "fit drawer1, drawer2: one at a time\n"
    found = look_at(text + twice)
    assert [problem.says for problem in found.problems] == ["“drawer1” stands in two interlocks."]


def test_a_drawer_by_itself_has_nothing_to_lock_and_that_is_no_slip() -> None:
    one = CHEST.replace("3 copies spread evenly up between bottom and top", "bottom 10 above floor")
    assert locks(one) == [("drawer",)]
    (shown,) = stability_of(review_of(one))
    assert all("interlock" not in row.what for row in shown.rows)
    assert "interlock" not in shown.scope


def test_without_slides_nothing_hangs_on_the_interlock() -> None:
    bare = CHEST.replace("slides 18 at 19, screws #6 x 5/8, one at a time", "one at a time")
    assert findings_of(bare, "moves-unfitted") != ()
