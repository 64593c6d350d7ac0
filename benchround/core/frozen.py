"""`dataclass` made sooner, for the many frozen classes of a start.

The standard decorator writes and compiles six methods for every frozen class, half a millisecond
each time; with some two hundred classes that is most of a start. Here only `__init__` is compiled,
and that once a class has proved to be made often; the other methods are shared closures, and the
table of fields is drawn up when it is asked for. Classes behave as the standard ones do, which the
tests hold against each other.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from dataclasses import dataclass as dataclass  # checkers take it for the standard one
else:
    from collections.abc import Callable, Mapping
    from dataclasses import MISSING, Field, FrozenInstanceError, field
    from dataclasses import dataclass as standard
    from itertools import count
    from operator import attrgetter
    from typing import Any

    FIELDS, PARAMS = "__dataclass_fields__", "__dataclass_params__"
    FEW = 60
    """Objects of a class that are filled field by field; compiling takes as long as so many."""

    def dataclass(cls: type | None = None, /, **how: bool) -> Any:
        """The standard `dataclass`; made sooner where it is frozen and has no such parents.

        Raises:
            TypeError: a field is keyword-only or no argument, which is not made here.
        """
        if cls is None:
            return lambda found: dataclass(found, **how)
        others = how.keys() - {"frozen", "slots"}
        if not how.get("frozen") or others or _has_made_parents(cls):
            return standard(cls, **how)
        own = frozenset(vars(cls))
        told = _told_fields(cls)
        if any(more.kw_only is True or not more.init for more in told.values()):
            raise TypeError(f"{cls.__name__}: take the standard dataclass for such fields")
        table = _Table(cls, vars(cls).get("__annotations__", {}))
        made = _slotted(cls, table.names) if how.get("slots") else _plain(cls, told)
        table.owner = made
        setattr(made, FIELDS, table)
        setattr(made, PARAMS, _PARAMS)
        for name, method in _methods(made, table.names, table.given, told).items():
            if name not in own:
                method.__qualname__ = f"{made.__qualname__}.{name}"
                setattr(made, name, method)
        if "__match_args__" not in own:
            made.__match_args__ = table.names
        return made

    @standard(frozen=True)
    class _Asked:
        """Lends what the standard decorator notes of a class and its fields and is asked for."""

        anything: int

    _PARAMS = getattr(_Asked, PARAMS)
    _ARGUMENT = getattr(_Asked, FIELDS)["anything"]._field_type

    class _Table:
        """Stands in for a class's table of fields until somebody asks for it."""

        def __init__(self, cls: type, types: Mapping[str, object]) -> None:
            self.types = {name: said for name, said in types.items() if not _of_class(said)}
            self.names = tuple(self.types)
            self.given = {name: vars(cls)[name] for name in self.names if name in vars(cls)}
            self.owner = cls

        def __get__(self, made: object, of: type) -> dict[str, Field[Any]]:
            table = {name: self._field(name) for name in self.names}
            setattr(self.owner, FIELDS, table)
            return table

        def _field(self, name: str) -> Field[Any]:
            given = self.given.get(name, MISSING)
            found = given if isinstance(given, Field) else field(default=given)
            found.name, found.type, found.kw_only = name, self.types[name], False
            found._field_type = _ARGUMENT
            return found

    def _of_class(said: object) -> bool:
        return str(said).removeprefix("typing.").startswith("ClassVar")

    def _has_made_parents(cls: type) -> bool:
        return any(FIELDS in vars(parent) for parent in cls.__mro__[1:])

    def _told_fields(cls: type) -> dict[str, Field[Any]]:
        """The fields of which more is told than a usual value."""
        found = vars(cls).items()
        return {name: value for name, value in found if isinstance(value, Field)}

    def _slotted(cls: type, names: tuple[str, ...]) -> type:
        """The class once more with slots, which Python wants to know from the beginning."""
        left = {"__dict__", "__weakref__", *names}
        body = {name: value for name, value in vars(cls).items() if name not in left}
        made = type(cls)(cls.__name__, cls.__bases__, {**body, "__slots__": names})
        made.__qualname__ = cls.__qualname__
        return made

    def _plain(cls: type, told: Mapping[str, Field[Any]]) -> type:
        for name, more in told.items():
            if more.default is MISSING:
                delattr(cls, name)
            else:
                setattr(cls, name, more.default)
        return cls

    def _methods(
        cls: type,
        names: tuple[str, ...],
        given: Mapping[str, object],
        told: Mapping[str, Field[Any]],
    ) -> dict[str, Callable[..., Any]]:
        shown = tuple(name for name in names if name not in told or told[name].repr)
        values = _values_of(tuple(name for name in names if name not in told or told[name].compare))
        put = object.__setattr__

        def __repr__(self: Any) -> str:
            inner = ", ".join(f"{name}={getattr(self, name)!r}" for name in shown)
            return f"{self.__class__.__qualname__}({inner})"

        def __eq__(self: Any, other: object) -> Any:
            if other.__class__ is not self.__class__:
                return NotImplemented
            return values(self) == values(other)

        def __hash__(self: Any) -> int:
            return hash(values(self))

        def __setattr__(self: Any, name: str, value: object) -> None:
            if type(self) is cls or name in names:
                raise FrozenInstanceError(f"cannot assign to field {name!r}")
            put(self, name, value)

        def __delattr__(self: Any, name: str) -> None:
            if type(self) is cls or name in names:
                raise FrozenInstanceError(f"cannot delete field {name!r}")
            object.__delattr__(self, name)

        init = _first_init(cls, names, given)
        found = [init, __repr__, __eq__, __hash__, __setattr__, __delattr__]
        if "__slots__" in vars(cls):

            def __getstate__(self: Any) -> list[Any]:
                return [getattr(self, name) for name in names]

            def __setstate__(self: Any, state: list[Any]) -> None:
                for name, value in zip(names, state, strict=True):
                    put(self, name, value)

            found += [__getstate__, __setstate__]
        return {method.__name__: method for method in found}

    def _values_of(names: tuple[str, ...]) -> Callable[[Any], tuple[Any, ...]]:
        """What objects are compared by: a tuple of the values of these fields."""
        if len(names) > 1:
            return attrgetter(*names)
        return lambda made: tuple(getattr(made, name) for name in names)

    def _first_init(
        cls: type, names: tuple[str, ...], given: Mapping[str, object]
    ) -> Callable[..., None]:
        """The `__init__` that fills the first few objects, and gives way to a compiled one.

        What does not fit goes to the compiled one as well, which says what is wrong.
        """
        usual, new = _usual(given)
        put, checks, number = object.__setattr__, hasattr(cls, "__post_init__"), count(1)

        def __init__(self: Any, *values: Any, **named: Any) -> None:
            if next(number) > FEW or not filled(self, values, named):
                made = _init(cls, names, usual, new)
                if cls.__init__ is __init__:
                    cls.__init__ = made
                made(self, *values, **named)
            elif checks:
                self.__post_init__()

        def filled(self: Any, values: tuple[Any, ...], named: dict[str, Any]) -> bool:
            for name, value in zip(names, values, strict=False):
                put(self, name, value)
            left = len(named)
            for name in names[len(values) :]:
                if name in named:
                    put(self, name, named[name])
                    left -= 1
                elif name in usual:
                    put(self, name, usual[name])
                elif name in new:
                    put(self, name, new[name]())
                else:
                    return False
            return not left and len(values) <= len(names)

        return __init__

    def _usual(given: Mapping[str, object]) -> tuple[dict[str, object], dict[str, Any]]:
        """The usual values of fields, and what makes a new one each time."""
        usual, new = {}, {}
        for name, value in given.items():
            if not isinstance(value, Field):
                usual[name] = value
            elif value.default is not MISSING:
                usual[name] = value.default
            elif value.default_factory is not MISSING:
                new[name] = value.default_factory
        return usual, new

    def _init(
        cls: type, names: tuple[str, ...], usual: Mapping[str, object], new: Mapping[str, Any]
    ) -> Callable[..., None]:
        """The `__init__` of a class, compiled from its fields."""
        outer: dict[str, Any] = {"_put": object.__setattr__, "_missing": MISSING}
        heads, lines = ["self"], []
        for name in names:
            head = value = name
            if name in new:
                outer[f"_new_{name}"] = new[name]
                head, value = f"{name}=_missing", f"_new_{name}() if {name} is _missing else {name}"
            elif name in usual:
                outer[f"_usual_{name}"] = usual[name]
                head = f"{name}=_usual_{name}"
            heads.append(head)
            lines.append(f" _put(self, {name!r}, {value})")
        if hasattr(cls, "__post_init__"):
            lines.append(" self.__post_init__()")
        body = "\n".join(lines) or " return None"
        exec(f"def __init__({', '.join(heads)}):\n{body}", outer)  # as the standard one does
        made: Callable[..., None] = outer["__init__"]
        made.__qualname__ = f"{cls.__qualname__}.__init__"
        return made
