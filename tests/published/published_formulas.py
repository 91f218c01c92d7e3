"""The formulas that published checks may name, each played on the project's own functions.

Everything here returns the inside unit (mm, N, MPa, N·mm), a share as a number, or a word.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Literal, TypeVar

from published_measures import INSIDE, Inputs

from reviewer.language.source import Span
from reviewer.mechanics import (
    beam,
    eurocode,
    fasteners,
    moisture,
    pocket_screws,
    stability,
    strength,
    yield_modes,
)
from reviewer.mechanics.beam import BeamResult, LineLoad, PointLoad
from reviewer.mechanics.mass import Mass, combined
from reviewer.model.plan import Stock
from reviewer.reference.materials import candidates
from reviewer.units import MPA_PER_PSI, NEWTON_PER_KG
from reviewer.workshop.wood_movement import change_across

FORMULAS: dict[str, Callable[[Inputs], float | str]] = {}


Answer = TypeVar("Answer", float, str)


def formula(name: str) -> Callable[[Callable[[Inputs], Answer]], Callable[[Inputs], Answer]]:
    def keep(function: Callable[[Inputs], Answer]) -> Callable[[Inputs], Answer]:
        assert name not in FORMULAS
        FORMULAS[name] = function
        return function

    return keep


@formula("same measure")
def _(i: Inputs) -> float:
    return i.measure("amount")


# ------------------------------------------------------------------ moisture


@formula("equilibrium moisture")
def _(i: Inputs) -> float:
    return moisture.equilibrium_moisture(i.measure("temperature"), i.measure("humidity") / 100)


@formula("width change")
def _(i: Inputs) -> float:
    return moisture.width_change(
        i.measure("width"), i.measure("coefficient"), i.measure("from"), i.measure("to")
    )


@formula("width change by shrinkage")
def _(i: Inputs) -> float:
    return moisture.width_change_by_shrinkage(
        i.measure("width"), i.measure("shrinkage"), i.measure("from"), i.measure("to")
    )


@formula("coefficient from shrinkage")
def _(i: Inputs) -> float:
    return moisture.coefficient_from_shrinkage(i.measure("shrinkage"))


@formula("lumber shrinkage")
def _(i: Inputs) -> float:
    return moisture.lumber_shrinkage(i.measure("to"), _direction(i))


@formula("lumber size")
def _(i: Inputs) -> float:
    return moisture.lumber_size(i.measure("size"), i.measure("from"), i.measure("to"), _direction(i))


@formula("lumber loss")
def _(i: Inputs) -> float:
    return i.measure("size") - moisture.lumber_size(
        i.measure("size"), i.measure("from"), i.measure("to"), _direction(i)
    )


@formula("board change")
def _(i: Inputs) -> float:
    """By how much a board of a named wood changes, through the project's own tables; never negative."""
    found = candidates(i.word("wood"))
    stock = Stock(
        name="board",
        kind="board",
        material=found[0],
        said=i.word("wood"),
        thickness=20,
        width=i.measure("width"),
        offers=(),
        sawn="quarter" if i.word("sawn") == "quarter" else "flat",
        span=Span(0, 0),
    )
    return change_across(stock, i.measure("width"), i.measure("from"), i.measure("to"))


@formula("density of lumber")
def _(i: Inputs) -> float:
    return moisture.density_of_lumber(i.measure("gravity"), i.measure("moisture"))


def _direction(i: Inputs) -> Literal["width", "thickness"]:
    return "width" if i.word("direction") == "width" else "thickness"


# ------------------------------------------------------------------ beams and strength


def _solved(*args: object, **kwargs: object) -> BeamResult:
    result = beam.solve_beam(*args, **kwargs)  # type: ignore[arg-type]
    assert isinstance(result, BeamResult)
    return result


@formula("second moment")
def _(i: Inputs) -> float:
    return beam.second_moment(i.measure("width"), i.measure("thickness"))


@formula("section modulus")
def _(i: Inputs) -> float:
    return beam.section_modulus(i.measure("width"), i.measure("thickness"))


def _bending_factors(i: Inputs) -> strength.Factors:
    return strength.Factors(
        load_duration=i.measure("CD", 1.0), size=i.measure("CF", 1.0), repetitive=i.measure("Cr", 1.0)
    )


