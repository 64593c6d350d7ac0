"""The season folder on disk: records are added, never changed, and survive what disks do.

`SeasonFolder` is the door. What reading a season does not need is left out here, because it would
take time whenever the program starts: kept copies are in `keep` and `restoring`, and `merge` comes
in when it is asked for.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from benchround.store.errors import (
    SeasonDamagedError,
    SeasonNewerError,
    SeasonReadOnlyError,
    SeasonUnsureError,
)
from benchround.store.folder import SeasonFolder
from benchround.store.ids import IdMaker
from benchround.store.machine import short_name

if TYPE_CHECKING:
    from benchround.store.merging import Merged, merge

__all__ = [
    "IdMaker",
    "Merged",
    "SeasonDamagedError",
    "SeasonFolder",
    "SeasonNewerError",
    "SeasonReadOnlyError",
    "SeasonUnsureError",
    "merge",
    "short_name",
]


def __getattr__(name: str) -> object:
    if name in ("Merged", "merge"):
        from benchround.store import merging

        return getattr(merging, name)
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
