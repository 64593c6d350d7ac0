"""Crop tables: from a table to a `Crop` and back, and single figures changed for a season.

`core/crop/keys.py` says what each key may be and `core/crop/relations.py` what the figures must be
to each other; both hold for a file as for a single changed figure.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from benchround.core.crop.crop import Crop
from benchround.core.crop.fault import Fault, no_such_key, refuse
from benchround.core.crop.keys import CROP, children, source_names
from benchround.core.crop.reading import Reading
from benchround.core.crop.schema import Key, Section, defaults, field_default
from benchround.core.crop.value import figure_value, table_value
from benchround.core.record import Figure

__all__ = ["Fault", "crop_from_table", "faults_in_table", "override", "refuse", "table_from_crop"]

OWN_FIGURE = "your own figure for this season"
"""The source shown beside a figure that was changed for the season."""

LEAVE_OUT = "none"
"""Given for a figure that may be missing, it takes the crop's own figure away."""

Table = dict[str, Any]


def faults_in_table(key: str, table: Mapping[str, object], where: str = "") -> tuple[Fault, ...]:
    """Every fault of one crop's table, those of single keys first."""
    reading = Reading(where, key)
    reading.crop(table)
    return tuple(reading.faults)


def crop_from_table(key: str, table: Mapping[str, object], where: str = "") -> Crop:
    """The crop a table describes.

    Args:
        key: the crop's own key.
        table: the table as a TOML reader gives it.
        where: the file's name, for the message.

    Raises:
        CropFileError: the table has faults; the message lists them all.
    """
    reading = Reading(where, key)
    crop = reading.crop(table)
    refuse(reading.faults)
    assert crop is not None  # a reading without faults has made one
    return crop


def table_from_crop(crop: Crop) -> Table:
    """The shortest table that reads back as this crop."""
    table = _table(CROP, crop)
    return {**table, "sources": dict(crop.sources)} if crop.sources else table


def override(crop: Crop, dotted: Mapping[str, Figure]) -> Crop:
    """The crop with single figures changed, checked like a crop table of its own.

    A hardening course made shorter than the crop's shortest one shortens that too.

    Args:
        crop: the crop as the library has it.
        dotted: new figures by dotted key, such as `{"hardening.days": 14}`. Members of a list
            count from 1 (`windows.1.opens`); two numbers are written `28 to 35`, a list
            `white, pink`; `none` takes away a figure that may be missing.

    Raises:
        CropFileError: a key is not known or a figure may not stand there; all are listed.
    """
    table = table_from_crop(crop)
    wanted = {**_shortened_course(crop, dotted), **dotted}
    unknown = [fault for name in wanted if (fault := _put(table, crop.key, name, wanted[name]))]
    refuse([*unknown, *faults_in_table(crop.key, table)])
    own = {_source_name(name): OWN_FIGURE for name in dotted}
    return crop_from_table(crop.key, {**table, "sources": {**crop.sources, **own}})


def _shortened_course(crop: Crop, dotted: Mapping[str, Figure]) -> dict[str, Figure]:
    days, course = dotted.get("hardening.days"), crop.hardening
    if course is None or not isinstance(days, int | float) or isinstance(days, bool):
        return {}
    if not 0 < days < course.least_days or days != int(days):
        return {}
    return {"hardening.least_days": days}


def _table(section: Section, record: object) -> Table:
    """One section's record as a table, without what is as if left out."""
    table: Table = {}
    left_out = defaults(section)
    for key in section.keys:
        value = getattr(record, key.target)
        if key.name not in left_out or value != left_out[key.name]:
            table[key.name] = table_value(value)
    for child in children(section):
        value = getattr(record, child.short)
        if value != field_default(section, child.short):
            inner = [_table(child, item) for item in value] if child.many else _table(child, value)
            table[child.short] = inner
    return table


def _put(table: Table, crop_key: str, name: str, figure: Figure) -> Fault | None:
    """Put one figure where its dotted key points, or say that there is no such key."""
    way, _, last = name.rpartition(".")
    places = dict(_places(CROP, table, ""))
    key = (
        next((key for key in places[way].keys if key.name == last), None) if way in places else None
    )
    if key is None:
        known = (f"{at}.{key.name}".lstrip(".") for at in places for key in places[at].keys)
        return Fault("", f"{crop_key}.{name}", figure, no_such_key(name, known))
    place = _place(table, way)
    if figure == LEAVE_OUT and _may_be_missing(places[way], key):
        place.pop(last, None)
    else:
        place[last] = figure_value(key, figure)
    return None


def _places(section: Section, table: Table, at: str) -> Iterator[tuple[str, Section]]:
    """Every section a figure can go into, by its dotted name; members of lists count from 1."""
    yield at, section
    for child in children(section):
        name = f"{at}.{child.short}".lstrip(".")
        inner = table.get(child.short, [] if child.many else {})
        if child.many:
            for number, member in enumerate(inner, 1):
                yield from _places(child, member, f"{name}.{number}")
        else:
            yield from _places(child, inner, name)


def _place(table: Table, way: str) -> Table:
    """The table at a dotted name out of `_places`, made if the crop has not got it."""
    place: Any = table
    for step in filter(None, way.split(".")):
        place = place[int(step) - 1] if isinstance(place, list) else place.setdefault(step, {})
    found: Table = place
    return found


def _may_be_missing(section: Section, key: Key) -> bool:
    return defaults(section).get(key.name, key) is None


def _source_name(name: str) -> str:
    """The name a changed figure's source goes by; members of a list share their section's."""
    return name if name in source_names() else name.partition(".")[0]
