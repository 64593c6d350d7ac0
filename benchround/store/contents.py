"""All records of a season in memory, and which file each came from."""

from __future__ import annotations

import gc
import os
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from operator import attrgetter
from pathlib import Path

from benchround.core.errors import SeasonError
from benchround.core.record import Record
from benchround.store.decoder import Decoder
from benchround.store.ids import stamp_of
from benchround.store.layout import HEADING
from benchround.store.naming import Mark, is_page, is_unread_copy, mark_of
from benchround.store.pages import Page, read_page
from benchround.store.union import fold_in

MANY = 10_000
"""Records from which on Python's search for circular garbage is told to leave them alone: walking
over them would hold up a keypress now and then, and records never form circles."""

UNREAD: Mark = (0, 0, 0)
"""A mark no file has: the page is read again at the next look."""

UNSEEN: Mark = (0, 0, 1)
"""The mark of what has a page's name and is no file, or of which the disk says nothing."""

_LOOKS = 10
"""How often the folder is listed until it stands still. Without a second look, the records of a
journal put into its page by another program just then could be found in neither."""

_ID = attrgetter("id")


class Contents:
    """The pages and journals of a records folder and the union of their records.

    Attributes:
        folder: the records folder.
        state: a number that changes whenever files are found changed from outside.
        unread: names of files that seem to be copies of pages but are not called like one.
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.state = 0
        self.unread: tuple[str, ...] = ()
        self._pages: dict[str, Page] = {}
        self._by_id: dict[str, Record] = {}
        self._disagreements: set[str] = set()
        self._missed: dict[str, set[str]] = {}
        self._sorted: tuple[Record, ...] | None = ()
        self._newest: list[Record] = []  # taken since, all later than the sorted ones

    @property
    def records(self) -> tuple[Record, ...]:
        """Every record, once, sorted by id."""
        if self._sorted is None:
            self._sorted = tuple(sorted(self._by_id.values(), key=_ID))
        elif self._newest:
            self._sorted += tuple(self._newest)
        self._newest = []
        return self._sorted

    @property
    def last_id(self) -> str:
        """The latest well-formed id of any computer; empty when there is none."""
        return next((r.id for r in reversed(self.records) if stamp_of(r.id)), "")

    @property
    def names(self) -> Iterable[str]:
        """The names of the pages, in no order."""
        return self._pages.keys()

    @property
    def pages(self) -> tuple[Page, ...]:
        """The pages, by name."""
        return tuple(self._pages[name] for name in sorted(self._pages))

    def page(self, name: str) -> Page | None:
        """The page of that name, or None."""
        return self._pages.get(name)

    def known(self, name: str) -> Record | None:
        """The record of that id, or None."""
        return self._by_id.get(name)

    @property
    def disagreements(self) -> dict[str, tuple[str, ...]]:
        """The ids told in more than one way, each with the files that tell it."""
        return {
            name: tuple(p.name for p in self.pages if any(r.id == name for r in p.records))
            for name in sorted(self._disagreements)
        }

    @property
    def missed(self) -> dict[str, int]:
        """Files that lost records while the season was open, and how many are still missing."""
        counts = {name: len(ids - self._by_id.keys()) for name, ids in sorted(self._missed.items())}
        return {name: count for name, count in counts.items() if count}

    def refresh(self) -> bool:
        """Read the files that are new or changed since the last look, forget those that went.

        Returns:
            Whether any file came, went or changed.

        Raises:
            SeasonError: the folder cannot be listed; nothing is forgotten.
        """
        marks = self._list()
        if marks == self._marks():
            return False
        with _unwatched_memory():
            before, self._pages = self._pages, self._read_until_still(marks)
            self._unite()
        self._miss(before.values())
        self.state += 1
        if len(self._by_id) >= MANY:
            gc.freeze()
        return True

    def _read_until_still(self, marks: dict[str, Mark]) -> dict[str, Page]:
        """The files of a listing, listed again until nothing changes while they are read."""
        decoder, pages = Decoder(), self._pages
        for _ in range(_LOOKS):
            pages = {name: self._read(name, mark, pages, decoder) for name, mark in marks.items()}
            seen, marks = marks, self._list()
            if marks == seen:
                break
        return pages

    def _read(self, name: str, mark: Mark, known: dict[str, Page], decoder: Decoder) -> Page:
        page = known.get(name)
        if page is None or page.mark != mark:
            page = read_page(self.folder / name, mark, decoder)
        return page

    def _marks(self) -> dict[str, Mark]:
        return {name: page.mark for name, page in self._pages.items()}

    def take(self, page: Page, added: Iterable[Record] = (), spent: str = "") -> None:
        """Hold a page this program has just written.

        Args:
            page: the page as it is now.
            added: the records in it that no page held before.
            spent: a journal whose records are in it and which is no more.
        """
        self._pages[page.name] = page
        self._pages.pop(spent, None)
        for record in added:
            if self._sorted is not None and record.id > self._last_sorted():
                self._newest.append(record)
            else:
                self._sorted, self._newest = None, []
        self._disagreements |= fold_in(self._by_id, added)

    def doubt(self, name: str) -> None:
        """Have a page read again at the next look, because its state on disk is not certain."""
        page = self._pages.get(name)
        if page is not None:
            self._pages[name] = replace(page, mark=UNREAD)

    def _last_sorted(self) -> str:
        if self._newest:
            return self._newest[-1].id
        return self._sorted[-1].id if self._sorted else ""

    def mark(self, name: str) -> Mark | None:
        """The mark of the file of that name as it was last seen, None if it was not there."""
        page = self._pages.get(name)
        return page.mark if page else None

    def _list(self) -> dict[str, Mark]:
        try:
            with os.scandir(self.folder) as entries:
                marks = dict(map(_marked, entries))
        except OSError as error:
            if isinstance(error, FileNotFoundError) and not self._pages and self._is_new_season():
                return {}
            cure = "reconnect the disk or share they lie on"
            if isinstance(error, PermissionError):
                cure = "change the folder's permissions"
            raise SeasonError(
                f"the records in {self.folder} cannot be reached ({error.strerror}); {cure}"
            ) from error
        self.unread = tuple(sorted(filter(is_unread_copy, marks)))
        return {name: mark for name, mark in marks.items() if mark is not None}

    def _is_new_season(self) -> bool:
        """Whether the season is there without its records folder, as git brings an empty one."""
        return (self.folder.parent / HEADING).exists()

    def _unite(self) -> None:
        by_id: dict[str, Record] = {}
        for page in self.pages:
            by_id.update(zip(map(_ID, page.records), page.records, strict=True))
        self._by_id, self._disagreements, self._sorted = by_id, set(), None
        if len(by_id) < sum(len(page.records) for page in self._pages.values()):
            self._by_id = {}
            for page in self.pages:
                self._disagreements |= fold_in(self._by_id, page.records)

    def _miss(self, before: Iterable[Page]) -> None:
        for page in before:
            if self._pages.get(page.name) is page:
                continue
            ids = {record.id for record in page.records if record.id not in self._by_id}
            if ids:
                self._missed.setdefault(page.name, set()).update(ids)


def _marked(entry: os.DirEntry[str]) -> tuple[str, Mark | None]:
    if not is_page(entry.name):
        return entry.name, None
    try:
        if entry.is_dir():
            return entry.name, None
        return entry.name, mark_of(entry.stat()) if entry.is_file() else UNSEEN
    except FileNotFoundError:  # removed since the folder was listed
        return entry.name, None
    except OSError:  # one file the disk does not give out must not keep the others from being read
        return entry.name, UNSEEN


@contextmanager
def _unwatched_memory() -> Iterator[None]:
    """Keep Python's search for circular garbage off while a season is read: records form none."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()
