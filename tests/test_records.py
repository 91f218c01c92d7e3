"""The quick named tuples and data classes do what the standard library's do, as far as the project uses it."""

from __future__ import annotations

import dataclasses
import pickle
import typing
from functools import cached_property

import pytest

from reviewer.records import NamedTuple, dataclass


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


@dataclass(frozen=True)
class QuickBoard:
    """A page."""

    name: str
    sizes: tuple[float, ...]
    notes: dict[str, str] = dataclasses.field(default_factory=dict)
    price: float | None = None

    @cached_property
    def most(self) -> float:
        return max(self.sizes)


@dataclasses.dataclass(frozen=True)
class UsualBoard:
    """A page."""

    name: str
    sizes: tuple[float, ...]
    notes: dict[str, str] = dataclasses.field(default_factory=dict)
    price: float | None = None

    @cached_property
    def most(self) -> float:
        return max(self.sizes)


@dataclass(frozen=True, eq=False)
class Single:
    name: str


@pytest.mark.parametrize("kind", [QuickBoard, UsualBoard])
def test_data_classes_are_used_alike(kind: type) -> None:
    board = kind("rail", (2.0, 3.5), price=4.0)
    assert repr(board) == f"{kind.__name__}(name='rail', sizes=(2.0, 3.5), notes={{}}, price=4.0)"
    assert board == kind(name="rail", sizes=(2.0, 3.5), notes={}, price=4.0) != kind("rail", (2.0,))
    assert board.__eq__(("rail", (2.0, 3.5), {}, 4.0)) is NotImplemented
    assert board.most == 3.5
    changed = dataclasses.replace(board, price=5.0)
    assert (changed.price, changed.notes) == (5.0, {})
    assert kind("a", ()).notes is not kind("a", ()).notes
    assert [each.name for each in dataclasses.fields(board)] == ["name", "sizes", "notes", "price"]
    with pytest.raises(dataclasses.FrozenInstanceError):
        board.price = 1.0
    with pytest.raises(dataclasses.FrozenInstanceError):
        del board.price
    with pytest.raises(TypeError):
        hash(board)  # its notes have no hash
    assert pickle.loads(pickle.dumps(board)) == board


@pytest.mark.parametrize("kind", [QuickBoard, UsualBoard])
@pytest.mark.parametrize(
    ("given", "named"),
    [
        ((), {"name": "rail"}),
        (("rail",), {}),
        (("rail", (), {}, None, 1), {}),
        (("rail", ()), {"name": "rail"}),
        (("rail", ()), {"colour": "red"}),
    ],
)
def test_what_does_not_fit_is_refused(
    kind: type, given: tuple[object, ...], named: dict[str, object]
) -> None:
    with pytest.raises(TypeError):
        kind(*given, **named)


def test_without_comparing_each_is_itself() -> None:
    one = Single("rail")
    assert one == one
    assert one != Single("rail")
    assert len({one, Single("rail")}) == 2
