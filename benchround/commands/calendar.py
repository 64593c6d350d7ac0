"""`benchround calendar`: the coming weeks as a file every calendar reads."""

from __future__ import annotations

import argparse
from collections.abc import Iterator, Sequence
from datetime import UTC, date, datetime, time, timedelta

from benchround.core.errors import InputError
from benchround.core.task import Task
from benchround.desk import Desk
from benchround.feeds.calendar_told import Told, follow, newest, told_data, told_from
from benchround.feeds.coming import BY_DAY, MOST_WEEKS, coming
from benchround.feeds.out_file import STANDARD_OUTPUT, write_out
from benchround.plain import title
from benchround.rounds.build import common_tasks
from benchround.season_given import open_given, positive, season_arguments
from benchround.shell.beside import keep_beside, kept_beside
from benchround.shell.progress import watched
from benchround.shell.saying import remark

HELP = "the coming weeks as an iCalendar file"
EXAMPLE = "benchround calendar --sample --weeks 6 --out round.ics"
MORE_EXAMPLES = ("benchround calendar --sample --weeks 1 --stamp 2026-05-27T06:00",)
DETAILS = (
    "What is due, what is held with the day to look again, and what is to come by forecast. A "
    "later file, read into the same calendar, moves what has moved, and takes back what earlier "
    "ones told and is no longer asked for. Lids have their hours, in the site's time zone."
)

KEPT = "calendar"
"""How the names of the files begin in which it is kept what calendars were told."""
UNWRITTEN = "no file was written."
NOT_KEPT = "A later calendar cannot take back what this one says."
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
        living = coming(
            season, desk.round(), _ahead(desk), MOST_WEEKS, lambda task: title(task, season)
        )
        stamp = _stamp(given, desk.today)
        told, kept = follow(
            {} if given.sample else newest(kept_beside(desk, f"{KEPT}-*.json", told_from)),
            living,
            first=desk.today,
            last=desk.today + timedelta(weeks=weeks),
            stamp=stamp,
        )
        with watched("writing", "events", UNWRITTEN) as progress:
            data, remarks = calendar_data(
                told,
                name=desk.folder.name,
                site=f"{desk.folder.name}|{desk.folder.created}",
                stamp=stamp,
                timezone=season.site.timezone,
                progress=progress,
            )
        write_out(given.out, data)
        if not given.sample:
            keep_beside(desk, f"{KEPT}-{desk.folder.machine}.json", told_data(kept), NOT_KEPT)
        remark((*remarks, _count(told), *desk.problems))
    finally:
        desk.close()
    return 0


def _count(told: Sequence[Told]) -> str:
    gone = sum(1 for one in told if one.gone is not None)
    taken_back = f", {gone} more are taken back" if gone else ""
    return f"{len(told) - gone} events{taken_back}."


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
