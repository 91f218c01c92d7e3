"""Random pieces of stacked boards, and the same pieces in a general structural solver (PyNiteFEA, test-only).

Posts carry beams, beams carry cross bars, and these carry boards. The solver knows nothing of the plan but
the measures that were diced: where each board lies, what rests on it, and what is put on it.
"""

from __future__ import annotations

import random
from dataclasses import dataclass, field
from typing import NamedTuple

from Pynite import FEModel3D

from reviewer.units import NEWTON_PER_KG

YOUNG = 10_000.0
#: Sections (mm): posts, beams, cross bars and boards, the width first that lies along what they cross.
POST, BEAM, BAR, BOARD = (60.0, 60.0), (40.0, 100.0), (40.0, 60.0), (120.0, 25.0)


class Layer(NamedTuple):
    """One level board: from where to where it runs along its axis, and where it lies on the other (mm)."""

    name: str
    axis: int
    start: float
    end: float
    beside: float  # its middle line on the other level axis
    on: tuple[tuple[str, float], ...]  # what it rests on, and where along it


@dataclass
class Piece:
    """A piece as diced: its plan, and its level boards from the top down."""

    text: str
    layers: list[Layer]
    spots: dict[str, list[tuple[float, float]]] = field(default_factory=dict)  # from its low end: mm, N
    spread: dict[str, float] = field(default_factory=dict)  # N all over a board


def _spots(dice: random.Random, low: float, high: float, count: int, apart: float) -> list[float]:
    """So many places in order, at least so far apart, in steps of 10 mm.

    Nodes that all but meet would cost the solver the digits that are asked of it.
    """
    room = high - low - apart * (count - 1)
    cuts = sorted(dice.uniform(0, room) for _ in range(count))
    return [round(low + cut + apart * number, -1) for number, cut in enumerate(cuts)]


def random_piece(seed: int) -> Piece:
    """A piece of stacked boards; every other one lies on two supports throughout, so that statics settle it."""
    dice = random.Random(seed)
    most = 2 if seed % 2 else 4
    wide, deep = round(dice.uniform(1400, 2600), -1), round(dice.uniform(800, 1400), -1)
    beams = _spots(dice, 100, deep - 100, dice.randint(2, min(most, 3)), 180)
    bars = _spots(dice, 100, wide - 100, dice.randint(2, most), 210)
    boards = _spots(dice, 150, deep - 150, dice.randint(1, 3), 140)
    lines = [
        f'plan "Stack {seed}" in millimetres',
        f"stock post: actual {POST[0]:g} x {POST[1]:g} spruce-pine-fir",
        f"stock beam: actual {BEAM[0]:g} x {BEAM[1]:g} spruce-pine-fir",
        f"stock bar: actual {BAR[0]:g} x {BAR[1]:g} spruce-pine-fir",
        f"stock board: actual {BOARD[1]:g} x {BOARD[0]:g} pine",
        "room hall: indoors",
    ]
    layers: list[Layer] = []
    for number, middle in enumerate(beams, 1):
        name = f"beam.{number}"
        legs = _spots(dice, 60, wide - 60, dice.randint(2, most), 180)
        for leg, at in enumerate(legs, 1):
            lines.append(
                f"part leg.{number}.{leg}: post, upright, 400 tall, on floor, left at {at - 30:g}, "
                f"front at {middle - 30:g}"
            )
        lines.append(
            f"part {name}: beam, across, on edge, {wide:g} long, left at 0, "
            f"front at {middle - 20:g}, bottom at 400"
        )
        lines.append(f"join {name} to leg.{number}.*: screws 5 x 120, 2 per joint")
        on = tuple((f"leg.{number}.{leg}", at) for leg, at in enumerate(legs, 1))
        layers.append(Layer(name, 0, 0.0, wide, middle, on))
    for number, middle in enumerate(bars, 1):
        name = f"bar.{number}"
        lines.append(
            f"part {name}: bar, deep, on edge, {deep:g} long, front at 0, left at {middle - 20:g}, "
            "bottom at 500"
        )
        lines.append(f"join {name} to beam.*: screws 5 x 90, 2 per joint")
        on = tuple((f"beam.{each}", at) for each, at in enumerate(beams, 1))
        layers.append(Layer(name, 1, 0.0, deep, middle, on))
    piece = Piece("", layers)
    for number, middle in enumerate(boards, 1):
        name = f"board.{number}"
        lines.append(
            f"part {name}: board, across, flat, {wide:g} long, left at 0, front at {middle - 60:g}, "
            "bottom at 560"
        )
        lines.append(f"join {name} to bar.*: screws 4 x 50, 2 per joint")
        on = tuple((f"bar.{each}", at) for each, at in enumerate(bars, 1))
        layers.append(Layer(name, 0, 0.0, wide, middle, on))
    for layer in layers:
        for _ in range(dice.randint(0, 2) + (layer.name == "board.1")):
            kg = round(dice.uniform(1, 80), 2)
            end = "left" if layer.axis == 0 else "front"
            kind = dice.choice(["spot", "all", "metre"])
            if kind == "spot":
                at = round(dice.uniform(0, layer.end), 2)
                lines.append(f"load {layer.name}: {kg} kg at {at} from {end}")
                piece.spots.setdefault(layer.name, []).append((at, kg * NEWTON_PER_KG))
            elif kind == "all":
                lines.append(f"load {layer.name}: {kg} kg")
                piece.spread[layer.name] = piece.spread.get(layer.name, 0.0) + kg * NEWTON_PER_KG
            else:
                lines.append(f"load {layer.name}: {kg} kg per metre")
                force = kg * NEWTON_PER_KG * layer.end / 1000
                piece.spread[layer.name] = piece.spread.get(layer.name, 0.0) + force
    piece.text = "\n".join(lines)
    piece.layers.reverse()
    return piece


def _model() -> FEModel3D:
    model = FEModel3D()
    model.add_material("wood", YOUNG, YOUNG / 2.6, 0.3, 0.0)
    model.add_section("board", 1000.0, 1e6, 1e6, 1e6)
    return model


def reactions_one_by_one(piece: Piece, weights: dict[str, float]) -> dict[tuple[str, str], float]:
    """Every board by itself on supports that do not give, from the top down; reactions become loads below."""
    found: dict[tuple[str, str], float] = {}
    arriving: dict[str, list[tuple[float, float]]] = {}
    for layer in piece.layers:
        model = _model()
        places = sorted({layer.start, layer.end, *(at for _, at in layer.on)})
        held = {at: to for to, at in layer.on}
        for number, place in enumerate(places):
            model.add_node(f"N{number}", place, 0.0, 0.0)
            first = number == 0
            model.def_support(f"N{number}", first, place in held, True, first, True, False)
        model.add_member("board", "N0", f"N{len(places) - 1}", "wood", "board")
        whole = weights[layer.name] + piece.spread.get(layer.name, 0.0)
        model.add_member_dist_load("board", "FY", -whole / layer.end, -whole / layer.end)
        for place, force in (*piece.spots.get(layer.name, ()), *arriving.get(layer.name, ())):
            model.add_member_pt_load("board", "FY", -force, place)
        model.analyze_linear()
        for number, place in enumerate(places):
            if place in held:
                force = float(model.nodes[f"N{number}"].RxnFY["Combo 1"])
                found[layer.name, held[place]] = force
                arriving.setdefault(held[place], []).append((layer.beside, force))
    return found


def reactions_at_once(piece: Piece, weights: dict[str, float]) -> dict[str, float]:
    """The whole piece in one model, boards on struts: what arrives at each post, however the boards give."""
    model = _model()
    model.add_section("strut", 1000.0, 1e6, 1e6, 1e6)
    heights = {"beam": 0.0, "bar": 500.0, "board": 1000.0}
    on_it: dict[str, list[tuple[str, float]]] = {}
    for layer in piece.layers:
        for to, _ in layer.on:
            on_it.setdefault(to, []).append((layer.name, layer.beside))
    node_of: dict[tuple[str, float], str] = {}
    posts: dict[str, str] = {}
    for layer in piece.layers:
        places = {layer.start, layer.end, *(at for _, at in layer.on)}
        places |= {at for _, at in on_it.get(layer.name, ())}
        height = heights[layer.name.partition(".")[0]]
        ordered = sorted(places)
        for place in ordered:
            node = f"{layer.name}@{place}"
            node_of[layer.name, place] = node
            across, along = (place, layer.beside) if layer.axis == 0 else (layer.beside, place)
            model.add_node(node, across, height, along)
            bends_about_z = layer.axis == 0
            model.def_support(node, True, False, True, bends_about_z, True, not bends_about_z)
        for to, at in layer.on:
            if to.startswith("leg"):
                posts[to] = node_of[layer.name, at]
                bends = layer.axis == 0
                model.def_support(posts[to], True, True, True, bends, True, not bends)
        ends = node_of[layer.name, ordered[0]], node_of[layer.name, ordered[-1]]
        model.add_member(layer.name, *ends, "wood", "board")
        whole = (weights[layer.name] + piece.spread.get(layer.name, 0.0)) / layer.end
        model.add_member_dist_load(layer.name, "FY", -whole, -whole)
        for place, force in piece.spots.get(layer.name, ()):
            model.add_member_pt_load(layer.name, "FY", -force, place)
    for layer in piece.layers:
        for to, at in layer.on:
            if not to.startswith("leg"):
                upper, lower = node_of[layer.name, at], node_of[to, layer.beside]
                name = f"{layer.name} on {to}"
                model.add_member(name, lower, upper, "wood", "strut")
                free = (False, False, False, True, True, True)
                model.def_releases(name, *free[:3], False, *free[4:], *free[:3], True, *free[4:])
    model.analyze_linear()
    return {post: float(model.nodes[node].RxnFY["Combo 1"]) for post, node in posts.items()}
