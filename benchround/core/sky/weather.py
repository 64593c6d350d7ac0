"""Weather as the grower knows it: readings, the outlook, and the usual where both are silent."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import field
from datetime import date, time, timedelta

from benchround.core.frozen import dataclass
from benchround.core.record import Kind, Record
from benchround.core.site import Site

COLDEST_C, HOTTEST_C = -45.0, 70.0
"""Readings outside are a slip of the pen or a broken thermometer (common practice, no source)."""
USUAL_SWING_C = 5.0
"""Half the usual daily range where nothing is known (common practice, no source)."""


def in_agreement(low_c: float, high_c: float, *, low_known: bool) -> tuple[float, float]:
    """Lowest and highest of a day with the lowest not above the highest.

    Where they clash, the one that is known stands and the other is a usual day's range from it.
    """
    if low_c <= high_c:
        return low_c, high_c
    swing = 2.0 * USUAL_SWING_C
    return (low_c, low_c + swing) if low_known else (high_c - swing, high_c)


FIGURES = ("min_c", "max_c", "sun_h", "rain_mm", "rain_hour_mm", "gust_kmh")
"""What a day's weather is told in."""


@dataclass(frozen=True, slots=True)
class DayWeather:
    """One day's weather outside, or inside a place; None where not known.

    Attributes:
        min_c, max_c: lowest and highest air temperature of the 24 hours.
        rain_hour_mm: most rain in one hour.
        storm_from: when thunder, downpour or gale is expected to begin.
        basis: "reading", "outlook" or "usual"; a reading's other figures may still be forecast.
        measured: the figures that were read and not forecast, by name.
    """

    day: date
    min_c: float | None = None
    max_c: float | None = None
    sun_h: float | None = None
    rain_mm: float | None = None
    rain_hour_mm: float | None = None
    gust_kmh: float | None = None
    storm_from: time | None = None
    basis: str = "outlook"
    issued: date | None = None
    measured: frozenset[str] = field(default=frozenset(), compare=False)

    @property
    def mean_c(self) -> float | None:
        """The middle of lowest and highest."""
        if self.min_c is None or self.max_c is None:
            return None
        return (self.min_c + self.max_c) / 2


@dataclass(frozen=True, slots=True)
class Weather:
    """What is known of the weather, by day, outside and by place."""

    outside: Mapping[date, DayWeather] = field(default_factory=dict)
    inside: Mapping[tuple[str, date], DayWeather] = field(default_factory=dict)
    doubts: tuple[str, ...] = ()

    def on(self, day: date) -> DayWeather | None:
        """The outside weather of a day: a reading if there is one, else the latest outlook."""
        return self.outside.get(day)

    def at(self, place: str, day: date) -> DayWeather | None:
        """What the place's own thermometer said for a day."""
        return self.inside.get((place, day))

    def on_or_usual(self, day: date, site: Site) -> DayWeather:
        """The weather of a day; where minimum or maximum is unknown, the site's usual ones."""
        known = self.outside.get(day)
        if known is not None and known.mean_c is not None:
            return known
        mean = round(site.usual_mean_c(day), 1)
        low, high = mean - USUAL_SWING_C, mean + USUAL_SWING_C
        if known is None:
            return DayWeather(day, low, high, basis="usual")
        low = known.min_c if known.min_c is not None else low
        high = known.max_c if known.max_c is not None else high
        return DayWeather(
            day,
            *in_agreement(low, high, low_known=known.min_c is not None),
            known.sun_h,
            known.rain_mm,
            known.rain_hour_mm,
            known.gust_kmh,
            known.storm_from,
            "usual",
        )

    def ahead(self, day: date, days: int) -> tuple[DayWeather, ...]:
        """What is known of `day` and the days after it, as far as it is known."""
        found = (self.outside.get(day + timedelta(days=n)) for n in range(days))
        return tuple(weather for weather in found if weather is not None)

    def known_from(self, day: date) -> bool:
        """Whether anything at all is known of that day or the five after it."""
        return bool(self.ahead(day, 6))


