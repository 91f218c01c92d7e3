"""Declarations and findings without their places, for what must stay the same when a text is set anew."""

from __future__ import annotations

import dataclasses
from typing import Any

from reviewer.language.reading import read
from reviewer.language.sharing import nothing_in_files
from reviewer.language.source import Span


def spanless(thing: Any) -> Any:
    """The same thing with every span in it left out, whatever it is made of."""
    if isinstance(thing, Span):
        return None
    if dataclasses.is_dataclass(thing) and not isinstance(thing, type):
        fields = dataclasses.fields(thing)
        return type(thing).__name__, *(spanless(getattr(thing, field.name)) for field in fields)
    if isinstance(thing, dict):
        return {key: spanless(value) for key, value in thing.items()}
    if isinstance(thing, tuple | list):
        return type(thing).__name__, *(spanless(item) for item in thing)
    return thing


def declared(text: str) -> Any:
    """What a text that reads declares, in order, without places."""
    found = read(text, nothing_in_files)
    assert found.problems == (), [problem.says for problem in found.problems]
    return spanless(found.statements)
