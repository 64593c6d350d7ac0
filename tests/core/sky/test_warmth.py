"""How warm a place was: lowest, mean and highest of one day agree, whatever was read.

The figures are worked by hand from the rules in `core/sky/warmth.py` (a frame adds 2.5 C to the
mean, half of it by night; a usual day spans 10 C: common practice, no source).
"""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.site import Place, PlaceKind, Site
from benchround.core.sky.known_day import known_day
from benchround.core.sky.warmth import warmth
from benchround.core.sky.weather import DayWeather, Weather, in_agreement

JANUARY, JULY = date(2026, 1, 15), date(2026, 7, 15)
SITE = Site()
FRAME = Place("f", "Frame", PlaceKind.FRAME, 1, glazing="glass")
HOUSE = Place("g", "House", PlaceKind.GREENHOUSE, 1)
HEATED = Place("p", "Propagator", PlaceKind.PROPAGATOR, 1, set_c=21.0)
PLACES = (None, FRAME, HOUSE, HEATED, Place("b", "Bed", PlaceKind.BED, 1))


def felt(
    place: Place | None,
    outside: tuple[float | None, float | None],
    own: tuple[float | None, float | None] = (None, None),
    day: date = JANUARY,
) -> tuple[float, float, float]:
    code = place.code if place else ""
    inside = {(code, day): DayWeather(day, *own, basis="reading")} if any_of(own) else {}
    found = warmth(place, Weather({day: DayWeather(day, *outside)}, inside), SITE, day)
    return found.min_c, found.mean_c, found.max_c


def any_of(own: tuple[float | None, float | None]) -> bool:
    return own != (None, None)


def test_a_house_kept_at_a_least_mean_is_so_much_warmer_all_day() -> None:
    """Reckoned -3 to 4 C about 1.5 C; kept at 12 C: 10.5 C more of each."""
    assert felt(HOUSE, (-5.0, 0.0)) == (7.5, 12.0, 14.5)


def test_a_warm_night_read_alone_is_no_colder_by_day() -> None:
    """26 C at the lowest: the day is taken to reach 36 C, as the round takes it."""
    assert felt(None, (26.0, None), day=JULY) == (26.0, 31.0, 36.0)
    known = known_day(Weather({JULY: DayWeather(JULY, min_c=26.0)}), SITE, JULY)
    assert (known.min_c, known.max_c) == (26.0, 36.0)


def test_a_cold_noon_read_alone_is_no_warmer_by_night() -> None:
    assert felt(None, (None, -12.0), day=JULY) == (-22.0, -17.0, -12.0)


@pytest.mark.parametrize(
    ("own", "expected"),
    [
        pytest.param((None, 5.0), (-5.0, 0.0, 5.0), id="highest below the reckoned lowest"),
        pytest.param((None, 20.0), (9.25, 14.625, 20.0), id="highest above it"),
        pytest.param((-2.0, None), (-2.0, 6.25, 14.5), id="lowest below the reckoned highest"),
        pytest.param((16.0, None), (16.0, 21.0, 26.0), id="lowest above it"),
        pytest.param((3.0, 5.0), (3.0, 4.0, 5.0), id="both"),
    ],
)
def test_a_frame_s_own_reading_stands_against_what_is_reckoned(
    own: tuple[float | None, float | None], expected: tuple[float, float, float]
) -> None:
    """Outside 8 to 12 C: reckoned 9.25 to 14.5 C."""
    assert felt(FRAME, (8.0, 12.0), own) == pytest.approx(expected)


def test_a_thermostat_that_did_not_hold_shows_in_the_extremes() -> None:
    assert felt(HEATED, (8.0, 12.0), (14.0, None)) == (14.0, 21.0, 21.0)
    assert felt(HEATED, (8.0, 12.0), (None, 30.0)) == (21.0, 21.0, 30.0)


def test_the_figure_known_stands_and_the_other_is_a_usual_day_from_it() -> None:
    assert in_agreement(3.0, 8.0, low_known=True) == (3.0, 8.0)
    assert in_agreement(8.0, 3.0, low_known=True) == (8.0, 18.0)
    assert in_agreement(8.0, 3.0, low_known=False) == (-7.0, 3.0)


HEAT = st.none() | st.floats(-40.0, 60.0)
PAIRS = st.tuples(HEAT, HEAT).filter(
    lambda pair: pair[0] is None or pair[1] is None or pair[0] <= pair[1]
)


@given(place=st.sampled_from(PLACES), outside=PAIRS, own=PAIRS, day=st.dates())
def test_the_mean_lies_between_lowest_and_highest(
    place: Place | None,
    outside: tuple[float | None, float | None],
    own: tuple[float | None, float | None],
    day: date,
) -> None:
    low, mean, high = felt(place, outside, own, day)
    assert low - 1e-9 <= mean <= high + 1e-9
