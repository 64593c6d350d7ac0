"""A site's frost days out of a file of its own weather."""

from __future__ import annotations

from pathlib import Path

from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.sky.frost_dates import DailyMinimum, frost_dates
from benchround.core.sky.frost_line import MonthDay
from benchround.feeds.daily_csv import read_daily_file
from benchround.feeds.daily_reading import RowFault

LEAST_YEARS = 5
"""Fewer years of minima give days worth little (our proposal)."""


@dataclass(frozen=True, slots=True)
class FrostDays:
    """Frost days as a season keeps them, "05-11", and how many years they rest on.

    Attributes:
        faults: rows of the file that could not be read.
    """

    last_frost: str
    last_frost_safe: str
    first_frost: str
    years: int
    faults: tuple[RowFault, ...] = ()

    @property
    def rough(self) -> bool:
        """Whether the years are few."""
        return self.years < LEAST_YEARS


def frost_days_of(path: Path, lat_deg: float) -> FrostDays:
    """The frost days by a table of daily lowest temperatures over years.

    Args:
        path: the file.
        lat_deg: north positive; its sign says on which side of the year winter is.

    Raises:
        InputError: it cannot be read, or frost was hardly ever read in it.
    """
    table = read_daily_file(path)
    found = frost_dates((DailyMinimum(day.day, day.min_c) for day in table.readings), lat_deg)
    spring, autumn = found.last_spring, found.first_autumn
    if spring is None or autumn is None:
        raise InputError(
            f"{path.name}: frost was hardly ever read in its {found.years} usable years. Type the "
            "days yourself, or take a file that goes on through whole winters."
        )
    return FrostDays(
        _kept(spring.p50), _kept(spring.p90), _kept(autumn.p50), found.years, tuple(table.faults)
    )


def _kept(day: MonthDay) -> str:
    return f"{day[0]:02d}-{day[1]:02d}"
