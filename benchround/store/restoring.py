"""Bringing back what a kept copy still has, and clearing away a damaged file.

Nothing here takes a record away: bringing back adds what is missing, and a damaged file is moved
out of the way only after what could still be read of it stands in a sound one.
"""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from benchround.core.errors import SeasonError
from benchround.core.frozen import dataclass
from benchround.core.progress import Progress, told, unheard
from benchround.core.record import Record
from benchround.store.codec import Document
from benchround.store.disk import SYSTEM_DISK, Disk, make_folder, read_whole, write_whole
from benchround.store.errors import SeasonDamagedError, unwritten
from benchround.store.heading import read_heading
from benchround.store.keep import Kept, files_in
from benchround.store.layout import ASIDE, HEADING, RECORDS
from benchround.store.naming import KEPT, RESCUED, first_name, is_journal, is_page, page_of
from benchround.store.pages import documents_in, page_from
from benchround.store.seal import format_page


@dataclass(frozen=True, slots=True)
class Restoration:
    """What bringing back a kept copy adds to the season.

    Attributes:
        kept: the copy it comes from.
        files: what is written: names of new files in the records folder, and the season's own
            file if that is damaged.
        records: the records that come back, in the order they stand in the copy.
        unread: how many more come back that this program cannot read.
    """

    kept: Kept
    files: tuple[str, ...]
    records: tuple[Record, ...]
    unread: int


def restore(
    season: Path,
    kept: Kept,
    *,
    preview: bool = True,
    disk: Disk = SYSTEM_DISK,
    progress: Progress = unheard,
) -> Restoration:
    """Bring back every record the copy has and the season has not; nothing is overwritten.

    Args:
        season: the season folder.
        kept: the copy to take from.
        preview: only say what would come back.
        disk: where it is written.
        progress: told of the files looked at, then of those written.

    Raises:
        SeasonDamagedError: the copy cannot be read.
        SeasonError: something could not be written; files written so far stay, and doing it again
            adds the rest.
        StoppedError: it was stopped; the same holds.
    """
    files = files_in(kept.path)
    missing = _missing_pages(season, kept, files, progress)
    heading = files.get(HEADING) if _heading_is_damaged(season) else None
    if not preview:
        if heading is not None:
            _replace_heading(season, heading, disk)
        make_folder(season / RECORDS, disk)
        for name, documents in told(tuple(missing.items()), progress, every=1):
            write_whole(season / RECORDS / name, _page_of(documents), disk)
    pages = [page_from(name, (0, 0, 0), _page_of(found)) for name, found in missing.items()]
    records = tuple(record for page in pages for record in page.records)
    names = (*([HEADING] if heading is not None else []), *missing)
    return Restoration(kept, names, records, sum(p.kept for p in pages) - len(records))


def _missing_pages(
    season: Path, kept: Kept, files: dict[str, bytes], progress: Progress
) -> dict[str, tuple[Document, ...]]:
    present = _ids_present(season / RECORDS, progress)
    missing: dict[str, tuple[Document, ...]] = {}
    for path in told(sorted(files), progress, every=1):
        if path == HEADING:
            continue
        name = path.removeprefix(f"{RECORDS}/")
        documents = _absent(documents_in(name, files[path]), present)
        if documents:
            target = _free_name(season / RECORDS, _as_page(name), f"{KEPT} {kept.day}")
            missing[target] = missing.get(target, ()) + documents
            present |= {_id(document) for document in documents}
    return missing


def set_aside(season: Path, name: str, disk: Disk = SYSTEM_DISK) -> Path:
    """Move a damaged page to the folder `aside`, what can be read of it staying in the season.

    Returns:
        Where the damaged file lies now.

    Raises:
        SeasonError: it could not be done; the damaged file is still in its place.
    """
    source = season / RECORDS / name
    try:
        data = read_whole(source)
    except OSError as error:
        raise SeasonError(
            f"{name} cannot be opened ({error.strerror}) and was left where it is"
        ) from error
    others = _ids_present(season / RECORDS, unheard, leave_out=name)
    documents = _absent(documents_in(name, data), others)
    if documents:
        rescued = _free_name(season / RECORDS, _as_page(first_name(name)), RESCUED, moving=True)
        write_whole(season / RECORDS / rescued, _page_of(documents), disk)
    return _move_aside(season, source, disk)


def _move_aside(season: Path, source: Path, disk: Disk) -> Path:
    make_folder(season / ASIDE, disk)
    target = season / ASIDE / _free_name(season / ASIDE, source.name, "again")
    try:
        disk.replace(source, target)
        disk.sync_folder(target.parent)
        disk.sync_folder(source.parent)
    except OSError as error:
        raise unwritten(target, error) from error
    return target


def _heading_is_damaged(season: Path) -> bool:
    try:
        read_heading(season)
    except SeasonDamagedError:
        return True
    return False


def _replace_heading(season: Path, data: bytes, disk: Disk) -> None:
    if (season / HEADING).exists():
        _move_aside(season, season / HEADING, disk)
    write_whole(season / HEADING, data, disk)


def _ids_present(folder: Path, progress: Progress, leave_out: str = "") -> set[str]:
    paths = tuple(folder.iterdir()) if folder.is_dir() else ()
    present = set()
    for path in told(paths, progress, every=1):
        if is_page(path.name) and path.name != leave_out:
            try:
                data = read_whole(path)
            except OSError:  # not readable, so its records count as missing
                continue
            present |= {_id(document) for document in documents_in(path.name, data)}
    return present


def _absent(documents: Iterable[Document], present: set[str]) -> tuple[Document, ...]:
    return tuple(d for d in documents if "id" in d and _id(d) not in present)


def _id(document: Document) -> str:
    return str(document.get("id", ""))


def _as_page(name: str) -> str:
    """The name for a page of what stood in a file; journals only come about by recording."""
    return page_of(name) if is_journal(name) else name


def _page_of(documents: Iterable[Document]) -> bytes:
    return format_page({RECORDS: dict(enumerate(documents, 1))})


def _free_name(folder: Path, name: str, tag: str, *, moving: bool = False) -> str:
    """A name no file has: the name itself, then with the tag, then with the tag and a number."""
    stem, ending = Path(name).stem, Path(name).suffix
    numbered = (f"{stem} ({tag} {n}){ending}" for n in range(2, 1000))
    tagged = [f"{stem} ({tag}){ending}", *numbered]
    for free in tagged if moving else [name, *tagged]:
        if not (folder / free).exists():
            return free
    raise SeasonError(f"{folder} holds a thousand copies of {name}; clear some of them away")
