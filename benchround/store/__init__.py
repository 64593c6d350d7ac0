"""The season folder on disk: records are added, never changed, and survive what disks do.

`SeasonFolder` is the door; the rest is exported for those who hold a kept copy or an error of it.
"""

from benchround.store.errors import (
    SeasonDamagedError,
    SeasonNewerError,
    SeasonReadOnlyError,
    SeasonUnsureError,
)
from benchround.store.folder import SeasonFolder
from benchround.store.ids import IdMaker
from benchround.store.keep import GoodCopy, Kept
from benchround.store.machine import short_name
from benchround.store.merging import Merged, merge
from benchround.store.restoring import Restoration

__all__ = [
    "GoodCopy",
    "IdMaker",
    "Kept",
    "Merged",
    "Restoration",
    "SeasonDamagedError",
    "SeasonFolder",
    "SeasonNewerError",
    "SeasonReadOnlyError",
    "SeasonUnsureError",
    "merge",
    "short_name",
]
