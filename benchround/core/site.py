"""The site and its places, as set up by the grower's own records."""

from __future__ import annotations

import math
from dataclasses import field
from datetime import date, timedelta
from enum import StrEnum
from functools import cached_property, lru_cache

from benchround.core.dates import Year
from benchround.core.frozen import dataclass
from benchround.core.record import Record

FROST_MEAN_C = 11.0
"""Usual daily mean around the last spring frost in lowland Britain (common practice, no source)."""
SWING_C = 7.0
"""Half the yearly swing of the daily mean, maritime climate (common practice, no source)."""
WARMEST_AFTER_MIDSUMMER_DAYS = 30


class PlaceKind(StrEnum):
    """What sort of place it is, which decides warmth, rain and what a lid means."""

    PROPAGATOR = "propagator"
    WINDOWSILL = "windowsill"
    GREENHOUSE = "greenhouse bench"
    BENCH = "bench"
    FRAME = "frame"
    TUNNEL = "tunnel"
    FRIDGE = "fridge"
    BED = "bed"


OUTDOORS = (PlaceKind.BED,)
COVERED = (PlaceKind.FRAME, PlaceKind.TUNNEL)
SHADED_FROM = 0.2
"""Share of sun kept off from which a place is shaded: seed is kept cool there and trays dry like
those in the shade (our proposal)."""
INDOORS = (PlaceKind.PROPAGATOR, PlaceKind.WINDOWSILL, PlaceKind.FRIDGE)


@dataclass(frozen=True, slots=True)
class Place:
    """Where trays stand or plants grow, in walking order.

    Attributes:
        order: position on the morning walk, from 1.
        trays: how many full trays it holds; None where that is no measure.
        glazing: "glass", "twin-wall", "film", "slats" or "none".
        set_c: the thermostat's or room's temperature, where there is one.
        one_sided: light comes from one side, so seedlings lean and trays are turned.
        heated: mains heat.
        fuel_heater: warmed by burning paraffin, gas or wood.
        size_m: length and width of a frame.
        shade_share: share of sun kept off for good (slats, north side).
    """

    code: str
    name: str
    kind: PlaceKind
    order: int
    trays: float | None = None
    glazing: str = "none"
    set_c: float | None = None
    one_sided: bool = False
    heated: bool = False
    fuel_heater: bool = False
    size_m: tuple[float, float] | None = None
    shade_share: float = 0.0

    @property
    def lidded(self) -> bool:
        """Whether it has lids to lift and lower."""
        return self.kind in COVERED

    @property
    def shaded(self) -> bool:
        """Whether it is cool and dries slowly for want of sun."""
        return self.shade_share >= SHADED_FROM or self.glazing == "slats"

    @property
    def outdoors(self) -> bool:
        """Whether rain, frost and wind reach it with nothing between."""
        return self.kind in OUTDOORS


ONE_SIDED = (PlaceKind.WINDOWSILL,)
"""Kinds of place that have their light from one side unless it is said otherwise."""


def place_from(record: Record) -> Place:
    """A place as its latest record describes it."""
    kind = record.text("kind")
    length, width = record.number("length_m"), record.number("width_m")
    one_sided = record.figures.get("one_sided", kind in ONE_SIDED)
    return Place(
        code=record.about,
        name=record.text("name") or record.about,
        kind=PlaceKind(kind) if kind in set(PlaceKind) else PlaceKind.BENCH,
        order=record.count("order") or 0,
        trays=record.number("trays"),
        glazing=record.text("glazing") or "none",
        set_c=record.number("set_c"),
        one_sided=one_sided is True,
        heated=record.flag("heated"),
        fuel_heater=record.flag("fuel_heater"),
        size_m=(length, width) if length and width else None,
        shade_share=record.number("shade_share") or 0.0,
    )


@dataclass(frozen=True)
class Site:
    """Where the garden lies and when its frosts come.

    `assumed` says in words what was not told and is taken for granted.
    """

    lat_deg: float = 52.0
    lon_deg: float = 0.0
    altitude_m: float = 50.0
    timezone: str = ""
    last_frost: tuple[int, int] = (5, 10)
    last_frost_safe: tuple[int, int] = (5, 30)
    first_frost: tuple[int, int] = (10, 20)
    children: bool = False
    pets: bool = False
    assumed: tuple[str, ...] = field(default=())

    @cached_property
    def year(self) -> Year:
        """The anchors of this site's year."""
        return Year(
            lat_deg=self.lat_deg,
            last_frost=self.last_frost,
            last_frost_safe=self.last_frost_safe,
            first_frost=self.first_frost,
            day_length_h=self.day_length_h,
            usual_mean_c=self.usual_mean_c,
        )

    def day_length_h(self, day: date) -> float:
        """Hours from sunrise to sunset, refraction included, to about 0.15 h.

        Declination after Spencer 1971 (Search 2:172); good enough for windows in days. Clock
        times of sunrise come from `core.sky.sun`.
        """
        return _day_length(self.lat_deg, day.timetuple().tm_yday)

    def rest_around(self, day: date, margin_days: int = 0) -> tuple[date, date] | None:
        """The winter rest `day` falls in, or within `margin_days` before; None outside one."""
        return _rest_around(self.lat_deg, day, margin_days)

    def after_rest(self, day: date) -> date:
        """`day`, or the end of the winter rest where it would fall into it or shortly before."""
        rest = self.rest_around(day, BEFORE_REST_DAYS)
        return rest[1] if rest else day

    def usual_mean_c(self, day: date) -> float:
        """The usual mean air temperature of a day, guessed from the frost dates alone.

        A cosine with its top a month after midsummer, through `FROST_MEAN_C` on the day of the last
        frost. Our proposal, used only where neither readings nor an outlook are at hand.
        """
        return _usual_mean(self.lat_deg < 0, self.last_frost, day.timetuple().tm_yday)


