"""`NamedTuple` as `typing` has it, made in a tenth of the time: a start makes a hundred kinds of record.

What `typing` adds to `collections.namedtuple` is a look at every annotation, which the type checker has had before;
what `namedtuple` does for each kind is to compile the text of its `__new__` and to make methods that are all alike.
A module that makes records here begins with `from __future__ import annotations`.
"""

from __future__ import annotations

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import NamedTuple as NamedTuple
else:
    from _collections import _tuplegetter
    from functools import cache
    from types import FunctionType

    class _Record(tuple):
        """What all records do."""

        __slots__ = ()
        _fields = ()

        @classmethod
        def _make(cls, values):
            found = tuple.__new__(cls, values)
            if len(found) != len(cls._fields):
                raise TypeError(f"Expected {len(cls._fields)} arguments, got {len(found)}")
            return found

        def _replace(self, /, **changed):
            found = tuple.__new__(type(self), map(changed.pop, self._fields, self))
            if changed:
                raise ValueError(f"Got unexpected field names: {list(changed)!r}")
            return found

        def _asdict(self):
            return dict(zip(self._fields, self, strict=True))

        def __repr__(self):
            told = ", ".join(f"{name}={value!r}" for name, value in zip(self._fields, self, strict=True))
            return f"{type(self).__name__}({told})"

        def __getnewargs__(self):
            return tuple(self)

    @cache
    def _new_of(count):
        """Return the code that makes records of so many fields, which has yet to be given their names."""
        given = "".join(f"_{place}, " for place in range(count))
        return eval(f"lambda _cls, {given}: new(_cls, ({given}))").__code__

    class _Kind(type):
        """Makes a kind of record of the body of a class: its fields, their defaults, and its methods."""

        def __new__(cls, name, bases, body):
            fields = tuple(body.get("__annotations__", ()))
            defaults = {field: body.pop(field) for field in fields if field in body}
            code = _new_of(len(fields)).replace(co_name="__new__", co_varnames=("_cls", *fields))
            new = FunctionType(code, {"new": tuple.__new__}, "__new__", tuple(defaults.values()))
            new.__qualname__ = f"{name}.__new__"
            getters = {field: _tuplegetter(place, "") for place, field in enumerate(fields)}
            own = {"__slots__": (), "__new__": new, "__match_args__": fields}
            own |= {"_fields": fields, "_field_defaults": defaults}
            return type(name, (_Record,), {**own, **getters, **body})

    NamedTuple = type.__new__(_Kind, "NamedTuple", (), {})
