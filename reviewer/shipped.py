"""Texts that come with the package: its tables, its lists.

``importlib.resources`` reads them too, and loads twenty modules to do so, which is felt in a short review.
"""

from __future__ import annotations

import pkgutil


def shipped_text(package: str, name: str) -> str:
    """The text of a file beside a package's own. Raises OSError where there is none."""
    data = pkgutil.get_data(package, name)
    if data is None:
        raise FileNotFoundError(f"{package} is nowhere that files are read from")
    return data.decode("utf-8").replace("\r\n", "\n")
