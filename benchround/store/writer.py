"""Writing the records of one action: all of them or none, in one small file."""

from __future__ import annotations

import os
from collections.abc import Callable
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import Any

from tinydb import TinyDB
from tinydb.table import Document

from benchround.core.errors import InputError, SeasonError
from benchround.core.record import Record
from benchround.store.codec import encode
from benchround.store.contents import UNREAD, Contents
from benchround.store.disk import Disk, write_whole
from benchround.store.errors import SeasonUnsureError, unreachable
from benchround.store.layout import RECORDS
from benchround.store.lock import Lock
from benchround.store.merging import same
from benchround.store.pages import FULL, Mark, Page, mark_of, page_name, page_number
from benchround.store.storage import AtomicStorage

_LOOKS = 10
"""How often a page may change under our hands before we give up writing it."""

Entry = tuple[Record, dict[str, Any]]
"""A record, and the document it is on disk."""


class Writer:
    """Adds records to the newest page of this computer and month."""

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

    def append(self, records: tuple[Record, ...]) -> None:
        """Write the records of one action; `SeasonFolder.append` says what may be raised."""
        entries = [(record, encode(record)) for record in records]
        self._lock.confirm()
        self._settle_unsure()
        name = self._settled_page()
        fresh = self._fresh(entries)
        if fresh:
            self._write(name, fresh)

    def _settle_unsure(self) -> None:
        """Write pages again whose last writing the disk did not confirm."""
        for name in sorted(self._unsure):
            path = self._contents.folder / name
            try:
                data = path.read_bytes()
            except OSError as error:
                raise unreachable(path, error) from error
            write_whole(path, data, self._disk)
            self._contents.doubt(name)
            self._unsure.discard(name)

    def _settled_page(self) -> str:
        """The name of the page to write, once it is as it was last seen."""
        for _ in range(_LOOKS):
            name = self._page_for_now()
            if _mark_on_disk(self._contents.folder / name) == self._contents.mark(name):
                return name
            self._contents.refresh()
        raise SeasonError(f"{name} keeps being changed from outside; nothing was recorded")

    def _page_for_now(self) -> str:
        month = self._clock().date().isoformat()[:7]
        numbers = (page_number(name, self._machine, month) for name in self._contents.names)
        last = max((number for number in numbers if number is not None), default=0)
        page = self._contents.page(page_name(self._machine, month, last))
        if page is not None and not page.fault and page.kept < FULL:
            return page.name
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

    def _write(self, name: str, fresh: list[Entry]) -> None:
        path = self._contents.folder / name
        page = self._contents.page(name) or Page(name, UNREAD, ())
        last = page.last + len(fresh)
        numbered = zip(range(page.last + 1, last + 1), fresh, strict=True)
        documents = [Document(document, number) for number, (_, document) in numbered]
        try:
            with TinyDB(path, storage=AtomicStorage, disk=self._disk) as database:
                database.table(RECORDS).insert_multiple(documents)
        except SeasonUnsureError:
            self._unsure.add(name)
            self._contents.doubt(name)
            raise
        added = tuple(record for record, _ in fresh)
        written = replace(
            page,
            mark=_mark_on_disk(path) or UNREAD,
            records=page.records + added,
            kept=page.kept + len(added),
            last=last,
        )
        self._contents.take(written, added)


def _mark_on_disk(path: Path) -> Mark | None:
    try:
        return mark_of(os.stat(path))
    except FileNotFoundError:
        return None
    except OSError as error:
        raise unreachable(path, error) from error
