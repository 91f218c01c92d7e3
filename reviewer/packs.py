"""Which packages an entry point names, as :func:`importlib.metadata.entry_points` finds them.

That module loads forty others (mail, sockets, archives) to read what are a few small files, and a short
review would wait longer for it than for its plan. Here the files are read themselves, from the folders of the
import path; where that path has more than plain folders, or somebody else finds what is installed, the
library is still the one that is asked.
"""

from __future__ import annotations

import os
import sys
from importlib.machinery import PathFinder

_KEPT_IN = (".dist-info", ".egg-info")


def named(group: str) -> list[str]:
    """The packages that the entry points of a group name, in order. Reads what is installed, nothing else."""
    found = _in_folders(group)
    if found is None:
        from importlib.metadata import entry_points

        found = {point.value for point in entry_points(group=group)}
    return sorted(found)


def _in_folders(group: str) -> set[str] | None:
    """The same out of the folders of the import path; None where something else may have some."""
    if any(hasattr(each, "find_distributions") and each is not PathFinder for each in sys.meta_path):
        return None
    found: set[str] = set()
    known: set[str] = set()  # of two of one name the first on the path counts
    for folder in sys.path:
        try:
            names = os.listdir(folder or ".")
        except NotADirectoryError:
            return None
        except OSError:
            continue
        for name in names:
            low = name.lower()
            if low == "egg-info":
                return None
            if not low.endswith(_KEPT_IN):
                continue
            project = low.rpartition(".")[0].partition("-")[0].replace(".", "_")
            if project not in known:
                known.add(project)
                found.update(_values(os.path.join(folder, name, "entry_points.txt"), group))
    return found


def _values(path: str, group: str) -> list[str]:
    """What the entry points of a group have for values in one file; none where there is no such file."""
    try:
        with open(path, encoding="utf-8") as file:
            text = file.read()
    except OSError:
        return []
    values: list[str] = []
    inside = False
    for line in map(str.strip, text.splitlines()):
        if line.startswith("[") and line.endswith("]"):
            inside = line[1:-1] == group
        elif inside and line and not line.startswith("#"):
            values.append(line.partition("=")[2].strip())
    return values
