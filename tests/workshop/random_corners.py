"""Corners of furniture made at random, always the same ones: a post, two rails and a top, fastened anyhow."""

from __future__ import annotations

import random
from collections.abc import Iterator

_SCREWS = ("screws #8 x 2", "screws #10 x 2 1/2", "screws #6 x 1 1/2", "nails 2 1/2", "screws 5 x 60 mm")


def _one_of(rng: random.Random, *words: str) -> str:
    return rng.choice(words)


def _inches(rng: random.Random, low: float, high: float) -> str:
    return f"{rng.uniform(low, high):.2f}"


def _fastened(rng: random.Random, side: str) -> str:
    kind = rng.random()
    ends = f", {_inches(rng, 0.3, 1.4)} from ends" if rng.random() < 0.7 else ""
    many = rng.randint(1, 3)
    if kind < 0.2:
        return f"dowels 3/8 x {_inches(rng, 1, 2.5)}, {many} per joint{ends}, glue"
    if kind < 0.4:
        return f"pocket screws {_one_of(rng, '1 1/4', '1 1/2', '2 1/2')}, {many} per joint{ends}"
    slant = f", at {rng.randint(5, 30)} degrees" if kind > 0.85 else ""
    bored = f", counterbored {_inches(rng, 0.1, 0.5)}" if rng.random() < 0.3 else ""
    return f"{rng.choice(_SCREWS)}, {many} per joint{ends}{side}{slant}{bored}"


def corners(count: int, seed: int, shaped: bool = False) -> Iterator[str]:
    """So many plans in inches. ``shaped`` gives the posts tapers, notches and grooves."""
    rng = random.Random(seed)
    for _ in range(count):
        post = rng.choice((1.5, 2.0, 2.5, 3.5))
        thick, wide = rng.choice((0.75, 1.0, 1.5)), rng.choice((2.5, 3.5, 5.5))
        shape = ""
        if shaped:
            shape = rng.choice(
                (
                    f"\n    taper to {post / 2} at top end over {rng.choice((4, 10))} on {rng.choice(('left', 'right', 'back'))}",
                    f"\n    notch {post / 3:.2f} deep by {wide / 2:.2f} tall at {rng.choice(('front', 'back'))} top",
                    f"\n    groove {post / 3:.2f} by {post / 3:.2f} into right",
                    "",
                )
            )
        yield f"""
plan "Corner" in inches
stock post: actual {post} x {post} pine
stock rail: actual {thick} x {wide} pine
part post: post, upright, facing front, 20 tall, on floor, left at 0, front at 0{shape}
part rail: rail, across, on edge, 12 long, left at {post}, front at {_inches(rng, 0, post - 0.5)}
    bottom at {20 - wide - rng.choice((0, 0.5, 1.0))}
part end: rail, deep, on edge, 12 long, front at {post}, left at {_inches(rng, 0, post - 0.5)}
    bottom at {20 - wide - rng.choice((0, 0.5, 1.0))}
part top: rail, across, flat, 14 long, on post, left at 0, front at 0
join rail to post: {_fastened(rng, ", from left")}
join end to post: {_fastened(rng, ", from front")}
join top to post: {_fastened(rng, ", from above")}
"""
