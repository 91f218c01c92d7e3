"""What the piece weighs, part by part, and where its weight acts."""

from __future__ import annotations

from reviewer.mechanics.mass import Mass
from reviewer.model.plan import Plan
from reviewer.reference.materials import material
from reviewer.setting_out.result import SettingOut

_CUBIC_MM_PER_M3 = 1e9


def part_masses(plan: Plan, setting: SettingOut) -> dict[str, Mass]:
    """Every placed part's mass (kg, at 12 % moisture) at its centre, in the order of the plan.

    Both are of its true shape: what is cut away weighs nothing, and a slanted part's centre is its own.
    """
    found = {}
    densities = {name: material(stock.material).density for name, stock in plan.stocks.items()}
    for name, solid in setting.solids.items():
        density = densities[plan.parts[name].stock]
        found[name] = Mass(solid.volume / _CUBIC_MM_PER_M3 * density, *solid.centre)
    return found
