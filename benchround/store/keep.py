"""Copies of the whole season, one a day and computer, the last ten kept."""

from __future__ import annotations

import contextlib
import io
import re
import zipfile
import zlib
from collections.abc import Iterator
from datetime import date
from itertools import chain
from pathlib import Path

from benchround.core.errors import SeasonError
from benchround.core.frozen import dataclass
from benchround.core.progress import Progress, unheard
from benchround.store.disk import (
    LARGEST_BYTES,
    SYSTEM_DISK,
    Disk,
    make_folder,
    read_whole,
    write_whole,
)
from benchround.store.errors import SeasonDamagedError
from benchround.store.layout import HEADING, KEEP, RECORDS
from benchround.store.naming import first_name, is_journal, is_page, journal_of
from benchround.store.pages import Page, page_from

COPIES = 10
_NAME = re.compile(r"(\d{4}-\d{2}-\d{2})-([a-z0-9-]+)\.zip")
_EARLIEST_ZIP_YEAR = 1980


@dataclass(frozen=True, slots=True)
class Kept:
    """One kept copy of a season.

    Attributes:
        path: the zip file.
        day: the day it was made.
        machine: short name of the computer that made it.
    """

    path: Path
    day: date
    machine: str


@dataclass(frozen=True, slots=True)
class GoodCopy:
    """A sound copy of one page, and the kept copy of the season it lies in."""

    kept: Kept
    page: Page


def keep_copy(
    season: Path,
    machine: str,
    day: date,
    disk: Disk = SYSTEM_DISK,
    *,
    drop: bool = True,
    progress: Progress = unheard,
) -> Path | None:
    """Keep a copy of the season for this day, unless there is one already.

    Args:
        season: the season folder.
        machine: short name of this computer; others' copies are left alone.
        day: today.
        disk: where it is written.
        drop: whether copies beyond the ten latest may go.
        progress: told of the files read.

    Returns:
        The copy made, or None if the day has one.

    Raises:
        SeasonError: it could not be made; earlier copies are all still there.
        StoppedError: it was stopped; the same holds.
    """
    path = season / KEEP / f"{day.isoformat()}-{machine}.zip"
    if zipfile.is_zipfile(path):
        return None
    make_folder(path.parent, disk)
    write_whole(path, packed(season, day, progress), disk)
    if drop:
        mine = [kept for kept in list_kept(season) if kept.machine == machine]
        # Where the clock was set back, copies of days to come are there: the new one stays anyway.
        for old in [kept for kept in mine if kept.path != path][COPIES - 1 :]:
            with contextlib.suppress(OSError):  # it is tried again tomorrow
                disk.remove(old.path)
    return path


def packed(season: Path, day: date, progress: Progress = unheard) -> bytes:
    """The season's own file and all its pages, as they stand, in one zip file.

    Args:
        season: the season folder.
        day: today.
        progress: told of the files read.

    Raises:
        SeasonError: the season cannot be reached.
    """
    stamp = (max(day.year, _EARLIEST_ZIP_YEAR), day.month, day.day, 0, 0, 0)
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w") as bundle:
        of = len(_names_in(season))
        for number, (name, data) in enumerate(_files_of(season)):
            progress(min(number, of - 1), of)
            entry = zipfile.ZipInfo(_as_text(name), stamp)
            bundle.writestr(entry, data, zipfile.ZIP_DEFLATED, compresslevel=1)
    return buffer.getvalue()


def _as_text(name: str) -> str:
    """A file's name with a mark in place of bytes that are no text, which no bundle can hold."""
    return name.encode(errors="surrogateescape").decode(errors="replace")


def _files_of(season: Path) -> Iterator[tuple[str, bytes]]:
    """The season's files and their names.

    Journals are read before the pages are listed: another computer that shares the folder may just
    then put one into its page, and its records are to be found in one of the two.
    """
    names = [name for name in _names_in(season) if is_journal(name)]
    journals = [(name, _read(season / name)) for name in names]
    pages = [name for name in _names_in(season) if not is_journal(name)]
    for name, data in chain(journals, ((name, _read(season / name)) for name in pages)):
        if data is not None:
            yield name, data


def _names_in(season: Path) -> list[str]:
    try:
        paths = sorted(p for p in (season / RECORDS).iterdir() if is_page(p.name))
    except OSError as error:
        raise SeasonError(f"{season} cannot be copied ({error.strerror})") from error
    return [HEADING, *(f"{RECORDS}/{path.name}" for path in paths)]


def _read(path: Path) -> bytes | None:
    try:
        return read_whole(path)
    except OSError:  # what cannot be opened is reported where it is read
        return None


def list_kept(season: Path) -> tuple[Kept, ...]:
    """The daily copies of all computers, the latest first."""
    try:
        names = [(path, _NAME.fullmatch(path.name)) for path in (season / KEEP).iterdir()]
    except OSError:
        return ()
    found = []
    for path, match in names:
        with contextlib.suppress(ValueError):  # a name that only looks like a day
            if match:
                found.append(Kept(path, date.fromisoformat(match[1]), match[2]))
    return tuple(sorted(found, key=lambda kept: (kept.day, kept.machine), reverse=True))


def files_in(bundle: Path) -> dict[str, bytes]:
    """The season's files in a kept copy: name within the season -> content.

    Raises:
        SeasonDamagedError: the copy cannot be read.
    """
    try:
        with zipfile.ZipFile(bundle) as opened:
            names = [name for name in opened.namelist() if _is_season_file(name)]
            if sum(opened.getinfo(name).file_size for name in names) > LARGEST_BYTES:
                raise zipfile.BadZipFile("what is in it is far too large")
            return {name: opened.read(name) for name in names}
    except (OSError, zipfile.BadZipFile, zlib.error, EOFError, RuntimeError) as error:
        # zipfile gives a RuntimeError where a bundle is locked or packed in a way it does not know
        raise SeasonDamagedError(
            f"the kept copy {bundle.name} cannot be read ({error}); choose another one"
        ) from error


def _is_season_file(name: str) -> bool:
    folder, _, page = name.rpartition("/")
    return name == HEADING or (folder == RECORDS and is_page(page) and "\\" not in page)


def newest_good(season: Path, page_name: str) -> GoodCopy | None:
    """The latest kept copy in which that page, or its journal, is sound; None if there is none.

    Pages only grow, so it is the one that holds most, whatever day the clock gave a copy. Where no
    copy has a page that was brought back or rescued, the page it came from is looked for.
    """
    kept_ones = list_kept(season)
    for name in dict.fromkeys((page_name, first_name(page_name))):
        found = filter(None, (_good_in(kept, name) for kept in kept_ones))
        good = max(found, key=lambda good: good.page.kept, default=None)
        if good is not None:
            return good
    return None


def latest_with_records(season: Path) -> Kept | None:
    """The latest kept copy that holds any page; None if there is none."""
    for kept in list_kept(season):
        with contextlib.suppress(SeasonDamagedError):
            if files_in(kept.path).keys() - {HEADING}:
                return kept
    return None


def _good_in(kept: Kept, page_name: str) -> GoodCopy | None:
    names = [page_name] if is_journal(page_name) else [page_name, journal_of(page_name)]
    with contextlib.suppress(SeasonDamagedError):
        files = files_in(kept.path)
        for name in names:
            data = files.get(f"{RECORDS}/{name}")
            if data is not None:
                page = page_from(name, (0, len(data), 0), data)
                if not page.fault:
                    return GoodCopy(kept, page)
    return None
