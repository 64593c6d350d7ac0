"""How warm a place was or will be on a day: its own thermometer, its thermostat, else reckoned."""

from __future__ import annotations

from datetime import date

from benchround.core.frozen import dataclass
from benchround.core.site import Place, PlaceKind, Site
from benchround.core.sky.weather import Weather

FRAME_GAIN_C = 2.5
"""Mean gain of a glazed frame over the 24 hours (mean of Savage 1980: maxima +4.2, minima +1.3)."""
SHADED_FRAME_GAIN_C = 0.0
GREENHOUSE_GAIN_C = 4.0
GREENHOUSE_LEAST_C = 12.0
ROOM_C = 18.0
PROPAGATOR_C = 20.0
FRIDGE_C = 4.0


@dataclass(frozen=True, slots=True)
class Warmth:
    """Mean, lowest and highest temperature of a day at a place, and how it is known."""

    mean_c: float
    min_c: float
    max_c: float
    basis: str


def warmth(place: Place | None, weather: Weather, site: Site, day: date) -> Warmth:
    """The warmth of a day at a place.

    The place's own readings come first, then a thermostat or room temperature, then the outside
    weather (reading, outlook, or the site's usual) and what the kind of place adds to it.
    """
    outside = weather.on_or_usual(day, site)
    low, high = outside.min_c or 0.0, outside.max_c or 0.0
    if place is None:
        return Warmth((low + high) / 2, low, high, f"outside, {outside.basis}")
    read = weather.at(place.code, day)
    if read is not None and read.min_c is not None and read.max_c is not None:
        mean = (read.min_c + read.max_c) / 2
        return Warmth(mean, read.min_c, read.max_c, f"{place.name}, its thermometer")
    fixed = _fixed(place)
    if fixed is not None:
        highest = fixed if read is None or read.max_c is None else max(fixed, read.max_c)
        return Warmth(fixed, fixed, highest, f"{place.name}, set to {fixed:g} C")
    added = _added(place)
    mean = (low + high) / 2 + added
    if place.kind is PlaceKind.GREENHOUSE:
        mean = max(mean, GREENHOUSE_LEAST_C)
    highest = high + added
    if read is not None and read.max_c is not None:
        highest = read.max_c
        mean = (low + added + highest) / 2
    basis = f"{place.name}, from the {outside.basis} outside"
    return Warmth(mean, low + added / 2, highest, basis)


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
    if place.set_c is not None:
        return place.set_c
    match place.kind:
        case PlaceKind.PROPAGATOR:
            return PROPAGATOR_C
        case PlaceKind.WINDOWSILL:
            return ROOM_C
        case PlaceKind.FRIDGE:
            return FRIDGE_C
        case _:
            return None


def _added(place: Place) -> float:
    if place.kind is PlaceKind.GREENHOUSE:
        return GREENHOUSE_GAIN_C
    if place.lidded:
        return SHADED_FRAME_GAIN_C if place.glazing in ("slats", "none") else FRAME_GAIN_C
    return 0.0
