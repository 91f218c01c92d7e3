"""Writes the lists of rules anew: ``python -m reviewer.shelf``, after a rule or its decorator changes.

With names of packages it writes those packages' lists, as a workshop does for a pack of its own; else the
lists of all packages of rules that lie in this project. A test holds ours to the files.
"""

from __future__ import annotations

import importlib
import json
import sys
from collections.abc import Sequence
from pathlib import Path

from reviewer.rulebook import LIST, modules, packages, rules_in

#: Where the packages lie that are ours.
OURS = "reviewer.rules."


def list_of(package_name: str) -> str:
    """The text of a package's list, a file a line. Raises ValueError when it has packages within it."""
    made = {name.removeprefix(f"{package_name}."): rules_in(name) for name in modules(package_name)}
    within = [name for name in made if "." in name]
    if within:
        raise ValueError(f"{package_name} has folders in it ({within[0]}): only a flat package has a list")
    lines = (
        f"{json.dumps(module)}: {json.dumps([rule.facts for rule in rules])}"
        for module, rules in sorted(made.items())
    )
    return "{\n" + ",\n".join(lines) + "\n}\n"


def main(names: Sequence[str]) -> None:
    """Write the lists, and say which."""
    for name in names or [name for name in packages() if name.startswith(OURS)]:
        (folder,) = importlib.import_module(name).__path__
        written = Path(folder) / LIST
        written.write_text(list_of(name), encoding="utf-8")
        print(written)


if __name__ == "__main__":
    main(sys.argv[1:])
