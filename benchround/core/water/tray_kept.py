"""What was reckoned of trays and places in one season, found again instead of reckoned twice.

Many trays stand in one place and were watered on one day. Everything here rests on the season
alone, which is never changed, so that it holds as long as the season is in use.
"""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING

from benchround.core.sky.known_day import KnownDay
from benchround.core.water.balance import TrayWater
from benchround.core.water.run import NextWatering, WaterDay

if TYPE_CHECKING:
    from benchround.core.place_log import PlaceLog

Drying = tuple[str, date, bool, float, bool]
"""Place code, day, whether rain counts, the place's factor, and whether a dome is on."""
Where = tuple[TrayWater, str, float, date | None]
"""The tray, its place, the place's factor, and until when a dome was on."""


class TrayKept:
    """Results by what they were reckoned from.

    Attributes:
        logs: a place's records, sorted, by its code.
        days: what a day does to a tray, and the weather behind it.
        runs: level and dry day after a run of days: where, first day, day after the last, level
            before, dry day before, level at which it counts as dry.
        due: when today takes what may go: where, day, share that may go, level.
        dry_days: the day a tray is next due: where, day, share that may go, level.
    """

    __slots__ = ("days", "dry_days", "due", "logs", "runs")

    def __init__(self) -> None:
        self.logs: dict[str, PlaceLog] = {}
        self.days: dict[Drying, tuple[WaterDay, KnownDay]] = {}
        self.runs: dict[
            tuple[Where, date, date, float, date | None, float], tuple[float, date | None]
        ] = {}
        self.due: dict[tuple[Where, date, float, float], NextWatering | None] = {}
        self.dry_days: dict[tuple[Where, date, float, float], date | None] = {}
