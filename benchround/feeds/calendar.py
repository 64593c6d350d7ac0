"""Events as an iCalendar file (RFC 5545) that can be read in again without doubling anything."""

from __future__ import annotations

import uuid
from collections.abc import Collection
from datetime import UTC, date, datetime, timedelta, tzinfo
from zoneinfo import ZoneInfo

from benchround.core.errors import InputError
from benchround.core.extras import install_words
from benchround.core.progress import Progress, told, unheard
from benchround.feeds.calendar_told import Told
from benchround.feeds.letters import one_line

try:
    from icalendar import Calendar, Timezone
    from icalendar import Event as Entry
except ImportError as error:  # pragma: no cover - the message is all that can be done
    raise InputError(f"Calendars need the package icalendar: {install_words('paper')}.") from error

PRODUCT = "-//benchround//the coming weeks//EN"
OURS = uuid.UUID("6f1d0c0a-52a7-5c0e-9a70-2d8f1b3f7c41")
"""Namespace of the names events go by; drawn once, never to be changed."""
GONE = "No longer asked for, {}: it was done, or something else is due instead."
TIMED_FOR = timedelta(minutes=15)


def calendar_data(
    events: Collection[Told],
    *,
    name: str,
    site: str,
    stamp: datetime,
    timezone: str = "",
    progress: Progress = unheard,
) -> tuple[bytes, tuple[str, ...]]:
    """The events as an iCalendar file, and remarks.

    The same events, site and stamp give the same bytes. It names no METHOD: that would make it a
    message of scheduling, which wants an organizer (RFC 5546, 3.2.1, from memory); without one it
    is a piece of a calendar to be read in (RFC 5545, 3.7.2, from memory).

    Args:
        events: what to write, in order; those that have gone are written as cancelled.
        name: the calendar's name.
        site: what keeps this season apart from any other; with an event's key it makes its UID.
        stamp: when the file is made (DTSTAMP), with a time zone.
        timezone: the site's time zone, as Europe/London; without one times are local ones.
        progress: told of the events written.
    """
    zone, remark = _zone(timezone)
    calendar = Calendar()
    calendar.add("prodid", PRODUCT)
    calendar.add("version", "2.0")
    calendar.add("calscale", "GREGORIAN")
    calendar.add("x-wr-calname", one_line(name))
    timed: list[date] = []
    for one in told(events, progress):
        calendar.add_component(_entry(one, site, stamp, zone))
        if one.event.at is not None:
            timed.append(one.event.day)
    if zone is not None and timed:
        # Whole years around the events, so that a later file's zone never says less.
        first, last = date(min(timed).year, 1, 1), date(max(timed).year + 2, 1, 1)
        calendar.add_missing_timezones(first_date=first, last_date=last)
    if not events:
        calendar.add_component(_only_zone(zone, stamp.year))
    return calendar.to_ical(), (remark,) if remark else ()


def _only_zone(zone: ZoneInfo | None, year: int) -> Timezone:
    """The zone of a calendar without events, which must hold something (RFC 5545, 3.6, memory)."""
    name = zone.key if zone is not None else "UTC"
    return Timezone.from_tzid(name, first_date=date(year, 1, 1), last_date=date(year + 2, 1, 1))


def uid_of(key: str, site: str) -> str:
    """The name an event goes by for ever: made from its key and its site."""
    return str(uuid.uuid5(OURS, f"{site}\n{key}"))


def _entry(one: Told, site: str, stamp: datetime, zone: tzinfo | None) -> Entry:
    event = one.event
    entry = Entry()
    entry.add("uid", uid_of(event.key, site))
    entry.add("dtstamp", stamp)
    entry.add("last-modified", one.changed.astimezone(UTC))
    entry.add("sequence", one.sequence)
    entry.add("status", "CONFIRMED" if one.gone is None else "CANCELLED")
    entry.add("summary", one_line(event.title))
    if event.at is None:
        entry.add("dtstart", event.day)
        entry.add("dtend", event.day + timedelta(days=1))
        entry.add("transp", "TRANSPARENT")
    else:
        start = datetime.combine(event.day, event.at, zone)
        entry.add("dtstart", start)
        entry.add("dtend", start + TIMED_FOR)
    text = event.text if one.gone is None else GONE.format(one.gone.isoformat())
    text = "\n".join(one_line(line) for line in text.splitlines())
    entry.add("description", text)
    if event.place:
        entry.add("location", one_line(event.place))
    entry.add("categories", [event.category])
    return entry


def _zone(name: str) -> tuple[ZoneInfo | None, str]:
    if not name:
        return None, "The site has no time zone, so times are written as local ones."
    try:
        return ZoneInfo(name), ""
    except (KeyError, OSError, ValueError) as error:
        return None, f"The site's time zone '{name[:40]}' is not known ({error}): times are local."
