"""Turning one value of a crop table into what the record holds, or refusing it, and back."""

from __future__ import annotations

from collections.abc import Callable

from benchround.core.crop.crop import Edge
from benchround.core.crop.edge import edge_from_text, edge_to_text
from benchround.core.crop.schema import Form, Key
from benchround.core.errors import InputError

MOST_TEXTS = 40
"""More names or colours than this in one list is a slip."""


class UnfitValue(ValueError):
    """A value does not have the form or range its key asks for."""


def value_of(key: Key, raw: object) -> object:
    """The value in the record's own type.

    Raises:
        UnfitValue: it is not what `key.allowed` says.
    """
    return READERS[key.form](key, raw)


def table_value(value: object) -> object:
    """A record's value as it would stand in a table."""
    if isinstance(value, Edge):
        return edge_to_text(value)
    if isinstance(value, tuple):
        return list(value)
    return str(value) if isinstance(value, str) else value


def figure_value(key: Key, figure: object) -> object:
    """A single figure as it was typed or stored, in the form a table has it.

    Two numbers are written `28 to 35`, a list `white, pink`; everything else stays as it is.
    """
    if not isinstance(figure, str):
        return figure
    parts = [part.strip() for part in figure.split(" to " if key.form is Form.SPAN else ",")]
    if key.form is Form.SPAN and len(parts) == 2 and all(part.isdecimal() for part in parts):
        return [int(part[:9]) for part in parts]
    if key.form is Form.TEXTS:
        return [part for part in parts if part]
    return figure


def _number(key: Key, raw: object) -> float:
    if isinstance(raw, bool) or not isinstance(raw, int | float):
        raise UnfitValue
    if not key.low <= raw <= key.high:  # also refuses NaN
        raise UnfitValue
    return float(raw)


def _whole(key: Key, raw: object) -> int:
    number = _number(key, raw)
    if not number.is_integer():
        raise UnfitValue
    return int(number)


def _text(key: Key, raw: object) -> str:
    if not isinstance(raw, str) or not raw.isprintable():
        raise UnfitValue
    if not key.low <= len(raw.strip()) <= key.high:
        raise UnfitValue
    return raw.strip()


def _choice(key: Key, raw: object) -> str:
    if not isinstance(raw, str) or raw not in key.choices:
        raise UnfitValue
    return key.words(raw) if key.words else raw


def _texts(key: Key, raw: object) -> tuple[str, ...]:
    if not isinstance(raw, list) or len(raw) > MOST_TEXTS:
        raise UnfitValue
    one = _choice if key.choices else _text
    return tuple(one(key, item) for item in raw)


def _yes_no(key: Key, raw: object) -> bool:
    if not isinstance(raw, bool):
        raise UnfitValue
    return raw


def _span(key: Key, raw: object) -> tuple[int, int]:
    if not isinstance(raw, list) or len(raw) != 2:
        raise UnfitValue
    least, most = _whole(key, raw[0]), _whole(key, raw[1])
    if least > most:
        raise UnfitValue
    return least, most


def _edge(key: Key, raw: object) -> Edge:
    try:
        return edge_from_text(_text(key, raw))
    except InputError as error:
        raise UnfitValue from error


READERS: dict[Form, Callable[[Key, object], object]] = {
    Form.TEXT: _text,
    Form.CHOICE: _choice,
    Form.TEXTS: _texts,
    Form.WHOLE: _whole,
    Form.NUMBER: _number,
    Form.YES_NO: _yes_no,
    Form.SPAN: _span,
    Form.EDGE: _edge,
}