def _impossible(record: Record) -> str:
    low, high = record.number("min_c"), record.number("max_c")
    where = record.about or "outside"
    for name, value in (("lowest", low), ("highest", high)):
        if value is not None and not COLDEST_C <= value <= HOTTEST_C:
            return (
                f"{where}, {record.day.isoformat()}: {name} {value:g} C cannot be "
                f"({COLDEST_C:g} to {HOTTEST_C:g} C); it is not used."
            )
    if low is not None and high is not None and low > high:
        return (
            f"{where}, {record.day.isoformat()}: lowest {low:g} C is above highest {high:g} C; "
            "neither is used."
        )
    return ""


def day_from(record: Record) -> DayWeather:
    """The day's weather one reading or outlook record states."""
    storm = record.text("storm_from")
    read = record.kind is Kind.READING
    said = {name: record.number(name) for name in FIGURES if name in record.figures}
    return DayWeather(
        day=record.day,
        min_c=said.get("min_c"),
        max_c=said.get("max_c"),
        sun_h=said.get("sun_h"),
        rain_mm=said.get("rain_mm"),
        rain_hour_mm=said.get("rain_hour_mm"),
        gust_kmh=said.get("gust_kmh"),
        storm_from=time.fromisoformat(storm) if storm else None,
        basis="reading" if read else "outlook",
        measured=frozenset(name for name in said if read and said[name] is not None),
    )


def _joined(base: DayWeather, over: DayWeather) -> DayWeather:
    def pick(name: str) -> float | None:
        value: float | None = getattr(over, name)
        return value if value is not None else getattr(base, name)

    rain_mm, hour_mm = pick("rain_mm"), pick("rain_hour_mm")
    if rain_mm is not None and hour_mm is not None and hour_mm > rain_mm:
        # no hour brings more than its day: what the earlier said of the other is overtaken
        rain_mm = rain_mm if over.rain_mm is not None else hour_mm
        hour_mm = min(hour_mm, rain_mm)
    return DayWeather(
        base.day,
        pick("min_c"),
        pick("max_c"),
        pick("sun_h"),
        rain_mm,
        hour_mm,
        pick("gust_kmh"),
        over.storm_from or base.storm_from,
        over.basis,
        measured=_measured(base, over),
    )


def _measured(base: DayWeather, over: DayWeather) -> frozenset[str]:
    said = {name for name in FIGURES if getattr(over, name) is not None}
    return frozenset((base.measured - said) | over.measured)


def _crossed(weather: DayWeather) -> bool:
    low, high = weather.min_c, weather.max_c
    return low is not None and high is not None and low > high


def weather_from(records: Iterable[Record]) -> Weather:
    """Fold readings and outlooks: a later one fills or corrects, a reading beats any outlook.

    Impossible figures (80 C, lowest above highest) are named in `doubts` and left out.
    """
    outside: dict[date, DayWeather] = {}
    inside: dict[tuple[str, date], DayWeather] = {}
    doubts: list[str] = []
    ranked = sorted(records, key=lambda r: (r.kind is Kind.READING, r.id))
    for record in ranked:
        fault = _impossible(record)
        if fault:
            doubts.append(fault)
            continue
        said = day_from(record)
        before = inside.get((record.about, record.day)) if record.about else outside.get(said.day)
        if before is not None:
            joined = _joined(before, said)
            if _crossed(joined):
                doubts.append(
                    f"{record.about or 'outside'}, {record.day.isoformat()}: lowest "
                    f"{joined.min_c:g} C is above highest {joined.max_c:g} C; the later is used."
                )
                joined = said
            said = joined
        if record.about:
            inside[(record.about, record.day)] = said
        else:
            outside[record.day] = said
    return Weather(outside, inside, tuple(doubts))
