"""What was reckoned of trays and places in one season, found again instead of reckoned twice.

Many trays stand in one place and were watered on one day. Everything here rests on the season
alone, which is never changed, so that it holds as long as the season is in use.
"""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING, NamedTuple

from benchround.core.sky.known_day import KnownDay
from benchround.core.water.balance import TrayWater
from benchround.core.water.canopy import Canopy
from benchround.core.water.run import DayPart, WaterDay

if TYPE_CHECKING:
    from benchround.core.place_log import PlaceLog
    from benchround.core.water.fit import Moisture

Drying = tuple[str, date, bool, float, bool, float]
"""Place code, day, whether rain counts, the place's factor, whether a dome is on, leaf cover."""
Stays = tuple[tuple[date, str, float], ...]
"""From which day on it stood where, oldest first, and how fast it dries there."""
Where = tuple[Stays, date | None]
"""Where a tray stood, and until when a dome was on."""
Seen = tuple[date, "Moisture | None"]
"""The day of a look at its moisture, and what it said."""


class Level(NamedTuple):
    """How a tray stands on the morning of a day.

    Attributes:
        left_ml: easily available water.
        dry_since: the day its allowed water was gone, where that is past.
        by: the part of the day it is gone by, where the day takes it.
    """

    left_ml: float
    dry_since: date | None
    by: DayPart | None


class Alike:
    """Results of trays that are alike in size, in the share that may go and in their leaves.

    Attributes:
        levels: how a tray stands: where, the morning it was full, the last look, the day.
        dry_days: the day a tray is next due: where, day, level.
    """

    __slots__ = ("dry_days", "levels")

    def __init__(self) -> None:
        self.levels: dict[tuple[Where, date, Seen | None, date], Level] = {}
        self.dry_days: dict[tuple[Where, date, float], date | None] = {}


class TrayKept:
    """Results by what they were reckoned from.

    Attributes:
        logs: a place's records, sorted, by its code.
        days: what a day does to a tray, and the weather behind it.
    """

    __slots__ = ("_alike", "days", "logs")

    def __init__(self) -> None:
        self.logs: dict[str, PlaceLog] = {}
        self.days: dict[Drying, tuple[WaterDay, KnownDay]] = {}
        self._alike: dict[tuple[TrayWater, float, Canopy], Alike] = {}

    def alike(self, tray: TrayWater, share: float, leaves: Canopy) -> Alike:
        """What was reckoned of trays like this one, of which this share may go."""
        key = (tray, share, leaves)
        found = self._alike.get(key)
        if found is None:
            found = self._alike[key] = Alike()
        return found