@formula("bending design value")
def _(i: Inputs) -> float:
    return strength.design_value("bending", i.measure("Fb"), _bending_factors(i))


#: A span of any length tells what every other would do: moment grows with its square, sag with its cube
#: against the span, both by one solution of the beam.
_TRIAL = 3000.0


def _joist(i: Inputs, pressure: float, stiffness: float) -> BeamResult:
    line = LineLoad(0.0, _TRIAL, pressure * i.measure("spacing"))
    return _solved(_TRIAL, [0.0, _TRIAL], stiffness, [], [line])


@formula("joist span by bending")
def _by_bending(i: Inputs) -> float:
    i.word("E")
    bay = _joist(i, i.measure("live") + i.measure("dead"), 1e12).bays[0]
    stress = strength.bending_stress(bay.moment, beam.section_modulus(i.measure("width"), i.measure("depth")))
    allowed = strength.design_value("bending", i.measure("Fb"), _bending_factors(i))
    return _TRIAL * math.sqrt(allowed / stress)


@formula("joist span by deflection")
def _by_deflection(i: Inputs) -> float:
    for unused in ("dead", "Fb", "CF", "Cr"):
        i.word(unused)
    stiffness = i.measure("E") * beam.second_moment(i.measure("width"), i.measure("depth"))
    bay = _joist(i, i.measure("live"), stiffness).bays[0]
    return _TRIAL * math.cbrt(bay.length / i.measure("limit") / bay.sag)


@formula("joist span by bearing")
def _(i: Inputs) -> float:
    i.word("depth")
    reaction = _joist(i, i.measure("live") + i.measure("dead"), 1e12).reactions[0].force
    stress = strength.bearing_stress(reaction, i.measure("width"), i.measure("bearing"))
    return _TRIAL * strength.design_value("bearing", i.measure("Fcp"), strength.Factors()) / stress


@formula("joist span")
def _(i: Inputs) -> float:
    return min(_by_bending(i), _by_deflection(i))


@formula("effective length")
def _effective(i: Inputs) -> float:
    return strength.effective_length_centre_load(i.measure("unbraced"), i.measure("depth"))


@formula("beam slenderness")
def _slenderness(i: Inputs) -> float:
    return strength.beam_slenderness(_effective(i), i.measure("depth"), i.measure("width"))


@formula("beam buckling stress")
def _rolling(i: Inputs) -> float:
    return strength.beam_buckling_stress(_slenderness(i), i.measure("Emin"))


@formula("beam stability factor")
def _beam_stability(i: Inputs) -> float:
    held = strength.design_value("bending", i.measure("Fb"), _bending_factors(i))
    return strength.beam_stability(_rolling(i), held)


@formula("beam design value")
def _(i: Inputs) -> float:
    factors = _bending_factors(i)._replace(beam_stability=_beam_stability(i))
    return strength.design_value("bending", i.measure("Fb"), factors)


def _column_factors(i: Inputs) -> strength.Factors:
    return strength.Factors(load_duration=i.measure("CD"), size=i.measure("CF"))


@formula("column stability factor")
def _column_stability(i: Inputs) -> float:
    buckling = strength.column_buckling_stress(i.measure("length"), i.measure("depth"), i.measure("Emin"))
    crushing = strength.design_value("compression", i.measure("Fc"), _column_factors(i))
    return strength.column_stability(buckling, crushing, built_up=i.measure("Kf", 1.0))


@formula("column design value")
def _(i: Inputs) -> float:
    factors = _column_factors(i)._replace(column_stability=_column_stability(i))
    return strength.design_value("compression", i.measure("Fc"), factors)


@formula("long-term deflection")
def _(i: Inputs) -> float:
    return beam.long_term(i.measure("lasting"), i.measure("brief"), i.measure("factor"))


@formula("shelf sag")
def _(i: Inputs) -> float:
    span = i.measure("span")
    stiffness = i.measure("E") * beam.second_moment(i.measure("width"), i.measure("thickness"))
    return _solved(span, [0.0, span], stiffness, [], [LineLoad(0.0, span, i.measure("load"))]).bays[0].sag


