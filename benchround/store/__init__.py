"""The season folder on disk: records are added, never changed, and survive what disks do.

`SeasonFolder` is the door. What has to do with kept copies is in `keep` and `restoring`, which are
left out here because they take longer to import.
"""

from benchround.store.errors import (
    SeasonDamagedError,
    SeasonNewerError,
    SeasonReadOnlyError,
    SeasonUnsureError,
)
from benchround.store.folder import SeasonFolder
from benchround.store.ids import IdMaker
from benchround.store.machine import short_name
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
