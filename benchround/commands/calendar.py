"""`benchround calendar`: the coming weeks as a file every calendar reads."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from datetime import UTC, date, datetime, time, timedelta

from benchround.core.errors import InputError
from benchround.core.task import Task
from benchround.desk import Desk
from benchround.feeds.coming import BY_DAY, MOST_WEEKS, coming
from benchround.feeds.out_file import STANDARD_OUTPUT, write_out
from benchround.plain import title
from benchround.rounds.build import common_tasks
from benchround.season_given import open_given, positive, say, season_arguments

HELP = "the coming weeks as an iCalendar file"
EXAMPLE = "benchround calendar --sample --weeks 6 --out round.ics"

MOST_DAYS_AHEAD = 14
"""How far an outlook is believed for what is asked for by the day."""


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    season_arguments(parser)
    parser.add_argument("--weeks", default="4", help="how many weeks (4)")
    parser.add_argument("--out", metavar="FILE", default=STANDARD_OUTPUT, help="file to write")
    parser.add_argument(
        "--stamp", metavar="TIME", default="", help="when the file is made, as 2026-05-27T06:00 UTC"
    )


def run(given: argparse.Namespace) -> int:
    """Write the calendar; remarks go to standard error."""
    from benchround.feeds.calendar import calendar_data

    weeks = positive(given.weeks)
    if weeks > MOST_WEEKS:
        raise InputError(f"{weeks} weeks are too many: {MOST_WEEKS} at most.")
    desk = open_given(given)
    try:
        season = desk.season
        events = coming(season, desk.round(), _ahead(desk), weeks, lambda task: title(task, season))
        data, remarks = calendar_data(
            events,
            name=desk.folder.name,
            site=f"{desk.folder.name}|{desk.folder.created}",
            stamp=_stamp(given, desk.today),
            timezone=season.site.timezone,
        )
        write_out(given.out, data)
        say((*remarks, f"{len(events)} events.", *desk.problems))
    finally:
        desk.close()
    return 0


def _ahead(desk: Desk) -> Iterator[tuple[date, Task]]:
    """Tasks asked for by the day, on the later days whose weather is known."""
    for days in range(1, MOST_DAYS_AHEAD + 1):
        day = desk.today + timedelta(days=days)
        if desk.season.weather.on(day) is not None:
            tasks = common_tasks(desk.season, day)
            yield from ((day, task) for task in tasks if task.family in BY_DAY)


def _stamp(given: argparse.Namespace, today: date) -> datetime:
    if given.stamp:
        try:
            said = datetime.fromisoformat(given.stamp)
        except ValueError:
            raise InputError(
                f"'{given.stamp[:30]}' is no time: write it as 2026-05-27T06:00."
            ) from None
        return said.replace(tzinfo=UTC) if said.tzinfo is None else said.astimezone(UTC)
    if given.sample or given.on:
        return datetime.combine(today, time(6), UTC)
    return datetime.now(UTC).replace(microsecond=0)
