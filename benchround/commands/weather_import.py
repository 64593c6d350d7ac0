"""`weather import`: readings out of a table of days."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from pathlib import Path

from benchround.commands.weather_out import draft_value, open_desk
from benchround.core.errors import UnknownNameError
from benchround.core.record import Draft
from benchround.core.sky.weather import DayWeather
from benchround.desk import FURTHEST_BACK, Desk
from benchround.feeds.daily_reading import DailyFile, DailyReading
from benchround.plain import JsonValue
from benchround.reckoning.answer import Answer
from benchround.reckoning.figures import day
from benchround.reckoning.weather_file import fault_remarks, file_arguments, weather_file

PREVIEWED = 5


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
