"""Circles in what leads to what. By itself, because importing a graph library takes longer than a review."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence


def circles(leads: Mapping[str, Sequence[str]]) -> Iterator[frozenset[str]]:
    """The groups of two or more from each of which a way leads to all the others of its group.

    ``leads`` has where each leads directly; whom it lacks leads nowhere. Nothing is in two groups. Source:
    Tarjan, Depth-first search and linear graph algorithms, 1972, without his recursion.
    """
    number: dict[str, int] = {}
    lowest: dict[str, int] = {}
    path: list[str] = []  # found, and not yet known to be of a finished group
    on_path: set[str] = set()
    for start in leads:
        if start in number:
            continue
        walk = [(start, iter(leads[start]))]
        number[start] = lowest[start] = len(number)
        path.append(start)
        on_path.add(start)
        while walk:
            name, others = walk[-1]
            for other in others:
                if other not in number:
                    number[other] = lowest[other] = len(number)
                    path.append(other)
                    on_path.add(other)
                    walk.append((other, iter(leads.get(other, ()))))
                    break
                if other in on_path:
                    lowest[name] = min(lowest[name], number[other])
            else:
                walk.pop()
                if walk:
                    before = walk[-1][0]
                    lowest[before] = min(lowest[before], lowest[name])
                if lowest[name] == number[name]:
                    group = [path.pop()]
                    while group[-1] != name:
                        group.append(path.pop())
                    on_path.difference_update(group)
                    if len(group) > 1:
                        yield frozenset(group)
