"""Whatever the data and the width: no exception, no line too wide, no control character."""

from __future__ import annotations

from datetime import date, time, timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from benchround.core.dates import Span as Days
from benchround.core.frame.build import LidPosition
from benchround.core.frame.lid_words import AdviceKind, LidStep
from benchround.core.seed.looks import Look
from benchround.core.sky.weather import DayWeather
from benchround.core.water.run import DayPart
from benchround.drawing.canvas import Glyphs
from benchround.drawing.flowering import flowering_lines, flowerings
from benchround.drawing.frame_curve import FrameCurve
from benchround.drawing.frame_day import frame_lines, frame_words
from benchround.drawing.germination import germination_lines
from benchround.drawing.germination_curve import GerminationCurve
from benchround.drawing.lifecycle import lifecycle_lines
from benchround.drawing.phases import Phase
from benchround.drawing.room import PlaceRoom, room_lines, room_words
from benchround.drawing.stretches import Stretch
from benchround.drawing.water import WaterLeft, driest_first, water_lines, water_words
from benchround.drawing.way import Stop, Way, When
from benchround.drawing.weather import DayLine, gust_words, rain_words, temperature_words
from benchround.drawing.year import strip_words
from benchround.drawing.year_strips import Order, YearStrip, in_order
from tests.drawing.checks import SETS, must_be_sayable, must_hold
from tests.drawing.fixed import HOSTILE, TODAY
from tests.drawing.whole_year import year_lines

WIDTHS = st.integers(20, 300)
GLYPHS = st.sampled_from(SETS)
NAMES = st.one_of(
    st.text(st.characters(exclude_categories=()), max_size=50),
    st.sampled_from(("", "Cosmos", HOSTILE, "花" * 30, "e" + "\u0301" * 40, "[/]")),
)
DAYS = st.dates(date(2024, 1, 1), date(2028, 12, 31))
TEMPS = st.one_of(st.floats(-80, 80), st.sampled_from((float("nan"), float("inf"), -0.0)))
SHARES = st.floats(0.0, 1.0)


@st.composite
def stretches(draw: st.DrawFn) -> tuple[Stretch, ...]:
    """A life in order of time, the phases in any order."""
    opens, made = draw(DAYS), []
    for phase in draw(st.lists(st.sampled_from(list(Phase)), max_size=8)):
        closes = opens + timedelta(days=draw(st.integers(0, 200)))
        made.append(Stretch(opens, closes, phase, opens > TODAY))
        opens = closes + timedelta(days=draw(st.integers(1, 40)))
    return tuple(made)


STRIPS = st.builds(
    YearStrip,
    NAMES,
    NAMES,
    NAMES,
    NAMES,
    st.integers(-5, 99),
    NAMES,
    stretches(),
    st.lists(NAMES, max_size=3).map(tuple),
    st.one_of(st.none(), st.tuples(st.integers(0, 400), st.integers(0, 400))),
)


@settings(deadline=None)
@given(
    st.lists(STRIPS, max_size=4), DAYS, st.integers(1, 900), WIDTHS, GLYPHS, st.sampled_from(Order)
)
def test_year(
    strips: list[YearStrip], opens: date, days: int, width: int, glyphs: Glyphs, order: Order
) -> None:
    span = Days(opens, opens + timedelta(days=days - 1))
    lines = year_lines(in_order(strips, order), span, TODAY, width, glyphs, order)
    must_hold(lines, width, glyphs)
    for strip in strips:
        must_be_sayable(strip_words(strip, TODAY))


@settings(deadline=None)
@given(st.lists(STRIPS, max_size=4), DAYS, WIDTHS, GLYPHS, st.booleans())
def test_flowering(
    strips: list[YearStrip], opens: date, width: int, glyphs: Glyphs, choose: bool
) -> None:
    span = Days(opens, opens + timedelta(days=364))
    chosen = strips[0].batch if strips and choose else ""
    found = flowerings(strips, span, chosen)
    must_hold(flowering_lines(found, span, TODAY, width, glyphs, chosen), width, glyphs)


@st.composite
def rooms(draw: st.DrawFn) -> list[PlaceRoom]:
    weeks = draw(st.integers(0, 60))
    monday = TODAY + timedelta(weeks=draw(st.integers(-70, 10)))
    holds = st.one_of(st.none(), st.floats(0, 50))
    used = st.lists(st.floats(0, 60), min_size=weeks, max_size=weeks).map(tuple)
    one = st.builds(PlaceRoom, NAMES, holds, st.floats(0, 60), st.just(monday), used)
    return draw(st.lists(one, max_size=3))


