"""`weather import` and `weather fetch`: readings out of a file, the outlook from a service."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from datetime import datetime
from pathlib import Path

from benchround.commands.weather_out import draft_value, open_desk
from benchround.core.errors import InputError, UnknownNameError
from benchround.core.record import Draft, Kind
from benchround.core.weather import DayWeather
from benchround.desk import FURTHEST_BACK, Desk
from benchround.feeds.daily_reading import DailyFile, DailyReading
from benchround.feeds.fetch import USUAL_ADDRESS, Fetched, address_for, fetch_outlook
from benchround.plain import JsonValue
from benchround.reckoning.answer import Answer
from benchround.reckoning.figures import day
from benchround.reckoning.weather_file import fault_remarks, file_arguments, weather_file
from benchround.whereabouts import data_folder

PREVIEWED = 5
FETCH, ADDRESS = "weather_fetch", "weather_url"
"""The two settings that allow the outlook to be fetched."""


def import_arguments(parser: argparse.ArgumentParser) -> None:
    """The file, the season, and how the file is written."""
    parser.add_argument("file", metavar="FILE", help="table of days, headings first")
    parser.add_argument("season", nargs="?", default="", help="season folder")
    parser.add_argument("--place", default="", metavar="CODE", help="the thermometer of a place")
    parser.add_argument("--preview", action="store_true", help="say what would come in, no more")
    parser.add_argument("--on", type=day, metavar="DATE", help="the day of importing (today)")
    file_arguments(parser)


def bring_in(given: argparse.Namespace) -> Answer:
    """Record a file's readings that are not known yet."""
    found = weather_file(given, given.file)
    desk = open_desk(given.season, given.on, read_only=given.preview)
    try:
        if given.place and desk.season.place(given.place) is None:
            raise UnknownNameError(f"There is no place {given.place[:40]!r} in this season.")
        usable = [r for r in found.readings if desk.today - FURTHEST_BACK <= r.day <= desk.today]
        new = [r for r in usable if not _known(desk, given.place, r)]
        note = f"from {Path(given.file).name}"
        drafts = [reading.draft(given.place, note) for reading in new]
        if drafts and not given.preview:
            desk.record(drafts)
    finally:
        desk.close()
    too_far = len(found.readings) - len(usable)
    return _brought(given, found, drafts, len(usable) - len(new), too_far)


def _known(desk: Desk, place: str, reading: DailyReading) -> bool:
    """Whether the season has these very figures as readings already."""
    weather = desk.season.weather
    has: DayWeather | None = weather.at(place, reading.day) if place else weather.on(reading.day)
    if has is None or has.basis != "reading":
        return False
    return all(getattr(has, name) == value for name, value in reading.figures().items())


def _brought(
    given: argparse.Namespace, found: DailyFile, drafts: Sequence[Draft], same: int, too_far: int
) -> Answer:
    done = "would be recorded" if given.preview else "recorded"
    span = (
        f", {found.readings[0].day.isoformat()} to {found.readings[-1].day.isoformat()}"
        if found.readings
        else ""
    )
    columns = {
        str(column): f"{mapped.heading} ({mapped.unit})" if mapped.unit else mapped.heading
        for column, mapped in found.columns.items()
    }
    lines = [
        f"{len(drafts)} readings {done}; {len(found.readings)} in the file{span}",
        "  columns: " + ", ".join(f"{name} = {heading}" for name, heading in columns.items()),
    ]
    if same:
        lines.append(f"  {same} were known already")
    if given.preview:
        lines += [f"  {draft_words(draft)}" for draft in drafts[:PREVIEWED]]
    shown: list[JsonValue] = [draft_value(draft) for draft in drafts[:PREVIEWED]]
    faults: list[JsonValue] = [{"row": f.row, "reason": f.reason} for f in found.faults]
    value: dict[str, JsonValue] = {
        "recorded": 0 if given.preview else len(drafts),
        "new": len(drafts),
        "known_already": same,
        "too_far_off": too_far,
        "in_file": len(found.readings),
        "columns": dict(columns),
        "first": shown,
        "faults": faults,
        "gaps": [{"from": first.isoformat(), "days": days} for first, days in found.gaps],
    }
    remarks = list(fault_remarks(found))
    if too_far:
        remarks.append(f"{too_far} days are still to come or more than 12 years back: left out")
    return Answer(value, tuple(lines), tuple(remarks))


