"""Writing the records of one action: all of them or none.

An action is one line at the end of a journal. The action that would fill a page takes the journal's
records with it into the page instead.
"""

from __future__ import annotations

import contextlib
from collections.abc import Callable
from dataclasses import replace
from datetime import datetime
from pathlib import Path

from benchround.core.errors import InputError, SeasonError
from benchround.core.record import Record
from benchround.store.adding import add_line, begin_file, mark_on_disk
from benchround.store.codec import Document, encode
from benchround.store.contents import UNREAD, Contents
from benchround.store.disk import Disk
from benchround.store.errors import SeasonDamagedError, SeasonUnsureError
from benchround.store.journal import line_of
from benchround.store.lock import Lock
from benchround.store.naming import (
    Mark,
    journal_of,
    own_journals,
    page_name,
    page_number,
)
from benchround.store.pages import FULL, Page
from benchround.store.union import same

# Folding is imported where it is used: TinyDB is needed once in about two hundred records.

_LOOKS = 10
"""How often a file may change under our hands before we give up writing it."""

Entry = tuple[Record, Document]
"""A record, and the document it is on disk."""


class Writer:
    """Adds records to the newest page of this computer and month, or to the journal before it."""

    def __init__(
        self,
        contents: Contents,
        lock: Lock,
        machine: str,
        clock: Callable[[], datetime],
        disk: Disk,
    ) -> None:
        self._contents = contents
        self._lock = lock
        self._machine = machine
        self._clock = clock
        self._disk = disk
        self._unsure: set[str] = set()
        self._chosen = ("", -1, "")  # month, state of the folder, page chosen for it

    def append(self, records: tuple[Record, ...]) -> None:
        """Write the records of one action; `SeasonFolder.append` says what may be raised."""
        entries = [(record, encode(record)) for record in records]
        self._lock.confirm()
        self._settle_unsure()
        for _ in range(_LOOKS):
            page = self._settled_page()
            fresh = self._fresh(entries)
            if not fresh or self._write(page, fresh):
                return
            self._contents.refresh()
        raise _restless(page)

    def fold(self) -> bool:
        """Put what stands in this computer's journals into their pages, as far as that goes.

        Returns:
            Whether there was anything to put; the files have changed then.
        """
        journals = own_journals(self._contents.names, self._machine)
        if not journals:
            return False
        from benchround.store.folding import fold_journals

        with contextlib.suppress(SeasonError):
            self._lock.confirm()
            fold_journals(self._contents.folder, journals, self._disk)
        return True

    def _settle_unsure(self) -> None:
        """Write a page and its journal as one where the disk did not confirm one of them."""
        if not self._unsure:
            return
        from benchround.store.folding import fold

        for page in sorted(self._unsure):
            with contextlib.suppress(SeasonDamagedError):  # then it is not written to any more
                fold(self._contents.folder, page, (), self._disk)
            self._doubt(page)
            self._unsure.discard(page)

    def _settled_page(self) -> str:
        """The name of the page to write, once it and its journal are as they were last seen."""
        for _ in range(_LOOKS):
            page = self._page_for_now()
            if self._as_seen(page) and self._as_seen(journal_of(page)):
                return page
            self._contents.refresh()
        raise _restless(page)

    def _as_seen(self, name: str) -> bool:
        return mark_on_disk(self._contents.folder / name) == self._contents.mark(name)

    def _page_for_now(self) -> str:
        month, state = self._clock().date().isoformat()[:7], self._contents.state
        if self._chosen[:2] != (month, state):
            self._chosen = month, state, self._choose_page(month)
        return self._chosen[2]

    def _choose_page(self, month: str) -> str:
        numbers = (page_number(name, self._machine, month) for name in self._contents.names)
        last = max((number for number in numbers if number is not None), default=0)
        page = page_name(self._machine, month, last)
        found = [self._contents.page(name) for name in (page, journal_of(page))]
        files = [file for file in found if file is not None]
        if files and not any(file.fault for file in files) and sum(f.kept for f in files) < FULL:
            return page
        return page_name(self._machine, month, last + 1)

    def _fresh(self, entries: list[Entry]) -> list[Entry]:
        """The entries that are not in the season yet."""
        fresh: dict[str, Entry] = {}
        for record, document in entries:
            known = self._contents.known(record.id)
            if known is None and record.id in fresh:
                known = fresh[record.id][0]
            if known is None:
                fresh[record.id] = (record, document)
            elif not same(known, record):
                raise InputError(
                    f"the id {record.id} is taken by another record; records are never changed,"
                    " withdraw it and write a new one"
                )
        return list(fresh.values())

    def _write(self, name: str, fresh: list[Entry]) -> bool:
        """Write the entries; False if a file changed meanwhile and nothing was written."""
        page = self._contents.page(name) or Page(name, UNREAD, ())
        journal = self._contents.page(journal_of(name)) or Page(journal_of(name), UNREAD, ())
        try:
            if page.kept + journal.kept + len(fresh) < FULL and not journal.unfinished:
                return self._add(journal, fresh)
            self._fold_in(page, journal, fresh)
        except SeasonUnsureError:
            self._unsure.add(name)
            self._doubt(name)
            raise
        return True

    def _add(self, journal: Page, fresh: list[Entry]) -> bool:
        path = self._contents.folder / journal.name
        if journal.mark == UNREAD:
            journal = replace(journal, mark=begin_file(path, self._disk))
            self._contents.take(journal)
        line = line_of(document for _, document in fresh)
        try:
            mark = add_line(path, line, journal.mark, self._disk)
        except SeasonUnsureError:
            raise
        except SeasonError:
            self._contents.take(replace(journal, mark=_taken_back(path, journal.mark)))
            raise
        if mark is not None:
            self._contents.take(_longer(journal, mark, fresh), _records(fresh))
        return mark is not None

    def _fold_in(self, page: Page, journal: Page, fresh: list[Entry]) -> None:
        from benchround.store.folding import fold

        folder = self._contents.folder
        added = fold(folder, page.name, [document for _, document in fresh], self._disk)
        mark = UNREAD
        with contextlib.suppress(SeasonError):  # the records are on the disk, whatever comes now
            mark = mark_on_disk(folder / page.name) or UNREAD
        whole = replace(
            page,
            mark=mark,
            records=page.records + journal.records,
            kept=page.kept + journal.kept,
            remarks=page.remarks + journal.remarks,
        )
        self._contents.take(_longer(whole, mark, fresh), _records(fresh), spent=journal.name)
        if added != journal.kept + len(fresh) or journal.remarks:
            self._contents.doubt(page.name)  # it holds other things than those put together here
        self._chosen = ("", -1, "")

    def _doubt(self, page: str) -> None:
        self._contents.doubt(page)
        self._contents.doubt(journal_of(page))


def _longer(page: Page, mark: Mark, fresh: list[Entry]) -> Page:
    """A file as it is after these entries were added to it."""
    records = page.records + _records(fresh)
    return replace(page, mark=mark, records=records, kept=page.kept + len(fresh))


def _taken_back(path: Path, mark: Mark) -> Mark:
    """The mark of a journal a line was taken back from: the same but for the time of change."""
    with contextlib.suppress(SeasonError):
        now = mark_on_disk(path)
        if now is not None and now[1:] == mark[1:]:
            return now
    return mark


def _records(entries: list[Entry]) -> tuple[Record, ...]:
    return tuple(record for record, _ in entries)


def _restless(page: str) -> SeasonError:
    return SeasonError(f"{page} keeps being changed from outside; nothing was recorded")
