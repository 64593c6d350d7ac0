"""Putting the records of a journal into its page.

The page is on the disk before the journal goes. Cut off in between, the same records stand in both;
they are read once, and put in once when folding is done again.
"""

from __future__ import annotations

import contextlib
from collections.abc import Iterable
from pathlib import Path

from tinydb import TinyDB

from benchround.core.errors import SeasonError
from benchround.store.codec import Document
from benchround.store.disk import Disk, read_whole
from benchround.store.errors import SeasonDamagedError, unreachable
from benchround.store.journal import parse_journal
from benchround.store.layout import RECORDS
from benchround.store.naming import journal_of, page_of
from benchround.store.storage import AtomicStorage
from benchround.store.tables import as_json


def fold(folder: Path, page: str, fresh: Iterable[Document], disk: Disk) -> int:
    """Put the records of a page's journal, and fresh ones, into it, and remove the journal.

    Args:
        folder: the records folder.
        page: name of the page; it and its journal may both be missing.
        fresh: documents that stand in neither.
        disk: where it is written.

    Returns:
        How many documents were put in.

    Raises:
        SeasonDamagedError: the page or the journal is damaged; nothing was written.
        SeasonUnsureError: written, but not confirmed by the disk; the journal is still there.
        SeasonError: the page could not be written; nothing was.
    """
    documents = [*_waiting(folder / journal_of(page)), *fresh]
    added = 0
    if documents or (folder / page).exists():
        added = _insert(folder / page, documents, disk)
    with contextlib.suppress(OSError):  # it is read until it goes, and tells nothing new
        disk.remove(folder / journal_of(page))
    return added


def _insert(page: Path, documents: Iterable[Document], disk: Disk) -> int:
    with TinyDB(page, storage=AtomicStorage, disk=disk) as database:
        table = database.table(RECORDS)
        there = {as_json(document) for document in table}
        missing = [document for document in documents if as_json(document) not in there]
        table.insert_multiple(missing)
    return len(missing)


def _waiting(journal: Path) -> tuple[Document, ...]:
    try:
        found = parse_journal(read_whole(journal))
    except FileNotFoundError:
        return ()
    except OSError as error:
        raise unreachable(journal, error) from error
    if found.damaged:
        raise SeasonDamagedError(f"{journal.name} is damaged and was left as it is")
    return found.documents


def fold_journals(folder: Path, journals: Iterable[str], disk: Disk) -> None:
    """Fold these journals; what cannot be folded stays and is read as it is."""
    for name in journals:
        with contextlib.suppress(SeasonError):
            fold(folder, page_of(name), (), disk)
