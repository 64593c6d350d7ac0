"""Readings and outlooks of one day brought together: no hour brings more rain than its day."""

from __future__ import annotations

from datetime import date

import pytest

from benchround.core.record import Figure, Kind, Record
from benchround.core.sky.weather import weather_from

FRIDAY = date(2026, 5, 29)


def told(number: int, kind: Kind = Kind.OUTLOOK, **figures: Figure) -> Record:
    return Record(f"{number:04d}", FRIDAY, kind, "", figures)


@pytest.mark.parametrize("kind", [Kind.OUTLOOK, Kind.READING])
def test_a_dry_day_overtakes_the_downpour_told_before(kind: Kind) -> None:
    known = weather_from(
        [
            told(1, rain_mm=22.0, rain_hour_mm=22.0, gust_kmh=68.0),
            told(2, kind, rain_mm=2.0),
        ]
    ).on(FRIDAY)
    assert known is not None
    assert (known.rain_mm, known.rain_hour_mm, known.gust_kmh) == (2.0, 2.0, 68.0)


def test_a_downpour_overtakes_the_dry_day_told_before() -> None:
    known = weather_from([told(1, rain_mm=2.0), told(2, rain_hour_mm=22.0)]).on(FRIDAY)
    assert known is not None
    assert (known.rain_mm, known.rain_hour_mm) == (22.0, 22.0)


def test_what_does_not_contradict_is_kept() -> None:
    known = weather_from([told(1, rain_hour_mm=4.0), told(2, rain_mm=9.0)]).on(FRIDAY)
    assert known is not None
    assert (known.rain_mm, known.rain_hour_mm) == (9.0, 4.0)
