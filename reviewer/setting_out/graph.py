"""The part-and-joint graph, with the floor and the wall as nodes. One pass a relation; rules only ask it."""

from __future__ import annotations

from typing import TYPE_CHECKING

import networkx

from reviewer.model.plan import FLOOR, WALL

if TYPE_CHECKING:
    from reviewer.setting_out.result import SettingOut


def part_and_joint_graph(setting: SettingOut) -> networkx.Graph[str]:
    """Nodes: parts, ``floor``, ``wall``. Edges carry ``contacts``, ``overlaps`` and ``joints`` tuples."""
    graph: networkx.Graph[str] = networkx.Graph()
    graph.add_nodes_from((FLOOR, WALL))
    graph.add_nodes_from(setting.solids)

    def edge(one: str, two: str) -> dict[str, tuple[object, ...]]:
        if not graph.has_edge(one, two):
            graph.add_edge(one, two, contacts=(), overlaps=(), joints=())
        found: dict[str, tuple[object, ...]] = graph.edges[one, two]
        return found

    for contact in setting.contacts:
        data = edge(contact.first, contact.second)
        data["contacts"] = (*data["contacts"], contact)
    for overlap in setting.overlaps:
        data = edge(overlap.first, overlap.second)
        data["overlaps"] = (*data["overlaps"], overlap)
    for joint in setting.joints:
        if joint.meets:
            data = edge(joint.left, joint.right)
            data["joints"] = (*data["joints"], joint)
    for restraint in setting.restraints:
        for part in restraint.what:
            if part in graph:
                edge(part, WALL)
    return graph
