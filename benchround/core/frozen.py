"""`dataclass` made sooner, for the many frozen classes of a start.

The standard decorator writes and compiles six methods for every frozen class, half a millisecond
each time; with some two hundred classes that is most of a start. Here only `__init__` is compiled,
and that when the first object is made; the other methods are shared closures. Classes behave as the
standard ones do, which the tests hold against each other.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from dataclasses import dataclass as dataclass  # checkers take it for the standard one
else:
    from collections.abc import Callable
    from dataclasses import MISSING, Field, FrozenInstanceError, fields
    from dataclasses import dataclass as standard
    from operator import attrgetter
    from typing import Any

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
        made = standard(cls, init=False, repr=False, eq=False, slots=how.get("slots", False))
        made.__dataclass_params__.frozen = True  # asked when a child class is made
        every = fields(made)
        if any(field.kw_only or not field.init for field in every):
            raise TypeError(f"{cls.__name__}: take the standard dataclass for such fields")
        methods = _methods(made, every)
        for name, method in methods.items():
            if name not in own:
                method.__qualname__ = f"{made.__qualname__}.{name}"
                setattr(made, name, method)
        return made

    def _has_made_parents(cls: type) -> bool:
        return any(hasattr(parent, "__dataclass_fields__") for parent in cls.__mro__[1:])

    def _methods(cls: type, every: tuple[Field[Any], ...]) -> dict[str, Callable[..., Any]]:
        names = tuple(field.name for field in every)
        shown = tuple(field.name for field in every if field.repr)
        values = _values_of(tuple(field.name for field in every if field.compare))
        put = object.__setattr__

        def __init__(self: Any, *given: Any, **named: Any) -> None:
            made = _init(cls, every)
            if cls.__init__ is __init__:
                cls.__init__ = made
            made(self, *given, **named)

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

        found = [__init__, __repr__, __eq__, __hash__, __setattr__, __delattr__]
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

    def _init(cls: type, every: tuple[Field[Any], ...]) -> Callable[..., None]:
        """The `__init__` of a class, compiled from its fields."""
        outer: dict[str, Any] = {"_put": object.__setattr__, "_missing": MISSING}
        heads, lines = ["self"], []
        for field in every:
            name = value = field.name
            head = name
            if field.default_factory is not MISSING:
                outer[f"_new_{name}"] = field.default_factory
                head, value = f"{name}=_missing", f"_new_{name}() if {name} is _missing else {name}"
            elif field.default is not MISSING:
                outer[f"_usual_{name}"] = field.default
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
