"""Woods and panels: what a maker's words mean, and how stiff, heavy, restless and lasting the stuff is.

Values are means of clear wood (or a panel's own), fit for working out sag, weight and movement. Bending
strength is the mean at failure and never an allowable stress: for that see :mod:`reviewer.reference.grades`.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Literal

from reviewer.records import NamedTuple
from reviewer.reference.names import even
from reviewer.reference.sources import Standing, cited, named, standing
from reviewer.reference.tables import Row, table
from reviewer.reference.wordbook import wordbook
from reviewer.units import MPA_PER_PSI, NEWTON_PER_POUND

#: Water carried by wood at 12 % moisture, as a factor on its ovendry mass.
_MASS_AT_12_PERCENT = 1.12
_WATER = 1000.0  # kg/m³

Family = Literal["hardwood", "softwood", "panel"]


class Material(NamedTuple):
    """A wood or a panel. MPa, kg/m³, N; movement as a share of the size per percent of moisture."""

    key: str
    said: str  # its name for a person
    kind: Literal["species", "panel"]
    family: Family  # edge-glued panels of solid wood carry the family of their wood
    density: float  # kg/m³ at 12 % moisture
    specific_gravity: float | None  # ovendry mass over volume at 12 %; None for panels
    modulus_of_elasticity: float  # MPa, mean, along the grain of a board or of a panel's face
    modulus_across: float | None  # MPa; None where no value was found
    bending_strength: float  # MPa, mean at failure
    bending_strength_across: float | None
    movement_radial: float  # per percent of moisture, 6 to 14 %; 0 for panels that lie still
    movement_tangential: float
    shrinkage_radial: float | None  # percent, green to ovendry
    shrinkage_tangential: float | None
    side_hardness: float | None  # N
    decay: str  # resistance of the heartwood; empty where unknown
    blotches: str  # no, slight, moderate or severe; empty for panels
    bleeds: str  # what comes through paint; empty where nothing does
    creep_indoors: float  # the sag of years over the first sag
    creep_covered: float | None  # under a roof outdoors; None: not for damp places
    creep_exposed: float | None
    region: str
    source: str
    movement_source: str
    creep_source: str
    decay_source: str
    status: Standing
    movement_status: Standing
    note: str
    grained: bool = True  # False: fibres or chips that lie every which way
    shear_strength: float | None = None  # MPa, mean at failure along the grain; None for panels
    bearing_strength: float | None = None  # MPa across the grain, mean at the proportional limit

    @property
    def moves(self) -> bool:
        """True for solid wood, which swells and shrinks across its grain."""
        return self.movement_tangential > 0


class _Species(Row):
    key: str
    said: str
    type: str
    region: str
    sg_12pct: float | None
    moe_psi: float | None
    mor_psi: float | None
    cperp_psi: float | None
    shear_psi: float | None
    shrink_radial_pct: float | None
    shrink_tangential_pct: float | None
    c_radial: float
    c_tangential: float
    side_hardness_lbf: float | None
    decay_resistance: str
    blotches_under_stain: str
    bleed_through: str
    src_strength: str
    strength_status: str
    src_shrink: str
    src_coef: str
    coef_status: str
    src_decay: str
    notes: str


class _Panel(Row):
    key: str
    said: str
    stands_for_key: bool
    moves_like: str
    grained: bool
    creep_family: str
    region: str
    density_kg_m3: float | None
    moe_psi: float | None
    moe_cross_psi: float | None
    mor_psi: float | None
    mor_cross_psi: float | None
    shelf_moe_psi: float | None
    shelf_moe_cross_psi: float | None
    value_basis: str
    src_strength: str
    src_shelf: str
    status: str
    notes: str


class _Creep(Row):
    family: str
    indoors: float
    covered: float | None
    exposed: float | None
    src: str
    note: str


#: Boards that are alike in both directions of their face.
_EVEN_PANELS = frozenset({"particleboard", "MDF", "hardboard"})


@lru_cache(maxsize=1)
def _species() -> dict[str, _Species]:
    return {row.key: row for row in table("species.csv", _Species)}


@lru_cache(maxsize=1)
def _panels() -> dict[str, _Panel]:
    return {row.key: row for row in table("panels.csv", _Panel) if row.stands_for_key}


@lru_cache(maxsize=1)
def _creeps() -> dict[str, _Creep]:
    return {row.family: row for row in table("creep.csv", _Creep)}


def _mpa(psi: float | None) -> float | None:
    return None if psi is None else psi * MPA_PER_PSI


def _movement_standing(row: _Species) -> Standing:
    if "formula" not in row.coef_status:
        return standing(row.coef_status)
    # The formula gives the coefficient from the shrinkage, so it is as firm as the shrinkage was.
    return "from memory" if row.src_shrink.startswith("from memory") else "derived"


def _wood(row: _Species) -> Material:
    if row.sg_12pct is None or row.moe_psi is None or row.mor_psi is None:
        raise KeyError(row.key)  # the table knows only how it moves
    creep = _creeps()["solid wood"]
    hardness = row.side_hardness_lbf
    return Material(
        key=row.key,
        said=row.said,
        kind="species",
        family="hardwood" if row.type == "hardwood" else "softwood",
        density=row.sg_12pct * _MASS_AT_12_PERCENT * _WATER,
        specific_gravity=row.sg_12pct,
        modulus_of_elasticity=row.moe_psi * MPA_PER_PSI,
        modulus_across=None,
        bending_strength=row.mor_psi * MPA_PER_PSI,
        bending_strength_across=None,
        movement_radial=row.c_radial,
        movement_tangential=row.c_tangential,
        shrinkage_radial=row.shrink_radial_pct,
        shrinkage_tangential=row.shrink_tangential_pct,
        side_hardness=None if hardness is None else hardness * NEWTON_PER_POUND,
        decay=row.decay_resistance,
        blotches=row.blotches_under_stain,
        bleeds="" if row.bleed_through == "none" else row.bleed_through,
        creep_indoors=creep.indoors,
        creep_covered=creep.covered,
        creep_exposed=creep.exposed,
        region=row.region,
        source=cited(row.src_strength),
        movement_source=cited(row.src_coef),
        creep_source=cited(creep.src),
        decay_source=named(row.src_decay, row.src_decay),
        status=standing(row.strength_status),
        movement_status=_movement_standing(row),
        note=row.notes,
        shear_strength=_mpa(row.shear_psi),
        bearing_strength=_mpa(row.cperp_psi),
    )


def _panel(row: _Panel) -> Material:
    modulus = row.shelf_moe_psi or row.moe_psi
    if row.density_kg_m3 is None or modulus is None or row.mor_psi is None:
        raise KeyError(row.key)
    even = row.creep_family in _EVEN_PANELS
    across = modulus if even else row.shelf_moe_cross_psi or row.moe_cross_psi
    across_strength = row.mor_psi if even else row.mor_cross_psi
    wood = _wood(_species()[row.moves_like]) if row.moves_like else None
    creep = _creeps()[row.creep_family]
    return Material(
        key=row.key,
        said=row.said,
        kind="panel",
        family=wood.family if wood else "panel",
        density=row.density_kg_m3,
        specific_gravity=wood.specific_gravity if wood else None,
        modulus_of_elasticity=modulus * MPA_PER_PSI,
        modulus_across=_mpa(across),
        bending_strength=row.mor_psi * MPA_PER_PSI,
        bending_strength_across=_mpa(across_strength),
        movement_radial=wood.movement_radial if wood else 0.0,
        movement_tangential=wood.movement_tangential if wood else 0.0,
        shrinkage_radial=wood.shrinkage_radial if wood else None,
        shrinkage_tangential=wood.shrinkage_tangential if wood else None,
        side_hardness=wood.side_hardness if wood else None,
        decay=wood.decay if wood else "",
        blotches=wood.blotches if wood else "",
        bleeds=wood.bleeds if wood else "",
        creep_indoors=creep.indoors,
        creep_covered=creep.covered,
        creep_exposed=creep.exposed,
        region=row.region,
        source=cited(row.src_shelf or row.src_strength),
        movement_source=wood.movement_source if wood else "sheets lie still in their plane (from memory)",
        creep_source=cited(creep.src),
        decay_source=wood.decay_source if wood else "",
        status=standing(row.status),
        movement_status=wood.movement_status if wood else "from memory",
        note=f"{row.value_basis}; {row.notes}" if row.notes else row.value_basis,
        grained=row.grained,
        shear_strength=wood.shear_strength if wood else None,
        bearing_strength=wood.bearing_strength if wood else None,
    )


@lru_cache(maxsize=256)
def material(key: str) -> Material:
    """The wood or panel of a key as :func:`find_material` gives it. Raises KeyError for any other."""
    panel = _panels().get(key)
    return _panel(panel) if panel else _wood(_species()[key])


@lru_cache(maxsize=1)
def material_keys() -> tuple[str, ...]:
    """Every key that :func:`material` takes, in alphabetical order."""
    woods = (key for key, row in _species().items() if row.sg_12pct and row.moe_psi and row.mor_psi)
    return tuple(sorted((*woods, *_panels())))


def find_material(words: str) -> str | None:
    """The key of what a maker writes ("SPF", "red oak", "birch plywood"); None where that is not clear.

    Words with several meanings give the usual one where there is one; :func:`candidates` tells them all.
    An edge-glued panel of a wood that has no row as a panel is that wood: its staves lie with the grain.
    """
    known = wordbook("material").find(words)
    if known is None and (wood := _staves(words)):
        known = wordbook("material").find(wood)
    return known


def _staves(words: str) -> str:
    """``beech`` of “edge-glued beech panel”: what the staves of a panel are; empty for anything else.

    What has a row under its whole name, or could be one of several such, is left to that.
    """
    book = wordbook("material")
    plain = even(words)
    wood = wordbook("panel").translated(plain)
    if wood == plain or book.candidates(words):
        return ""
    keys = book.candidates(wood)
    return wood if keys and not any(key in _panels() for key in keys) else ""


def candidates(words: str) -> tuple[str, ...]:
    """Every key that a maker's words can mean, the usual one first; empty when nothing is so called."""
    book = wordbook("material")
    return book.candidates(words) or book.candidates(_staves(words))


def material_names() -> tuple[str, ...]:
    """All words that name a material, to find near names among."""
    return wordbook("material").spoken
