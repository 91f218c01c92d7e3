"""Named tuples and data classes that are made quickly, for all that a cold review on the terminal loads.

``NamedTuple`` here is :class:`typing.NamedTuple` to a type checker, and does the same in use. ``typing``
compiles the type of every field when a class is made, which takes three times as long as making the class,
and a review makes over two hundred. Here the fields are taken at their word; mypy checks them.

``dataclass`` is :func:`dataclasses.dataclass` likewise, for frozen classes without slots: that one writes and
compiles six functions for each class, here all classes share theirs. ``dataclasses.replace`` and ``fields``
work on what it makes.
"""

from __future__ import annotations

from collections import namedtuple
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from dataclasses import dataclass as dataclass
    from typing import NamedTuple as NamedTuple
else:
    import dataclasses

    #: What a class statement writes down by itself, and what the tuple has already.
    _LEFT = frozenset({"__annotations__", "__module__", "__qualname__", "__doc__"})

    class _Making(type):
        def __new__(cls, name: str, bases: tuple[type, ...], body: dict[str, Any]) -> type:
            fields = body["__annotations__"]
            defaults = [body[field] for field in fields if field in body]
            made = namedtuple(name, fields, defaults=defaults, module=body["__module__"])
            made.__annotations__ = fields
            made.__qualname__ = body["__qualname__"]
            made.__doc__ = body.get("__doc__")
            for key, value in body.items():
                if key not in fields and key not in _LEFT:
                    setattr(made, key, value)
            return made

    NamedTuple = type.__new__(_Making, "NamedTuple", (), {})

    def _refuse(self: Any, name: str, value: object = None) -> None:
        raise dataclasses.FrozenInstanceError(f"cannot assign to field {name!r}")

    def dataclass(*, frozen: bool, eq: bool = True) -> Callable[[type], type]:
        """As :func:`dataclasses.dataclass`: compared by fields or, without ``eq``, equal only to itself."""
        if not frozen:
            raise TypeError("only what is frozen is made here")

        def make(cls: type) -> type:
            made = dataclasses.dataclass(init=False, repr=False, eq=False)(cls)
            fields = dataclasses.fields(made)
            names = tuple(each.name for each in fields)
            known = frozenset(names)
            defaults = {each.name: each.default for each in fields if each.default is not dataclasses.MISSING}
            factories = [each for each in fields if each.default_factory is not dataclasses.MISSING]

            def start(self: Any, *given: Any, **named: Any) -> None:
                if not given and named.keys() == known:  # as most are made: all by name
                    self.__dict__.update(named)
                    return
                if len(given) > len(names) or not named.keys() <= known.difference(names[: len(given)]):
                    raise TypeError(f"{cls.__name__} is made of {', '.join(names)}, each given once")
                if len(given) + len(named) == len(names):  # nothing is left to its default
                    self.__dict__.update(zip(names, given, strict=False), **named)
                    return
                values = {**defaults, **dict(zip(names, given, strict=False)), **named}
                for each in factories:
                    if each.name not in values:
                        values[each.name] = each.default_factory()
                if len(values) < len(names):
                    raise TypeError(f"{cls.__name__} lacks {', '.join(sorted(known.difference(values)))}")
                self.__dict__.update(values)

            def shown(self: Any) -> str:
                held = ", ".join(f"{name}={getattr(self, name)!r}" for name in names)
                return f"{cls.__qualname__}({held})"

            def compared(self: Any) -> tuple[Any, ...]:
                held = self.__dict__
                return tuple([held[name] for name in names])

            def equal(self: Any, other: object) -> bool:
                return compared(self) == compared(other) if other.__class__ is made else NotImplemented

            made.__init__, made.__repr__ = start, shown
            made.__setattr__ = made.__delattr__ = _refuse
            if eq:
                made.__eq__, made.__hash__ = equal, lambda self: hash(compared(self))
            return made

        return make
