"""Beginning a season folder all at once: it is there whole, or not at all."""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

from benchround.core.errors import SeasonError
from benchround.desk import Desk
from benchround.shell import opened
from benchround.store.disk import give_name
from benchround.whereabouts import is_season

Made = TypeVar("Made")


def require_free(path: Path) -> None:
    """Refuse a folder a season cannot be begun in.

    Raises:
        SeasonError: there is a season, a file, or something else in it already.
    """
    if is_season(path):
        raise SeasonError(f"{path} holds a season already: open it, or choose another folder.")
    if path.is_dir() and any(path.iterdir()):
        raise SeasonError(f"{path} is not empty: choose a folder that is, or a new one.")
    if path.exists() and not path.is_dir():
        raise SeasonError(f"{path} is a file: choose a folder.")


def begin(path: Path, name: str, fill: Callable[[Desk], Made]) -> Made:
    """Begin a season and fill it; it gets its own name only when everything is written.

    Args:
        path: the folder, missing or empty.
        name: the season's name.
        fill: writes its first records.

    Raises:
        SeasonError: it cannot be written, or the folder is not free; nothing is left behind.
    """
    try:
        require_free(path)
        target = path.absolute()
        rough = target.with_name(f".{target.name}.{os.getpid()}.new")
        desk = _create(rough, name)
    except OSError as error:
        raise SeasonError(f"{path} cannot be used ({error.strerror}): look at it.") from error
    try:
        made = fill(desk)
        desk.close()
        if target.is_dir():
            target.rmdir()
        give_name(rough, target)
    except OSError as error:
        raise SeasonError(f"{path} cannot be written ({error.strerror}).") from error
    finally:
        desk.close()
        shutil.rmtree(rough, ignore_errors=True)
    return made


def _create(rough: Path, name: str) -> Desk:
    """A new season in a folder of ours, which goes again where that fails, as on a full disk."""
    was_there = rough.exists()
    try:
        return Desk.create(rough, name, today=opened.today)
    except BaseException:
        if not was_there:
            shutil.rmtree(rough, ignore_errors=True)
        raise
