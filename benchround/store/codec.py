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
from functools import lru_cache
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

_KINDS = {kind.value: kind for kind in Kind}

_day = lru_cache(maxsize=4096)(date.fromisoformat)


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


def decode(document: dict[str, Any]) -> Record:
    """The record in a stored document; fields it does not know are passed over.

    Raises:
        UnknownKindError: the kind is none this program knows.
        InputError: a field is missing or does not hold what it should.
    """
    try:
        return _decode(document)
    except (KeyError, TypeError, ValueError, AttributeError) as error:
        name = shown(document.get("id"))
        raise InputError(f"record {name} cannot be read ({error})") from error


def _decode(document: dict[str, Any]) -> Record:
    get = document.get
    name, about = document["id"], get("about", "")
    note, machine = get("note", ""), get("machine", "")
    # Most texts are printable from end to end, and asking that is far cheaper than a search.
    if not (name.isprintable() and about.isprintable() and machine.isprintable()):
        _refuse_unprintable(name, about, machine, lines=False)
    if not note.isprintable():
        _refuse_unprintable(note, lines=True)
    if not name:
        raise ValueError("it has no id")
    kind = _KINDS.get(document["kind"])
    if kind is None:
        raise UnknownKindError(shown(document["kind"]))
    figures, at = get("figures"), get("at")
    return _build(
        name,
        _day(document["day"]),
        kind,
        about,
        NO_FIGURES if figures is None else _figures(figures),
        note,
        None if at is None else _time(at),
        machine,
    )


def _refuse_unprintable(*texts: str, lines: bool) -> None:
    for text in texts:
        if first_unprintable(text, lines=lines) is not None:
            raise ValueError("it holds a character that cannot be printed")


def _figures(figures: dict[str, Any]) -> Mapping[str, Figure]:
    if not "".join(figures).isprintable():
        _refuse_unprintable(*figures, lines=False)
    for value in figures.values():
        of = value.__class__
        if of is str:
            if not value.isprintable():
                _refuse_unprintable(value, lines=True)
        elif of is float:
            if not isfinite(value):
                raise ValueError("a figure is not a finite number")
        elif of is int:
            if not -LARGEST_WHOLE <= value <= LARGEST_WHOLE:
                raise ValueError("a figure is too large a number")
        elif of is not bool:
            raise ValueError("a figure is not text, a number or yes or no")
    return MappingProxyType(figures)


@lru_cache(maxsize=4096)
def _time(text: str) -> time:
    at = time.fromisoformat(text)
    if at.tzinfo is not None:
        raise ValueError("its time has a zone")
    return at


_new = object.__new__
(
    _set_id,
    _set_day,
    _set_kind,
    _set_about,
    _set_figures,
    _set_note,
    _set_at,
    _set_machine,
) = (getattr(Record, field).__set__ for field in Record.__slots__)


def _build(
    name: str,
    day: date,
    kind: Kind,
    about: str,
    figures: Mapping[str, Figure],
    note: str,
    at: time | None,
    machine: str,
) -> Record:
    """The same as `Record(...)`, in a third of the time.

    A frozen record's own constructor sets each field through a guarded detour; filling the slots
    directly matters when a season of 120,000 records is opened. The unpacking above stops the
    program at once if a record ever gains a field this does not fill.
    """
    record: Record = _new(Record)
    _set_id(record, name)
    _set_day(record, day)
    _set_kind(record, kind)
    _set_about(record, about)
    _set_figures(record, figures)
    _set_note(record, note)
    _set_at(record, at)
    _set_machine(record, machine)
    return record
