"""How warm a place was or will be on a day: its own thermometer, its thermostat, else reckoned."""

from __future__ import annotations

from datetime import date

from benchround.core.frozen import dataclass
from benchround.core.site import Place, PlaceKind, Site
from benchround.core.sky.weather import DayWeather, Weather, in_agreement

FRAME_GAIN_C = 2.5
"""Mean gain of a glazed frame over the 24 hours (mean of Savage 1980: maxima +4.2, minima +1.3)."""
SHADED_FRAME_GAIN_C = 0.0
GREENHOUSE_GAIN_C = 4.0
GREENHOUSE_LEAST_C = 12.0
"""Least mean of a house where plants are raised (common practice, no source)."""
KEPT_AT = {PlaceKind.PROPAGATOR: 20.0, PlaceKind.WINDOWSILL: 18.0, PlaceKind.FRIDGE: 4.0}
"""What such a place is kept at where nobody says it (common practice, no source)."""
FROM_OUTSIDE = {
    "reading": "from the weather measured outside",
    "outlook": "from the outlook",
    "usual": "from the site's usual weather",
}
"""How the weather outside is known, in words, by its basis."""


@dataclass(frozen=True, slots=True)
class Warmth:
    """Mean, lowest and highest temperature of a day at a place, and how it is known.

    Attributes:
        sure_c: the mean it had for sure, where the mean is a guess; None where it is none.
    """

    mean_c: float
    min_c: float
    max_c: float
    basis: str
    sure_c: float | None = None


def warmth(place: Place | None, weather: Weather, site: Site, day: date) -> Warmth:
    """The warmth of a day at a place, the mean never outside its lowest and highest.

    The place's own readings come first, then a thermostat or room temperature, then the outside
    weather (reading, outlook, or the site's usual) and what the kind of place adds to it.
    """
    outside = weather.on_or_usual(day, site)
    low, high = outside.min_c or 0.0, outside.max_c or 0.0
    known = FROM_OUTSIDE[outside.basis]
    if place is None:
        return Warmth((low + high) / 2, low, high, f"outside, {known}")
    read = weather.at(place.code, day) or DayWeather(day)
    if read.min_c is not None and read.max_c is not None:
        mean = (read.min_c + read.max_c) / 2
        return Warmth(mean, read.min_c, read.max_c, f"{place.name}, its thermometer")
    fixed = _fixed(place)
    if fixed is not None:
        lowest = fixed if read.min_c is None else min(fixed, read.min_c)
        highest = fixed if read.max_c is None else max(fixed, read.max_c)
        return Warmth(fixed, lowest, highest, f"{place.name}, set to {fixed:g} C")
    basis = f"{place.name}, {known}"
    mean, lowest, highest = _under_cover(place, low, high)
    if read.min_c is None and read.max_c is None:
        return Warmth(mean, lowest, highest, basis, _sure(place, low, high))
    lowest, highest = in_agreement(
        lowest if read.min_c is None else read.min_c,
        highest if read.max_c is None else read.max_c,
        low_known=read.min_c is not None,
    )
    return Warmth((lowest + highest) / 2, lowest, highest, basis)


def _under_cover(place: Place, low: float, high: float) -> tuple[float, float, float]:
    """Mean, lowest and highest reckoned from those outside.

    A house that is kept at a least mean is so much warmer by night as by day.
    """
    added = _added(place)
    mean = (low + high) / 2 + added
    kept = 0.0
    if place.kind is PlaceKind.GREENHOUSE:
        kept = max(0.0, GREENHOUSE_LEAST_C - mean)
    return mean + kept, low + added / 2 + kept, high + added + kept


def _sure(place: Place, low: float, high: float) -> float | None:
    """A house nobody heats or reads is no colder than it is outside; its gain is a guess.

    A frame's gain was measured.
    """
    guessed = place.kind is PlaceKind.GREENHOUSE and not place.heated
    return (low + high) / 2 if guessed else None


class DaysOf(dict[int, Warmth]):
    """The warmth of one place by the number of the day (`date.toordinal`), reckoned when asked.

    Sums of heat go through it day by day, and a whole number is found sooner than a date.
    """

    def __init__(self, place: Place | None, weather: Weather, site: Site) -> None:
        super().__init__()
        self._under = (place, weather, site)

    def __missing__(self, number: int) -> Warmth:
        found = self[number] = warmth(*self._under, date.fromordinal(number))
        return found


def _fixed(place: Place) -> float | None:
    return place.set_c if place.set_c is not None else KEPT_AT.get(place.kind)


def _added(place: Place) -> float:
    if place.kind is PlaceKind.GREENHOUSE:
        return GREENHOUSE_GAIN_C
    if place.lidded:
        return SHADED_FRAME_GAIN_C if place.glazing in ("slats", "none") else FRAME_GAIN_C
    return 0.0
