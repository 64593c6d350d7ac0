"""Everything a season holds as one JSON text, and back, without loss.

    {"form": "benchround everything", "version": 1,
     "season": {"name": "...", "begun": "2026-05-27"},
     "records": [{"id": ..., "day": ..., "kind": ..., ...}, ...]}

A record is written as it stands in the season's own pages, so there is only one form to know.
Settings, places, packets and withdrawals are records too; nothing else has to be moved.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from datetime import date
from typing import Any

from benchround.core.errors import BenchroundError, InputError
from benchround.core.frozen import dataclass
from benchround.core.progress import Progress, told, unheard
from benchround.core.record import Record

FORM = "benchround everything"
VERSION = 1

Encode = Callable[[Record], dict[str, Any]]
Decode = Callable[[dict[str, Any]], Record]


@dataclass(frozen=True, slots=True)
class Everything:
    """A season's name, the day it was begun (None if not known) and every record of it."""

    name: str
    begun: date | None
    records: tuple[Record, ...]


def everything_text(season: Everything, encode: Encode, progress: Progress = unheard) -> str:
    """All of a season as JSON, one record a line.

    Args:
        season: what to write.
        encode: makes the stored form of a record.
        progress: told of the records.
    """
    head = {
        "form": FORM,
        "version": VERSION,
        "season": {
            "name": season.name,
            "begun": season.begun.isoformat() if season.begun else None,
        },
    }
    start = json.dumps(head, ensure_ascii=False)[:-1]
    lines = (
        json.dumps(encode(record), ensure_ascii=False, allow_nan=False)
        for record in told(sorted(season.records, key=lambda record: record.id), progress)
    )
    return f'{start}, "records": [\n' + ",\n".join(lines) + "\n]}\n"


def everything_from(text: str, decode: Decode, progress: Progress = unheard) -> Everything:
    """All of a season from its JSON.

    Args:
        text: what `everything_text` wrote.
        decode: reads the stored form of a record.
        progress: told of the records read.

    Raises:
        InputError: it is no such text, is of a newer form, or a record in it cannot be read; the
            message says which.
    """
    try:
        value = json.loads(text)
    except (ValueError, RecursionError) as error:
        raise InputError(f"That is no whole JSON text ({error}): write it out again.") from error
    if not isinstance(value, Mapping) or value.get("form") != FORM:
        raise InputError("That JSON text is not everything of a season: see 'benchround tables'.")
    if value.get("version") != VERSION:
        raise InputError(
            f"That text has form number {str(value.get('version'))[:20]}, and this program reads "
            f"{VERSION}: use a newer benchround."
        )
    season, records = value.get("season"), value.get("records")
    if not isinstance(season, Mapping) or not isinstance(records, list):
        raise InputError("That text has lost its season or its records: write it out again.")
    name, begun = season.get("name"), season.get("begun")
    if not isinstance(name, str):
        raise InputError("The season in that text has no name: write it out again.")
    return Everything(name, _day(begun), _records(records, decode, progress))


def _day(text: object) -> date | None:
    if text is None:
        return None
    try:
        return date.fromisoformat(str(text))
    except ValueError as error:
        raise InputError(f"The season's first day cannot be read ({error}).") from error


def _records(documents: list[Any], decode: Decode, progress: Progress) -> tuple[Record, ...]:
    found: dict[str, Record] = {}
    for number, document in enumerate(told(documents, progress), start=1):
        if not isinstance(document, dict):
            raise InputError(f"Record {number} of that text is no record.")
        try:
            record = decode(document)
        except BenchroundError as error:
            raise InputError(f"Record {number} of that text: {error}") from error
        if found.setdefault(record.id, record) != record:
            raise InputError(f"Record {number} of that text has the id of another one.")
    return tuple(found.values())
