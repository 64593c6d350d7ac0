"""Small files kept beside a season's copies: no records, and no harm if they are lost."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import TypeVar

from benchround.core.errors import InputError, SeasonError
from benchround.desk import Desk
from benchround.shell.saying import remark
from benchround.store.disk import make_folder, write_whole
from benchround.store.layout import KEEP

Kept = TypeVar("Kept")


def keep_beside(desk: Desk, name: str, data: bytes, lost: str) -> bool:
    """Keep a file beside the season's copies; what is lost where it cannot be kept is said."""
    folder = desk.folder.path / KEEP
    try:
        make_folder(folder)
        write_whole(folder / name, data)
    except SeasonError as error:
        remark([f"{error}. {lost}"])
        return False
    return True


def kept_beside(desk: Desk, pattern: str, read: Callable[[bytes, str], Kept]) -> Iterator[Kept]:
    """Files kept so, by their names; one that cannot be read is said and left out.

    Args:
        desk: the season.
        pattern: of their names, as paper-*.json.
        read: reads one from its bytes and its name; raises InputError where it cannot.
    """
    folder = desk.folder.path / KEEP
    for path in sorted(folder.glob(pattern)) if folder.is_dir() else []:
        try:
            yield read(path.read_bytes(), path.name)
        except (OSError, InputError) as error:
            remark([str(error)])
