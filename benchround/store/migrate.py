"""Moving a season written in an older format to the one this program writes.

Every step works on a copy in memory, and the season as it was is kept first. Then the season's
own file says that a move is under way, so that an older program keeps off and an interrupted move
is taken up again from the kept copy; it says so until every page is written.
"""

from __future__ import annotations

import contextlib
from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import date
from pathlib import Path

from benchround.core.errors import SeasonError
from benchround.store.disk import SYSTEM_DISK, Disk, make_folder, write_whole
from benchround.store.errors import SeasonDamagedError, unsure, unwritten
from benchround.store.heading import FORMAT, Heading, write_heading
from benchround.store.journal import parse_journal
from benchround.store.keep import files_in, packed
from benchround.store.layout import HEADING, KEEP, RECORDS
from benchround.store.naming import is_journal, page_of
from benchround.store.seal import CHECK, format_page
from benchround.store.tables import Tables, parse_tables

Pages = dict[str, Tables]
"""Page name -> what stands in it."""

Migration = Callable[[Pages], Pages]
"""From all sound pages in one format to the pages in the next; files left out are removed."""

STEPS: dict[int, Migration] = {}
"""Format a step starts from -> the step. Format 1 is the first, so there are none yet."""


def migrate(
    season: Path,
    heading: Heading,
    day: date,
    disk: Disk = SYSTEM_DISK,
    steps: Mapping[int, Migration] = STEPS,
) -> Heading:
    """Bring a season to the present format, or finish doing so; damaged pages stay untouched.

    Args:
        season: the season folder, held for writing.
        heading: what its own file says.
        day: today, for the copy that is kept.
        disk: where it is written.
        steps: the steps known.

    Returns:
        The heading the season has now.

    Raises:
        SeasonError: a step is missing or something could not be written; the season as it was
            lies in the kept copy, and opening it again finishes the move.
    """
    if heading.format == FORMAT and heading.moving_from is None:
        return heading
    start = heading.format if heading.moving_from is None else heading.moving_from
    _require_steps(start, steps)
    copy = season / KEEP / f"before-format-{FORMAT}.zip"
    if heading.moving_from is None:
        make_folder(copy.parent, disk)
        write_whole(copy, packed(season, day), disk)
        heading = replace(heading, format=FORMAT, moving_from=start)
        write_heading(season, heading, disk)
    new, old = _sound_pages(copy)
    for number in range(start, FORMAT):
        new = steps[number](new)
    _write_pages(season / RECORDS, old, new, disk)
    heading = replace(heading, moving_from=None)
    write_heading(season, heading, disk)
    return heading


def _require_steps(start: int, steps: Mapping[int, Migration]) -> None:
    if any(number not in steps for number in range(start, FORMAT)):
        raise SeasonError(
            f"this season is in format {start}, which this benchround cannot bring to format"
            f" {FORMAT}; open it once with a benchround that knows format {start}"
        )


def _sound_pages(copy: Path) -> tuple[Pages, set[str]]:
    """The sound pages, records of sound journals put into theirs, and the names of all of them."""
    files = {path.removeprefix(f"{RECORDS}/"): data for path, data in files_in(copy).items()}
    files.pop(HEADING, None)
    pages: Pages = {}
    for name, data in files.items():
        if not is_journal(name):
            with contextlib.suppress(SeasonDamagedError):
                pages[name] = parse_tables(data)
                pages[name].pop(CHECK, None)
    names = set(pages)
    for name in filter(is_journal, files):
        journal, page = parse_journal(files[name]), page_of(name)
        if not journal.damaged and (page in pages or page not in files):
            table = pages.setdefault(page, {}).setdefault(RECORDS, {})
            last = max(map(int, table), default=0)
            table |= {str(n): document for n, document in enumerate(journal.documents, last + 1)}
            names.add(name)
    return pages, names


def _write_pages(folder: Path, old: set[str], new: Pages, disk: Disk) -> None:
    for name, tables in new.items():
        write_whole(folder / name, format_page(tables), disk)
    for name in sorted(old - new.keys()):
        if (folder / name).exists():  # a move that was interrupted may have removed it
            _remove(folder / name, disk)
    try:
        disk.sync_folder(folder)
    except OSError as error:
        raise unsure(folder, error) from error


def _remove(path: Path, disk: Disk) -> None:
    try:
        disk.remove(path)
    except OSError as error:
        raise unwritten(path, error) from error
