"""What earlier calendar files said, so that a later one can take back what is no longer asked for.

A calendar that reads a file in never removes what the file leaves out. So an event that has gone is
written once more, as cancelled, for a while (RFC 5545, 3.8.1.11 STATUS; 3.8.7.4 SEQUENCE). What was
told is kept under the keys of the events, each with a mark that changes with anything it says.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Iterator, Mapping
from datetime import date, datetime, time, timedelta

from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.feeds.coming import Event

CANCELLED_FOR = timedelta(days=28)
"""How long what has gone is written as cancelled (our proposal)."""

REMEMBERED_FOR = timedelta(days=800)
"""How long the number of a change is remembered: a calendar takes no lower one for newer."""


@dataclass(frozen=True, slots=True)
class Told:
    """An event as a calendar file tells it.

    Attributes:
        mark: changes with anything the event says.
        sequence: how often it has changed.
        changed: when the file was made that first said it so, with a time zone.
        gone: the day it was first found to be no longer asked for; None: it still is.
    """

    event: Event
    mark: str
    sequence: int
    changed: datetime
    gone: date | None = None


def follow(
    before: Mapping[str, Told],
    living: Iterable[Event],
    *,
    first: date,
    last: date,
    stamp: datetime,
) -> tuple[tuple[Told, ...], dict[str, Told]]:
    """What a new file tells, in order of days, and what is to be kept for the next one.

    Args:
        before: what was kept when the last file was made, by key.
        living: everything that is asked for from `first` on, however far ahead.
        first: the first day of the file.
        last: the day after its last one.
        stamp: when it is made.
    """
    asked = {event.key: event for event in living}
    kept: dict[str, Told] = {}
    telling: list[Told] = []
    for key, event in asked.items():
        old = before.get(key)
        now = _again(old, event, stamp)
        inside = first <= event.day < last
        if inside or (old is not None and now.sequence != old.sequence):
            telling.append(now)
        if inside or old is not None:
            kept[key] = now
    for key, old in before.items():
        if key not in asked and first - old.changed.date() < REMEMBERED_FOR:
            kept[key] = _left_out(old, first, stamp)
            gone = kept[key].gone
            if gone is not None and first - gone < CANCELLED_FOR:
                telling.append(kept[key])
    order = sorted(telling, key=lambda t: (t.event.day, t.event.at or time.min, t.event.key))
    return tuple(order), kept


def told_data(told: Mapping[str, Told]) -> bytes:
    """What was told as a file to keep."""
    events = [
        {
            "key": key,
            "day": one.event.day.isoformat(),
            "at": one.event.at.isoformat("minutes") if one.event.at else None,
            "title": one.event.title,
            "place": one.event.place,
            "category": one.event.category,
            "mark": one.mark,
            "sequence": one.sequence,
            "changed": one.changed.isoformat(),
            "gone": one.gone.isoformat() if one.gone else None,
        }
        for key, one in sorted(told.items())
    ]
    return (json.dumps({"events": events}, ensure_ascii=False, indent=0) + "\n").encode("utf-8")


def told_from(data: bytes, name: str) -> dict[str, Told]:
    """What was told, from the file it was kept in; without the long texts.

    Raises:
        InputError: the file is not what was written.
    """
    try:
        return {told.event.key: told for told in map(_told, json.loads(data)["events"])}
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError) as error:
        raise InputError(
            f"{name} cannot be read ({error}): what has gone since the last calendar is not told."
        ) from error


def newest(kept: Iterable[Mapping[str, Told]]) -> dict[str, Told]:
    """What several computers told, of each event the latest."""
    found: dict[str, Told] = {}
    for one in kept:
        for key, told in one.items():
            other = found.get(key)
            if other is None or (told.sequence, told.changed) > (other.sequence, other.changed):
                found[key] = told
    return found


def _again(old: Told | None, event: Event, stamp: datetime) -> Told:
    mark = _mark(event)
    if old is None:
        return Told(event, mark, 0, stamp)
    if old.gone is None and old.mark == mark:
        return Told(event, mark, old.sequence, old.changed)
    return Told(event, mark, old.sequence + 1, stamp)


def _left_out(old: Told, first: date, stamp: datetime) -> Told:
    """What is no longer asked for: taken back, unless it lay in the past when it went."""
    if old.gone is not None or old.event.day < first:
        return old
    return Told(old.event, old.mark, old.sequence + 1, stamp, first)


def _mark(event: Event) -> str:
    return hashlib.sha256("\n".join(_words(event)).encode("utf-8")).hexdigest()[:16]


def _words(event: Event) -> Iterator[str]:
    yield event.day.isoformat()
    yield event.at.isoformat() if event.at else ""
    yield from (event.title, event.text, event.place, event.category)


def _told(value: Mapping[str, str | int | None]) -> Told:
    event = Event(
        key=str(value["key"]),
        day=date.fromisoformat(str(value["day"])),
        at=time.fromisoformat(str(value["at"])) if value["at"] else None,
        title=str(value["title"]),
        text="",
        place=str(value["place"]),
        category=str(value["category"]),
    )
    changed = datetime.fromisoformat(str(value["changed"]))
    if changed.tzinfo is None:
        raise ValueError("a time without a zone")
    return Told(
        event,
        mark=str(value["mark"]),
        sequence=int(value["sequence"] or 0),
        changed=changed,
        gone=date.fromisoformat(str(value["gone"])) if value["gone"] else None,
    )
