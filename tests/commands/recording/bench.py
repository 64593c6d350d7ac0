"""What the tests of recording ask again and again: the round on disk, and every file as it lies."""

from __future__ import annotations

from collections.abc import Callable
from datetime import timedelta
from pathlib import Path

from benchround.core.task import Round
from benchround.desk import Desk
from tests.commands.shell import Ran
from tests.sample.story import DAY_0

Run = Callable[..., Ran]


def round_of(folder: Path) -> Round:
    """The round of the sample's day, read afresh from the disk."""
    desk = Desk.open(folder, today=lambda: DAY_0, read_only=True)
    try:
        return desk.round(DAY_0)
    finally:
        desk.close()


def rounds_of(folder: Path) -> tuple[Round, ...]:
    """The rounds of the sample's day and of some days after it, read afresh from the disk."""
    desk = Desk.open(folder, today=lambda: DAY_0, read_only=True)
    try:
        return tuple(desk.round(DAY_0 + timedelta(days=days)) for days in (0, 1, 7, 30))
    finally:
        desk.close()


def files_of(folder: Path) -> dict[str, bytes]:
    """Every file of a folder with what is in it."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }
