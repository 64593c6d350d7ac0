"""Records as they stand on disk, and back.

On disk a record is a flat JSON object; what is empty is left out:

    {"id": ..., "day": "2027-04-03", "kind": "sown", "about": ..., "figures": {...}, "note": ...,
     "at": "07:30", "machine": ...}

`encode` is strict, since what it lets through stays for ever. `decode` takes what `encode` makes
and refuses the rest by name; what it refuses is left on disk as it is.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, datetime, time
from math import isfinite
from types import MappingProxyType
from typing import Any

from benchround.core.errors import InputError
from benchround.core.record import NO_FIGURES, Figure, Kind, Record
from benchround.store.bounds import (
    LARGEST_WHOLE,
    LONGEST_ID,
    LONGEST_NAME,
    LONGEST_NOTE,
    checked_figures,
    checked_text,
    first_unprintable,
    shown,
)
from benchround.store.errors import UnknownKindError

KINDS = {kind.value: kind for kind in Kind}
"""The word on disk -> the kind."""

Document = dict[str, Any]
"""A record as it stands on disk."""


def encode(record: Record) -> dict[str, Any]:
    """The record as a plain dict for JSON, empty fields left out.

    Raises:
        InputError: a field is of the wrong type, too long, not finite or not printable.
    """
    if not record.id:
        raise InputError(f'a record of kind "{record.kind}" has no id; it cannot be kept')
    document: dict[str, Any] = {
        "id": checked_text("the id of a record", record.id, LONGEST_ID),
        "day": _day_text(record.day),
        "kind": Kind(record.kind).value,
        "about": checked_text("the name of what a record is about", record.about, LONGEST_NAME),
        "figures": checked_figures(record.figures),
        "note": checked_text("the note", record.note, LONGEST_NOTE, lines=True),
        "at": _time_text(record.at),
        "machine": checked_text("the computer's name", record.machine, LONGEST_NAME),
    }
    return {name: value for name, value in document.items() if value}


def _day_text(day: date) -> str:
    if isinstance(day, datetime) or not isinstance(day, date):
        raise InputError(f"the day of a record is {day!r}; give a day without a time")
    return day.isoformat()


def _time_text(at: time | None) -> str:
    if at is None:
        return ""
    if at.tzinfo is not None:
        raise InputError(f"the time of a record is {at!r}; give local time without a zone")
    return at.isoformat("auto" if at.second or at.microsecond else "minutes")


def decode(document: Document) -> Record:
    """The record in a stored document; fields it does not know are passed over.

    `decoder` does the same for whole pages, faster.

    Raises:
        UnknownKindError: the kind is none this program knows.
        InputError: a field is missing or does not hold what it should.
    """
    try:
        return _decode(document)
    except (KeyError, TypeError, ValueError, AttributeError) as error:
        name = shown(document.get("id"))
        raise InputError(f"record {name} cannot be read ({error})") from error


def _decode(document: Document) -> Record:
    for name in ("id", "about", "machine"):
        _printable(document.get(name, ""), lines=False)
    if not document["id"]:
        raise ValueError("it has no id")
    kind = KINDS.get(document["kind"])
    if kind is None:
        raise UnknownKindError(shown(document["kind"]))
    return Record(
        document["id"],
        date.fromisoformat(document["day"]),
        kind,
        document.get("about", ""),
        _figures(document["figures"]) if "figures" in document else NO_FIGURES,
        _printable(document.get("note", ""), lines=True),
        plain_time(document["at"]) if "at" in document else None,
        document.get("machine", ""),
    )


def _printable(text: str, *, lines: bool) -> str:
    if first_unprintable(text, lines=lines) is not None:
        raise ValueError("it holds a character that cannot be printed")
    return text


def plain_time(text: str) -> time:
    """The local time written as ISO text.

    Raises:
        ValueError: it is no time, or one of a zone.
    """
    at = time.fromisoformat(text)
    if at.tzinfo is not None:
        raise ValueError("its time has a zone")
    return at


def _figures(figures: dict[str, Any]) -> Mapping[str, Figure]:
    for name, value in figures.items():
        _printable(name, lines=False)
        _refuse_odd(value)
    return MappingProxyType(figures)


def _refuse_odd(value: object) -> None:
    if isinstance(value, str):
        _printable(value, lines=True)
    elif isinstance(value, float):
        if not isfinite(value):
            raise ValueError("a figure is not a finite number")
    elif isinstance(value, int):
        if not -LARGEST_WHOLE <= value <= LARGEST_WHOLE:
            raise ValueError("a figure is too large a number")
    else:
        raise ValueError("a figure is not text, a number or yes or no")