def draft_words(draft: Draft) -> str:
    """One draft in a line."""
    figures = ", ".join(f"{name} {value}" for name, value in draft.figures.items())
    return f"{draft.day.isoformat() if draft.day else ''}: {figures}"


def fetch_arguments(parser: argparse.ArgumentParser) -> None:
    """The season, turning it on and off, asking again."""
    parser.add_argument("season", nargs="?", default="", help="season folder")
    parser.add_argument("--turn", choices=("on", "off"), help="allow fetching, or stop it")
    parser.add_argument(
        "--url", default="", metavar="ADDRESS", help="service to ask, with {lat} and {lon}"
    )
    parser.add_argument("--again", action="store_true", help="ask although the kept one is fresh")
    parser.set_defaults(refuse=parser.error)


def fetch(given: argparse.Namespace) -> Answer:
    """Fetch the outlook and record it, or turn that on or off."""
    if given.url and given.turn != "on":
        given.refuse("--url goes with --turn on")
    desk = open_desk(given.season, None)
    try:
        if given.turn is not None:
            return _turn(desk, given.turn, given.url)
        return _fetch(desk, again=given.again)
    finally:
        desk.close()


def _turn(desk: Desk, turn: str, url: str) -> Answer:
    drafts = [Draft(Kind.SETTING, FETCH, {"value": turn})]
    lines = [f"Fetching the outlook is {turn}."]
    address = ""
    if turn == "on":
        template = url or desk.season.settings.get(ADDRESS, "") or USUAL_ADDRESS
        address = address_for(template, *_where(desk))
        drafts.append(Draft(Kind.SETTING, ADDRESS, {"value": template}))
        lines.append(f"  'benchround weather fetch' will ask: {address}")
        lines.append("  The site's place to about a kilometre is all that is sent.")
    desk.record(drafts)
    return Answer({"fetch": turn, "address": address or None}, tuple(lines))


def _where(desk: Desk) -> tuple[float, float]:
    site = desk.season.site
    if any("no site" in words or "latitude" in words for words in site.assumed):
        raise InputError("The site has no latitude yet: set it up before fetching an outlook.")
    return site.lat_deg, site.lon_deg


def _fetch(desk: Desk, *, again: bool) -> Answer:
    settings = desk.season.settings
    template = settings.get(ADDRESS, "")
    if settings.get(FETCH) != "on" or not template:
        raise InputError(
            "Fetching the outlook is off: 'benchround weather fetch --turn on' shows what is asked "
            "of whom, and allows it."
        )
    now = datetime.now()
    found = fetch_outlook(address_for(template, *_where(desk)), data_folder(), now, again=again)
    drafts = [day.draft() for day in found.days if not _same_outlook(desk, day.draft())]
    if drafts:
        desk.record(drafts)
    return _fetched(desk, found, drafts, now)


def _same_outlook(desk: Desk, draft: Draft) -> bool:
    known = desk.season.weather.on(draft.day) if draft.day is not None else None
    if known is None:
        return False
    if known.basis == "reading":
        return True  # a reading beats any outlook: nothing to add
    return all(getattr(known, name) == value for name, value in draft.figures.items())


def _fetched(desk: Desk, found: Fetched, drafts: Sequence[Draft], now: datetime) -> Answer:
    age = found.age_words(now)
    head = f"{'The kept answer' if found.kept else 'The answer'}, {age}; {len(drafts)} days new"
    value: dict[str, JsonValue] = {
        "recorded": len(drafts),
        "kept": found.kept,
        "fetched_at": found.fetched_at.isoformat(timespec="minutes"),
        "age": age,
        "problem": found.problem or None,
        "days": [draft_value(day.draft()) for day in found.days],
    }
    words = tuple(f"  {day.words(desk.today)}" for day in found.days)
    problem = (found.problem,) if found.problem else ()
    return Answer(value, (head, *words), (*problem, *found.doubts))