_CASES: dict[str, Callable[[], BeamResult]] = {
    "simple span, uniform": lambda: _scaled([0, 1], [], [], True),
    "simple span, centre point": lambda: _scaled([0, 1], [], [0.5]),
    "both ends fixed, uniform": lambda: _scaled([], [0, 1], [], True),
    "both ends fixed, centre point": lambda: _scaled([], [0, 1], [0.5]),
    "cantilever, uniform": lambda: _scaled([], [0], [], True),
    "cantilever, end point": lambda: _scaled([], [0], [1]),
    "simple span, two third-point loads": lambda: _scaled([0, 1], [], [1 / 3, 2 / 3]),
    "two equal spans, uniform": lambda: _even_spans(2),
}
_SPAN = 1000.0


def _scaled(
    knife_edges: list[float], clamps: list[float], points: list[float], even: bool = False
) -> BeamResult:
    """A beam 1000 mm long with E·I = 1000³ N·mm² under 1 N in all: its sag is the coefficient."""
    return _solved(
        _SPAN,
        [_SPAN * at for at in knife_edges],
        _SPAN**3,
        [PointLoad(_SPAN * at, 1 / len(points)) for at in points],
        [LineLoad(0.0, _SPAN, 1 / _SPAN)] if even else [],
        [_SPAN * at for at in clamps],
    )


def _even_spans(count: int) -> BeamResult:
    """So many spans of 1000 mm with E·I = 1000³ N·mm² and 1 N on each."""
    places = [_SPAN * n for n in range(count + 1)]
    return _solved(_SPAN * count, places, _SPAN**3, [], [LineLoad(0.0, _SPAN * count, 1 / _SPAN)])


@formula("sag coefficient")
def _(i: Inputs) -> float:
    return _CASES[i.word("case")]().bays[0].sag


@formula("place of worst sag")
def _(i: Inputs) -> float:
    return _CASES[i.word("case")]().bays[0].sag_at / _SPAN


@formula("reaction coefficient")
def _(i: Inputs) -> float:
    return _even_spans(int(i.word("spans"))).reactions[int(i.word("support")) - 1].force


@formula("support moment coefficient")
def _(i: Inputs) -> float:
    return _even_spans(int(i.word("spans"))).moment((int(i.word("support")) - 1) * _SPAN) / _SPAN


@formula("span moment coefficient")
def _(i: Inputs) -> float:
    spans = _even_spans(int(i.word("spans")))
    first = (int(i.word("span")) - 1) * _SPAN
    return max(spans.moment(first + _SPAN * step / 10_000) for step in range(10_001)) / _SPAN


# ------------------------------------------------------------------ fasteners


def _per_length(i: Inputs) -> float:
    return fasteners.withdrawal_per_mm(i.word("kind"), i.measure("G"), i.measure("D"))  # type: ignore[arg-type]


FORMULAS["withdrawal per length"] = _per_length


@formula("withdrawal")
def _(i: Inputs) -> float:
    return _per_length(i) * fasteners.grip(
        i.measure("length"), i.measure("thread"), i.measure("side"), tip=i.measure("tip", 0.0)
    )


@formula("head pull-through")
def _(i: Inputs) -> float:
    return fasteners.head_pull_through(i.measure("head"), i.measure("G"), i.measure("under"))


def _rounded(stress: float) -> float:
    """As the printed table: to 50 psi."""
    return round(stress / MPA_PER_PSI / 50) * 50 * MPA_PER_PSI


@formula("dowel bearing strength")
def _(i: Inputs) -> float:
    return _rounded(yield_modes.dowel_bearing_strength(i.measure("G"), i.measure("D"), i.measure("angle")))


