"""Days of the site's year: midsummer, frost, day length, soil warmth, and windows hung on them."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, timedelta
from functools import lru_cache

from benchround.core.crop.crop import Anchor, Edge, SowingWindow
from benchround.core.errors import OutOfRangeError
from benchround.core.frozen import dataclass

MIDSUMMER_NORTH = (6, 21)
MIDWINTER_NORTH = (12, 21)
LONGEST_WINDOW_DAYS = 300
"""A window that would last longer closes before it opens at this site: it does not come there."""


@dataclass(frozen=True, slots=True)
class Span:
    """Days from `opens` to `closes`, both included."""

    opens: date
    closes: date

    def __contains__(self, day: object) -> bool:
        return isinstance(day, date) and self.opens <= day <= self.closes

    @property
    def days(self) -> int:
        """How many days it lasts."""
        return (self.closes - self.opens).days + 1

    def share_gone(self, day: date) -> float:
        """How much of it has passed on the morning of `day`, 0 to 1."""
        return min(1.0, max(0.0, (day - self.opens).days / max(1, self.days - 1)))


@dataclass(frozen=True, slots=True)
class Year:
    """What the anchors of one site's year are, as functions of the calendar year.

    Attributes:
        lat_deg: latitude, negative south of the equator.
        last_frost, last_frost_safe, first_frost: (month, day).
        day_length_h: day -> hours of daylight.
        usual_mean_c: day -> the site's usual mean air temperature.
    """

    lat_deg: float
    last_frost: tuple[int, int]
    last_frost_safe: tuple[int, int]
    first_frost: tuple[int, int]
    day_length_h: Callable[[date], float]
    usual_mean_c: Callable[[date], float]

    @property
    def southern(self) -> bool:
        """Whether midsummer falls in December."""
        return self.lat_deg < 0

    def midsummer(self, year: int) -> date:
        """The longest day in calendar year `year`."""
        return date(year, *(MIDWINTER_NORTH if self.southern else MIDSUMMER_NORTH))

    def midwinter(self, year: int) -> date:
        """The shortest day in calendar year `year`."""
        return date(year, *(MIDSUMMER_NORTH if self.southern else MIDWINTER_NORTH))

    def edge(self, edge: Edge, year: int) -> date:
        """The day an edge falls on in calendar year `year`.

        Raises:
            OutOfRangeError: the anchor never comes at this site.
        """
        return self._anchor(edge, year) + timedelta(days=edge.days)

    def _anchor(self, edge: Edge, year: int) -> date:
        match edge.anchor:
            case Anchor.LAST_FROST:
                return date(year, *self.last_frost)
            case Anchor.LAST_FROST_SAFE:
                return date(year, *self.last_frost_safe)
            case Anchor.FIRST_FROST:
                return date(year, *self.first_frost)
            case Anchor.MIDSUMMER:
                return self.midsummer(year)
            case Anchor.MIDWINTER:
                return self.midwinter(year)
            case Anchor.DAY_LENGTH_RISING:
                return self._crossing(self._before_spring(year), edge, self.day_length_h, True)
            case Anchor.DAY_LENGTH_FALLING:
                return self._crossing(self._before_autumn(year), edge, self.day_length_h, False)
            case Anchor.SOIL_WARMING:
                return self._crossing(self._before_spring(year), edge, self.usual_mean_c, True)
            case Anchor.SOIL_COOLING:
                return self._crossing(self._before_autumn(year), edge, self.usual_mean_c, False)

    def _before_spring(self, year: int) -> date:
        """The midwinter before the spring of calendar year `year`."""
        return self.midwinter(year if self.southern else year - 1)

    def _before_autumn(self, year: int) -> date:
        """The midsummer before the autumn of calendar year `year`."""
        return self.midsummer(year - 1 if self.southern else year)

    def _crossing(
        self, start: date, edge: Edge, value_on: Callable[[date], float], rising: bool
    ) -> date:
        wanted = edge.value if edge.value is not None else 10.0
        for ahead in range(366):
            day = start + timedelta(days=ahead)
            value = value_on(day)
            if (value >= wanted) if rising else (value <= wanted):
                return day
        raise OutOfRangeError(
            f"{edge.anchor} {wanted:g} never comes at latitude {self.lat_deg:g}: "
            "give this crop a window of your own"
        )

    def span(self, window: SowingWindow, day: date) -> Span | None:
        """The occurrence of a window that holds `day`, else the next one after it.

        None where one of its anchors never comes at this site, or where it would close there
        before it opens.
        """
        found: list[Span] = []
        for year in (day.year - 1, day.year, day.year + 1, day.year + 2):
            try:
                opens = self.edge(window.opens, year)
                closes = self.edge(window.closes, year)
                if closes < opens:
                    closes = self.edge(window.closes, year + 1)
            except OutOfRangeError:
                return None
            if (closes - opens).days > LONGEST_WINDOW_DAYS:
                return None
            found.append(Span(opens, closes))
        return next((span for span in found if span.closes >= day), None)


def year_on(day: date) -> date:
    """The same day of the next year; the 28th for a leap day."""
    try:
        return day.replace(year=day.year + 1)
    except ValueError:
        return day.replace(year=day.year + 1, day=28)


@lru_cache(maxsize=2048)
def say_date(day: date) -> str:
    """A day as it stands on labels and pages that are kept: day, month and year."""
    return f"{day.day} {day:%b} {day.year}"


def number_of_days(days: int) -> str:
    """A number of days in words: "1 day", "12 days"."""
    return f"{days} day" if days == 1 else f"{days} days"


@lru_cache(maxsize=1024)
def say_day(day: date) -> str:
    """A day as it stands on screens: weekday, day and short month."""
    return f"{day:%a} {day.day} {day:%b}"
