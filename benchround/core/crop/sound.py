"""A crop out of a table that is known to be without faults, without looking for any.

Looking takes three times as long as reading, and a start reads a crop for every batch. The shipped
crops are looked over by a test; it also holds what is read here against what `reading` makes.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from types import MappingProxyType
from typing import Any

from benchround.core.crop.crop import Crop, Edge
from benchround.core.crop.edge import edge_from_text
from benchround.core.crop.keys import CROP, by_short_name
from benchround.core.crop.schema import Form, Key, Section, by_key

Reader = Callable[[Any], object]


def crop_from_sound_table(key: str, table: Mapping[str, Any]) -> Crop:
    """The crop a table describes, which must be one that `crop_from_table` takes.

    Args:
        key: the crop's own key.
        table: the table as a TOML reader gives it.
    """
    figures = {name: value for name, value in table.items() if name != "sources"}
    sources = {name: text.strip() for name, text in table.get("sources", {}).items()}
    return Crop(key=key, sources=MappingProxyType(sources), **_values(CROP, figures))


def _values(section: Section, table: Mapping[str, Any]) -> dict[str, Any]:
    readers, inner = _readers(section), by_short_name(section)
    values: dict[str, Any] = {}
    for name, raw in table.items():
        found = readers.get(name)
        if found is not None:
            target, read = found
            values[target] = read(raw)
        elif inner[name].many:
            values[name] = tuple(_record(inner[name], item) for item in raw)
        else:
            values[name] = _record(inner[name], raw)
    return values


def _record(section: Section, raw: Mapping[str, Any]) -> Any:
    return section.record(**_values(section, raw))


@cache
def _readers(section: Section) -> dict[str, tuple[str, Reader]]:
    """For every key of a section: the field it fills, and what reads it."""
    return {name: (key.target, _reader(key)) for name, key in by_key(section).items()}


def _reader(key: Key) -> Reader:
    if key.form is Form.TEXTS:
        one = _member(key) if key.choices else str.strip
        return lambda raw: tuple(map(one, raw))
    if key.form is Form.CHOICE:
        return _member(key)
    return READERS[key.form]


def _member(key: Key) -> Reader:
    return key.words or str


@cache
def _edge(text: str) -> Edge:
    return edge_from_text(text.strip())


READERS: Mapping[Form, Reader] = {
    Form.TEXT: str.strip,
    Form.WHOLE: int,
    Form.NUMBER: float,
    Form.YES_NO: bool,
    Form.SPAN: lambda raw: (int(raw[0]), int(raw[1])),
    Form.EDGE: _edge,
}
