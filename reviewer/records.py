"""Named tuples whose classes are made quickly, for everything that a cold review on the terminal loads.

``NamedTuple`` here is :class:`typing.NamedTuple` to a type checker, and does the same in use. ``typing``
compiles the type of every field when a class is made, which takes three times as long as making the class,
and a review makes over two hundred. Here the fields are taken at their word; mypy checks them.
"""

from __future__ import annotations

from collections import namedtuple
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from typing import NamedTuple as NamedTuple
else:
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
