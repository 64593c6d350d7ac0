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
        others = how.keys() - {"frozen", "slots", "eq"}
        if not how.get("frozen") or others or _has_made_parents(cls):
            return standard(cls, **how)
        told = _told_fields(cls)
        if any(more.kw_only is True or not more.init for more in told.values()):
            raise TypeError(f"{cls.__name__}: take the standard dataclass for such fields")
        table = _Table(cls, vars(cls).get("__annotations__", {}))
        added = {FIELDS: table, PARAMS: _PARAMS, "__match_args__": table.names}
        added |= _methods(table, told, slots=bool(how.get("slots")))
        if not how.get("eq", True):
            del added["__eq__"], added["__hash__"]
        table.owner = _slotted(cls, table.names, added) if how.get("slots") else cls
        if table.owner is cls:
            _fill(cls, told, added)
        return table.owner

    @standard(frozen=True, init=False, repr=False, eq=False)  # each of them is compiled
    class _Asked:
        """Lends what the standard decorator notes of a class and its fields and is asked for."""

        anything: int

    _PARAMS = getattr(_Asked, PARAMS)
    _ARGUMENT = getattr(_Asked, FIELDS)["anything"]._field_type

    class _Table:
        """Stands in for a class's table of fields until somebody asks for it."""

        def __init__(self, cls: type, types: Mapping[str, object]) -> None:
            body = vars(cls)
            self.types = types
            self.names = tuple(name for name, said in types.items() if not _of_class(said))
            self.given = {name: body[name] for name in self.names if name in body}
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
        return str(said).startswith(("ClassVar", "typing.ClassVar"))

    def _has_made_parents(cls: type) -> bool:
        return any(FIELDS in vars(parent) for parent in cls.__mro__[1:])

    def _told_fields(cls: type) -> dict[str, Field[Any]]:
        """The fields of which more is told than a usual value."""
        found = vars(cls).items()
        return {name: value for name, value in found if isinstance(value, Field)}

    def _slotted(cls: type, names: tuple[str, ...], added: Mapping[str, object]) -> type:
        """The class once more with slots, which Python wants to know from the beginning.

        What is added comes with it, which takes less than adding it to a class that is there.
        """
        body = {**added, **vars(cls), "__slots__": names}
        for name in ("__dict__", "__weakref__", *names):
            body.pop(name, None)
        made = type(cls)(cls.__name__, cls.__bases__, body)
        made.__qualname__ = cls.__qualname__
        return made

    def _fill(cls: type, told: Mapping[str, Field[Any]], added: Mapping[str, object]) -> None:
        """Add what the class has not got itself; a field's usual value takes the field's place."""
        own = frozenset(vars(cls))
        for name, more in told.items():
            if more.default is MISSING:
                delattr(cls, name)
            else:
                setattr(cls, name, more.default)
        for name, method in added.items():
            if name not in own:
                setattr(cls, name, method)

    def _methods(
        table: _Table, told: Mapping[str, Field[Any]], *, slots: bool
    ) -> dict[str, Callable[..., Any]]:
        names = table.names
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
            if type(self) is table.owner or name in names:
                raise FrozenInstanceError(f"cannot assign to field {name!r}")
            put(self, name, value)

        def __delattr__(self: Any, name: str) -> None:
            if type(self) is table.owner or name in names:
                raise FrozenInstanceError(f"cannot delete field {name!r}")
            object.__delattr__(self, name)

        init = _first_init(table)
        found = [init, __repr__, __eq__, __hash__, __setattr__, __delattr__]
        if slots:

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

    def _first_init(table: _Table) -> Callable[..., None]:
        """The `__init__` that fills the first few objects, and gives way to a compiled one.

        What does not fit goes to the compiled one as well, which says what is wrong.
        """
        names = table.names
        usual, new = _usual(table.given)
        put, checks = object.__setattr__, hasattr(table.owner, "__post_init__")
        number = count(1)

        def __init__(self: Any, *values: Any, **named: Any) -> None:
            if next(number) > FEW or not filled(self, values, named):
                made = _init(table.owner, names, usual, new)
                if table.owner.__init__ is __init__:
                    table.owner.__init__ = made
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
        """The `__init__` of a class, compiled from its fields.

        Anything but a slot is put into the object's `__dict__`. Slots are filled while the object
        is of an open class of the same shape, which takes half to nine tenths of the time of their
        own descriptors, the less the more there are. Children of a class with slots are filled by
        name, which takes longer; there are hardly any. Values are reckoned before the class is
        opened, so that what fails leaves no open object.
        """
        outer: dict[str, Any] = {"_missing": MISSING, "_fill_by_name": _fill_each}
        heads, lines = ["self"], []
        for name in names:
            head = name
            if name in new:
                outer[f"_new_{name}"] = new[name]
                head = f"{name}=_missing"
                lines.append(f" if {name} is _missing: {name} = _new_{name}()")
            elif name in usual:
                outer[f"_usual_{name}"] = usual[name]
                head = f"{name}=_usual_{name}"
            heads.append(head)
        fill = f"_fill_by_name(self, {names!r}, ({''.join(f'{name}, ' for name in names)}))"
        if vars(cls).get("__slots__") != names:
            lines += [" _own = self.__dict__", *(f" _own[{name!r}] = {name}" for name in names)]
        elif cls.__bases__ != (object,):
            lines.append(f" {fill}")
        else:
            outer |= {"_frozen_class": cls, "_open_class": _opened(cls, names), "_turn_into": _turn}
            lines += [" if self.__class__ is _frozen_class:", "  _turn_into(self, _open_class)"]
            lines += [f"  self.{name} = {name}" for name in names]
            lines += ["  self.__class__ = _frozen_class", " else:", f"  {fill}"]
        if hasattr(cls, "__post_init__"):
            lines.append(" self.__post_init__()")
        body = "\n".join(lines)
        exec(f"def __init__({', '.join(heads)}):\n{body}", outer)  # as the standard one does
        made: Callable[..., None] = outer["__init__"]
        made.__qualname__ = f"{cls.__qualname__}.__init__"
        return made

    _turn = vars(object)["__class__"].__set__
    """Gives an object another class of the same shape."""

    def _opened(cls: type, names: tuple[str, ...]) -> type:
        """A class of the same slots that refuses nothing."""
        return type(cls.__name__, (object,), {"__slots__": names})

    def _fill_each(self: Any, names: tuple[str, ...], values: tuple[object, ...]) -> None:
        """Fill the slots of an object that may be of another shape, as one of a child class is."""
        for name, value in zip(names, values, strict=True):
            object.__setattr__(self, name, value)