def _yielding(i: Inputs) -> yield_modes.Yielding:
    """The joint of a printed table: wood screws sunk 10 D, lag screws 8 D without tip, nails their length."""
    kind, nominal, side = i.word("kind"), i.measure("D"), i.measure("side")
    wood = yield_modes.dowel_bearing_strength(i.measure("G"), nominal, i.measure("angle", 0.0))
    if i.word("rounding") != "no":
        wood = _rounded(wood)
    match kind:
        case "wood screw":
            main = yield_modes.bearing_in_main(10 * nominal, 2 * nominal)
        case "lag screw":
            main = yield_modes.bearing_in_main(8 * nominal + i.measure("tip"), i.measure("tip"))
        case "nail":
            main = yield_modes.bearing_in_main(i.measure("length") - side, 2 * nominal)
        case _:
            main = i.measure("main")
    joint = yield_modes.Joint(
        diameter=i.measure("root", nominal),
        nominal_diameter=nominal,
        main_length=main,
        side_length=side,
        main_strength=wood,
        side_strength=i.measure("Fes", wood),
        bending_yield=i.measure("Fyb"),
        angle=i.measure("angle", 0.0),
        double_shear=i.word("planes") == "2",
    )
    return yield_modes.shear_value(joint)


@formula("shear value")
def _(i: Inputs) -> float:
    return _yielding(i).force


@formula("shear mode")
def _(i: Inputs) -> str:
    return _yielding(i).mode


@formula("bending yield strength")
def _(i: Inputs) -> float:
    return yield_modes.bending_yield_strength(i.measure("D"))


@formula("toe-driven side length")
def _(i: Inputs) -> float:
    return fasteners.toe_lengths(i.measure("length"), i.measure("side"))[0]


@formula("toe-driven main length")
def _(i: Inputs) -> float:
    return fasteners.toe_lengths(i.measure("length"), i.measure("side"))[1]


@formula("group action")
def _(i: Inputs) -> float:
    return fasteners.group_action(
        int(i.word("count")),
        i.measure("spacing"),
        i.measure("D"),
        i.measure("Em") * i.measure("Am"),
        i.measure("Es") * i.measure("As"),
        steel_side=i.word("steel") == "yes",
    )


@formula("pull and shear")
def _(i: Inputs) -> float:
    return fasteners.pull_and_shear(
        i.word("kind"),  # type: ignore[arg-type]
        i.measure("withdrawal"),
        i.measure("lateral"),
        i.measure("angle"),
    )


@formula("penetration factor")
def _(i: Inputs) -> float:
    return fasteners.penetration_factor(i.word("kind"), i.measure("depth"), i.measure("D"))  # type: ignore[arg-type]


@formula("screw hole for pull")
def _(i: Inputs) -> float:
    return fasteners.screw_hole_for_pull(i.measure("G"), i.measure("root"))


@formula("narrowest lag hole")
def _(i: Inputs) -> float:
    return fasteners.lag_screw_hole(i.measure("G"), i.measure("D")).narrowest


@formula("widest lag hole")
def _(i: Inputs) -> float:
    return fasteners.lag_screw_hole(i.measure("G"), i.measure("D")).widest


@formula("widest nail hole")
def _(i: Inputs) -> float:
    return fasteners.widest_nail_hole(i.measure("G"), i.measure("D"))


@formula("narrowest bolt hole")
def _(i: Inputs) -> float:
    return fasteners.bolt_hole(i.measure("D")).narrowest


@formula("widest bolt hole")
def _(i: Inputs) -> float:
    return fasteners.bolt_hole(i.measure("D")).widest


def _pocket(field: str) -> Callable[[Inputs], float]:
    def measured(i: Inputs) -> float:
        path = pocket_screws.pocket_path(i.measure("stock"), i.measure("screw"), i.measure("mate"))
        return float(getattr(path, field))

    return measured


for _field in ("entry", "depth", "cover", "drift", "largest_grip"):
    FORMULAS[f"pocket {_field.replace('_', ' ')}"] = _pocket(_field)


# ------------------------------------------------------------------ Eurocode 5


@formula("EN embedment")
def _embedment(i: Inputs) -> float:
    return eurocode.embedment_strength(i.measure("D"), i.measure("density"), i.word("prebored") == "yes")


@formula("EN nail withdrawal")
def _nail_pull(i: Inputs) -> float:
    return eurocode.nail_withdrawal(
        i.measure("D"), i.measure("density"), i.measure("depth"), i.measure("head"), i.measure("under")
    )


