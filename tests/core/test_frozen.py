"""Quickly made frozen classes against those of the standard library (dataclasses, Python)."""

from __future__ import annotations

import copy
import dataclasses
import pickle
import types
from collections.abc import Callable
from typing import Any

import pytest

from benchround.core import frozen
from benchround.core.frozen import dataclass as quick

FEW: int = vars(frozen)["FEW"]  # not there for type checkers, which see the standard decorator


HOW: dict[str, bool] = {"frozen": True, "slots": True}


class Parent:
    """Something to be a child of that has no fields."""

    __slots__ = ()


def made_with(decorator: Callable[..., Any], slots: bool) -> Any:
    class Tray:
        """A tray."""

        code: str
        cells: int = 40
        notes: list[str] = dataclasses.field(default_factory=list)
        kept: int = dataclasses.field(default=0, repr=False, compare=False)

        def __post_init__(self) -> None:
            if self.cells < 0:
                raise ValueError("no tray has fewer than no cells")

    return decorator(Tray, frozen=True, slots=slots)


@quick(frozen=True, slots=True)
class Pot:
    """At the top of the file, so that it can be pickled."""

    size: int
    place: str = "bench"


def told(of: Callable[[Any], object], tray: Any) -> object:
    """The answer, or the error's type and words."""
    try:
        return of(tray)
    except Exception as error:
        return type(error), str(error)


ASKED: dict[str, Callable[[Any], object]] = {
    "repr": lambda tray: repr(tray("t1", 5, ["x"], 3)),
    "equal": lambda tray: tray("t1") == tray("t1"),
    "field that is not compared": lambda tray: tray("t1", kept=1) == tray("t1", kept=2),
    "not equal": lambda tray: tray("t1") == tray("t2"),
    "another class": lambda tray: tray("t1") == "t1",
    "hash": lambda tray: hash(tray("t1", notes=())) == hash(("t1", 40, ())),
    "no hash of a list": lambda tray: hash(tray("t1")),
    "usual values": lambda tray: (tray("t1").cells, tray("t1").notes),
    "lists are not shared": lambda tray: tray("t1").notes is tray("t1").notes,
    "assigned": lambda tray: setattr(tray("t1"), "cells", 3),
    "deleted": lambda tray: delattr(tray("t1"), "cells"),
    "one missing": lambda tray: tray(),
    "one too many": lambda tray: tray("t1", 1, [], 0, 7),
    "unknown name": lambda tray: tray("t1", depth=3),
    "refused afterwards": lambda tray: tray("t1", -1),
    "replaced": lambda tray: repr(dataclasses.replace(tray("t1"), cells=7)),
    "replaced is checked": lambda tray: dataclasses.replace(tray("t1"), cells=-7),
    "as a dictionary": lambda tray: dataclasses.asdict(tray("t1")),
    "fields": lambda tray: [repr(field) for field in dataclasses.fields(tray)],
    "copied": lambda tray: copy.deepcopy(tray("t1", 3)) == tray("t1", 3),
    "matched by place": lambda tray: tray.__match_args__,
    "slots": lambda tray: hasattr(tray("t1"), "__dict__"),
    "own words": lambda tray: tray.__doc__,
}


@pytest.mark.parametrize("slots", [True, False], ids=["slots", "no slots"])
@pytest.mark.parametrize("asked", ASKED)
def test_same_as_the_standard_class(asked: str, slots: bool) -> None:
    mine = told(ASKED[asked], made_with(quick, slots))
    assert mine == told(ASKED[asked], made_with(dataclasses.dataclass, slots))


@pytest.mark.parametrize("slots", [True, False], ids=["slots", "no slots"])
@pytest.mark.parametrize("asked", ASKED)
def test_same_as_the_standard_class_after_many_were_made(asked: str, slots: bool) -> None:
    mine, standard = made_with(quick, slots), made_with(dataclasses.dataclass, slots)
    for number in range(FEW + 5):
        assert repr(mine(str(number), kept=2)) == repr(standard(str(number), kept=2))
    assert told(ASKED[asked], mine) == told(ASKED[asked], standard)


def test_a_child_class_is_frozen_too() -> None:
    @quick(frozen=True, slots=True)
    class Marked(Pot):
        mark: str = ""

    for _ in range(FEW + 2):  # the parent's __init__ is compiled by then
        Pot(7)
    child = Marked(9, "shelf", "red")
    assert (child.size, child.place, child.mark) == (9, "shelf", "red")

    class Plain(Pot):
        pass

    plain = Plain(9)
    assert (type(plain), plain.size, plain.place) == (Plain, 9, "bench")
    with pytest.raises(dataclasses.FrozenInstanceError):
        setattr(child, "size", 3)  # noqa: B010  # what a type checker refuses is asked for


@pytest.mark.parametrize("decorator", [quick, dataclasses.dataclass], ids=["quick", "standard"])
@pytest.mark.parametrize("slots", [True, False], ids=["slots", "no slots"])
def test_one_that_is_not_compared_equals_itself_alone(
    decorator: Callable[..., Any], slots: bool
) -> None:
    class Bench:
        trays: list[int]

    bench = decorator(Bench, frozen=True, slots=slots, eq=False)
    one, other = bench([1]), bench([1])
    assert one == one and one != other
    assert len({one, other}) == 2


@pytest.mark.parametrize("parents", [(), (Parent,)], ids=["no parent", "a parent"])
@pytest.mark.parametrize("names", [(), ("size",), ("size", "place")], ids=len)
def test_however_many_fields_after_many_were_made(
    parents: tuple[type, ...], names: tuple[str, ...]
) -> None:
    body = {"__annotations__": dict.fromkeys(names, "int"), "__module__": __name__}
    made: Any = quick(
        types.new_class("Made", parents, exec_body=lambda space: space.update(body)), **HOW
    )
    for _ in range(FEW + 2):
        found = made(*range(len(names)))
        assert type(found) is made
        assert [getattr(found, name) for name in names] == list(range(len(names)))
        with pytest.raises(dataclasses.FrozenInstanceError):
            setattr(found, names[0] if names else "size", 3)


def test_pickled_and_back() -> None:
    assert pickle.loads(pickle.dumps(Pot(9, "shelf"))) == Pot(9, "shelf")


def test_fields_it_cannot_make_are_refused() -> None:
    class Late:
        size: int = dataclasses.field(init=False)

    with pytest.raises(TypeError, match="standard dataclass"):
        quick(Late, frozen=True)


def test_a_value_that_cannot_be_made_leaves_nothing_open() -> None:
    class Tray:
        code: str
        notes: list[str] = dataclasses.field(default_factory=lambda: [1 // len("")])  # type: ignore[list-item]

    made: Any = quick(Tray, frozen=True, slots=True)
    for _ in range(FEW + 2):
        tray = made("t1", ["x"])
    with pytest.raises(ZeroDivisionError):
        tray.__init__("t2")
    assert type(tray) is made and tray.code == "t1"