@settings(deadline=None)
@given(rooms(), WIDTHS, GLYPHS)
def test_room(places: list[PlaceRoom], width: int, glyphs: Glyphs) -> None:
    must_hold(room_lines(places, TODAY, width, glyphs), width, glyphs)
    must_be_sayable(room_words(places, TODAY))


CLOCKS = st.one_of(st.none(), st.times())
HOURS = st.lists(TEMPS, max_size=24).map(tuple)
STEPS = st.builds(
    LidStep,
    st.sampled_from(AdviceKind),
    CLOCKS,
    st.one_of(st.none(), st.sampled_from(LidPosition)),
    st.just(()),
    NAMES,
    NAMES,
    CLOCKS,
)
FRAMES = st.builds(
    FrameCurve,
    NAMES,
    DAYS,
    HOURS,
    HOURS,
    HOURS,
    st.lists(st.sampled_from(LidPosition), max_size=24).map(tuple),
    st.floats(0, 50),
    st.floats(-10, 40),
    st.one_of(st.none(), st.just(time(8, 40))),
    st.lists(STEPS, max_size=3).map(tuple),
    st.lists(NAMES, max_size=2).map(tuple),
)


@settings(deadline=None)
@given(FRAMES, WIDTHS, GLYPHS)
def test_frame(curve: FrameCurve, width: int, glyphs: Glyphs) -> None:
    must_hold(frame_lines(curve, width, glyphs), width, glyphs)
    must_be_sayable(frame_words(curve))


@st.composite
def germinations(draw: st.DrawFn) -> GerminationCurve:
    looks, day = [], 0.0
    for _ in range(draw(st.integers(0, 6))):
        after = day + draw(st.floats(0.5, 30))
        looks.append(Look(day, after, draw(st.integers(0, 80))))
        day = after
    points = draw(st.lists(st.tuples(st.floats(0, 200), SHARES), max_size=8))
    return GerminationCurve(
        draw(NAMES),
        draw(st.one_of(st.none(), st.integers(0, 500))),
        tuple(looks),
        draw(st.booleans()),
        tuple(sorted(points)),
        draw(NAMES),
        draw(st.one_of(st.none(), st.floats(0, 400))),
        draw(st.one_of(st.none(), st.floats(0, 60))),
        draw(NAMES),
        draw(st.lists(NAMES, max_size=2).map(tuple)),
    )


@settings(deadline=None)
@given(germinations(), WIDTHS, GLYPHS)
def test_germination(curve: GerminationCurve, width: int, glyphs: Glyphs) -> None:
    must_hold(germination_lines(curve, width, glyphs), width, glyphs)


TRAYS = st.builds(
    WaterLeft,
    NAMES,
    NAMES,
    NAMES,
    st.just(TODAY),
    SHARES,
    st.floats(0, 5000),
    NAMES,
    st.one_of(st.none(), st.dates(TODAY - timedelta(days=40), TODAY + timedelta(days=40))),
    st.one_of(st.none(), st.sampled_from(DayPart)),
)


@settings(deadline=None)
@given(st.lists(TRAYS, max_size=5), WIDTHS, GLYPHS)
def test_water(trays: list[WaterLeft], width: int, glyphs: Glyphs) -> None:
    lines = water_lines(driest_first(trays), width, glyphs)
    assert len(lines) == (len(trays) + 1 if trays else 1)
    must_hold(lines, width, glyphs)
    must_be_sayable(water_words(trays))


STOPS = st.builds(Stop, NAMES, DAYS, st.sampled_from(When))
WAYS = st.builds(Way, NAMES, st.just(TODAY), st.lists(STOPS, max_size=12).map(tuple))


@settings(deadline=None)
@given(WAYS, WIDTHS, GLYPHS)
def test_lifecycle(way: Way, width: int, glyphs: Glyphs) -> None:
    lines = lifecycle_lines(way, width, glyphs)
    assert 1 <= len(lines) <= 3
    must_hold(lines, width, glyphs)


FIGURES = st.one_of(st.none(), TEMPS)
SKIES = st.builds(
    DayWeather, st.just(TODAY), FIGURES, FIGURES, FIGURES, FIGURES, FIGURES, FIGURES, CLOCKS
)
LINES = st.builds(DayLine, DAYS, st.one_of(st.none(), SKIES))


@given(LINES)
def test_weather(line: DayLine) -> None:
    words = (temperature_words(line), rain_words(line.weather), gust_words(line.weather))
    assert "nan" not in " ".join(words) and "inf" not in " ".join(words)
    assert all(words[1:])
