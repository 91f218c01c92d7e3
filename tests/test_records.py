"""The quick named tuples do all that typing's do, as far as the project uses it."""

from __future__ import annotations

import pickle
import typing

import pytest

from reviewer.records import NamedTuple


class Quick(NamedTuple):
    """A page."""

    name: str
    size: float
    note: str | None = None

    @property
    def doubled(self) -> float:
        return self.size * 2


class Usual(typing.NamedTuple):
    """A page."""

    name: str
    size: float
    note: str | None = None

    @property
    def doubled(self) -> float:
        return self.size * 2


def test_the_class_is_as_typing_makes_it() -> None:
    for name in ("_fields", "_field_defaults", "__doc__", "__module__", "__match_args__", "__bases__"):
        assert getattr(Quick, name) == getattr(Usual, name)
    assert Quick.__qualname__ == Quick.__name__ == "Quick"
    assert typing.get_type_hints(Quick) == typing.get_type_hints(Usual)


def test_its_tuples_are_used_alike() -> None:
    quick, usual = Quick("rail", 2.5), Usual("rail", 2.5)
    assert quick == usual == ("rail", 2.5, None)
    assert quick.doubled == usual.doubled == 5.0
    assert quick._replace(note="x") == usual._replace(note="x") != quick
    assert quick._asdict() == usual._asdict()
    assert repr(quick) == repr(usual).replace("Usual", "Quick")
    assert pickle.loads(pickle.dumps(quick)) == quick
    with pytest.raises(AttributeError):
        quick.name = "other"  # type: ignore[misc]
    with pytest.raises(TypeError):
        Quick("rail")  # type: ignore[call-arg]