REST_FROM_H, REST_TO_H = 10.5, 11.0
"""Hours of day between which small plants stand still (under about 10 h: computed in the trade
notes; a little room on either side is common practice, no source)."""
BEFORE_REST_DAYS = 28
"""What would be planted this close to the rest is too small for it and stays under cover."""


@lru_cache(maxsize=256)
def winter_rest(lat_deg: float, year: int) -> tuple[date, date] | None:
    """The first day of the rest that begins in calendar year `year`, and the first day after it.

    None at latitudes where the days never get so short.
    """
    start_month = 6 if lat_deg >= 0 else 12
    start = date(year if lat_deg >= 0 else year - 1, start_month, 21)
    began: date | None = None
    for ahead in range(366):
        day = start + timedelta(days=ahead)
        hours = _day_length(lat_deg, day.timetuple().tm_yday)
        if began is None and hours < REST_FROM_H:
            began = day
        elif began is not None and hours >= REST_TO_H and _lengthens(lat_deg, day):
            return began, day
    return None


@lru_cache(maxsize=1024)
def _rest_around(lat_deg: float, day: date, margin_days: int) -> tuple[date, date] | None:
    for year in (day.year - 1, day.year, day.year + 1):
        rest = winter_rest(lat_deg, year)
        if rest and rest[0] - timedelta(days=margin_days) <= day < rest[1]:
            return rest
    return None


def _lengthens(lat_deg: float, day: date) -> bool:
    number = day.timetuple().tm_yday
    return _day_length(lat_deg, number) > _day_length(lat_deg, number - 1)


@lru_cache(maxsize=4096)
def _day_length(lat_deg: float, day_of_year: int) -> float:
    turn = 2 * math.pi * (day_of_year - 1) / 365
    declination = (
        0.006918
        - 0.399912 * math.cos(turn)
        + 0.070257 * math.sin(turn)
        - 0.006758 * math.cos(2 * turn)
        + 0.000907 * math.sin(2 * turn)
        - 0.002697 * math.cos(3 * turn)
        + 0.00148 * math.sin(3 * turn)
    )
    lat = math.radians(lat_deg)
    cosine = (math.cos(math.radians(90.833)) - math.sin(lat) * math.sin(declination)) / (
        math.cos(lat) * math.cos(declination)
    )
    return 24 / math.pi * math.acos(max(-1.0, min(1.0, cosine)))


@lru_cache(maxsize=4096)
def _usual_mean(southern: bool, last_frost: tuple[int, int], day_of_year: int) -> float:
    midsummer = 355 if southern else 172
    top = midsummer + WARMEST_AFTER_MIDSUMMER_DAYS
    frost = date(2025, *last_frost).timetuple().tm_yday

    def swing(at: int) -> float:
        return SWING_C * math.cos(2 * math.pi * (at - top) / 365.25)

    return FROST_MEAN_C - swing(frost) + swing(day_of_year)


def _day_of_year(text: str) -> tuple[int, int] | None:
    try:
        told = date.fromisoformat(f"2025-{text}")  # 29 February is no day of every year
    except ValueError:
        return None
    return told.month, told.day


def _days_after(last: tuple[int, int]) -> tuple[int, int]:
    """The day that is safe from frost where only the last frost is known."""
    safe = date(2025, *last) + timedelta(days=SAFE_AFTER_DAYS)
    return safe.month, safe.day


FROST_WORDS = {
    "last_frost": "last frost",
    "last_frost_safe": "day safe from frost",
    "first_frost": "first frost",
}
SAFE_AFTER_DAYS = 20
"""Days from the middle last-frost day to the safe one, where only one is given; our proposal."""
SAFE_WORDS = f", {SAFE_AFTER_DAYS} days after the last frost"


def site_from(record: Record | None) -> Site:
    """The site as its latest record describes it; what is missing is assumed and said."""
    if record is None:
        return Site(assumed=("no site set up: 52 N, last frost 10 May are assumed",))
    plain = Site()
    assumed: list[str] = []

    def month_day(name: str, otherwise: tuple[int, int], because: str = "") -> tuple[int, int]:
        text = record.text(name)
        told = _day_of_year(text)
        if told is not None:
            return told
        usual = date(2025, *otherwise)
        words = FROST_WORDS[name]
        assumed.append(f"{words} not given: {usual.day} {usual:%b} is assumed{because}")
        return otherwise

    lat = record.number("lat_deg")
    if lat is None:
        assumed.append("latitude not given: 52 N is assumed")
        lat = plain.lat_deg
    south = lat < 0
    last = month_day("last_frost", (11, 10) if south else plain.last_frost)
    return Site(
        lat_deg=lat,
        lon_deg=record.number("lon_deg") or 0.0,
        altitude_m=record.number("altitude_m") or 0.0,
        timezone=record.text("timezone"),
        last_frost=last,
        last_frost_safe=month_day("last_frost_safe", _days_after(last), SAFE_WORDS),
        first_frost=month_day("first_frost", (4, 20) if south else plain.first_frost),
        children=record.flag("children"),
        pets=record.flag("pets"),
        assumed=tuple(assumed),
    )