@formula("EN nail shear design value")
def _(i: Inputs) -> float:
    strength_here = _embedment(i)
    sideways = eurocode.sideways_modes(
        i.measure("under"),
        i.measure("depth"),
        i.measure("D"),
        strength_here,
        strength_here,
        eurocode.yield_moment(i.measure("fu"), i.measure("D")),
    )
    shear = eurocode.shear_capacity(sideways, _nail_pull(i), "round nail")
    return eurocode.design_capacity(shear.force, i.measure("kmod"), i.measure("gamma"))


@formula("EN nails in a row")
def _(i: Inputs) -> float:
    return eurocode.nails_in_a_row(i.measure("spacing"), i.measure("D"))


@formula("EN screw withdrawal strength")
def _screw_strength(i: Inputs) -> float:
    return eurocode.screw_withdrawal_strength(i.measure("D"), i.measure("thread"), i.measure("density"))


@formula("EN screw withdrawal")
def _(i: Inputs) -> float:
    return eurocode.screw_withdrawal(
        _screw_strength(i), i.measure("D"), i.measure("thread"), i.measure("angle")
    )


# ------------------------------------------------------------------ stability

#: Side view: the tipping edge runs through x = 0, the piece stands at x above 0, height is the second number.
_EDGE = stability.TippingEdge((0.0, 1.0), (0.0, -1.0))


def _placed(i: Inputs, name: str) -> list[tuple[float, float, float]]:
    """``70@9,18 10@9,6``: force, place and height of each, in N and mm."""
    force_unit, length_unit = i.word("system", "lb,in").split(",")
    placed = []
    for one in i.word(name).split():
        force, _, place = one.partition("@")
        x, _, z = place.partition(",")
        placed.append(
            (
                float(force or 0) * INSIDE[force_unit],
                float(x) * INSIDE[length_unit],
                float(z) * INSIDE[length_unit],
            )
        )
    return placed


def _masses(i: Inputs) -> list[Mass]:
    return [Mass(force / NEWTON_PER_KG, x, 0.0, z) for force, x, z in _placed(i, "masses")]


@formula("tilt")
def _block(i: Inputs) -> float:
    return stability.tilt_over_block(i.measure("rise"), i.measure("base"))


def _tilt(i: Inputs) -> float:
    return _block(i) if "rise" in i else i.measure("tilt", 0.0)


def _balance(i: Inputs) -> stability.Balance:
    loads = [stability.Load(force, x, 0.0, z) for force, x, z in _placed(i, "load")]
    pushes = [stability.Push(force, x, 0.0, z) for force, x, z in _placed(i, "push")]
    return stability.balance(_EDGE, _masses(i), loads, pushes, _tilt(i))


@formula("restoring moment")
def _restoring(i: Inputs) -> float:
    return stability.restoring_moment(_EDGE, _masses(i), _tilt(i))


@formula("overturning moment")
def _(i: Inputs) -> float:
    return _balance(i).overturning


@formula("margin")
def _(i: Inputs) -> float:
    return _balance(i).margin


@formula("ratio")
def _(i: Inputs) -> float:
    return _balance(i).ratio


@formula("push that tips")
def _push(i: Inputs) -> float:
    return stability.push_that_tips(_restoring(i), i.measure("push"))


@formula("load that tips")
def _(i: Inputs) -> float:
    [(_, x, z)] = _placed(Inputs(f"at=@{i.word('at')}"), "at")
    return stability.load_that_tips(_EDGE, _restoring(i), x, 0.0, z, _tilt(i))


@formula("tilt that tips")
def _(i: Inputs) -> float:
    whole = combined(_masses(i))
    assert whole
    return stability.tilt_that_tips(_EDGE, whole)


@formula("slides first")
def _(i: Inputs) -> float:
    weight = sum(force for force, _, _ in _placed(i, "masses"))
    return float(stability.slides_first(_push(i), weight, i.measure("friction")))


@formula("restraint")
def _(i: Inputs) -> float:
    [(_, x, z)] = _placed(Inputs(f"strap=@{i.word('strap')}"), "strap")
    return stability.restraint_force(_balance(i).margin, z, x, i.measure("slope"))


@formula("wall-hung pull")
def _(i: Inputs) -> float:
    return stability.wall_hung_pull(i.measure("weight"), i.measure("out"), i.measure("above"))
