"""Everything that reads what was typed or pasted: a result or a sentence, and never for long."""

from __future__ import annotations

import time
from collections.abc import Callable
from functools import cache

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from benchround.core.crop.edge import edge_from_text
from benchround.core.errors import BenchroundError
from benchround.core.frame.place import read_plan
from benchround.core.record import Kind
from benchround.core.record_figures import KINDS
from benchround.core.season import Season
from benchround.core.site_words import read_month_day
from benchround.core.typed.date import read_day
from benchround.core.typed.diary_line import read_diary_line
from benchround.core.typed.figures import read_note, read_number, read_whole
from benchround.core.typed.places import read_places
from benchround.core.typed.site import read_latitude, read_longitude, read_year_day
from benchround.core.typed.words import read_choice, read_place
from benchround.core.units import Units
from benchround.crops.library import load_library
from benchround.feeds.daily_columns import read_map
from benchround.feeds.daily_csv import read_daily
from benchround.feeds.everything_json import Everything, everything_from, everything_text
from benchround.feeds.forecast_json import read_forecast
from benchround.feeds.outlook_line import read_outlook
from benchround.feeds.paper_entry import read_entry
from benchround.feeds.papers import read_size
from benchround.feeds.sowing_sheet import read_sheet
from benchround.feeds.sowing_table import read_table
from benchround.reckoning.germination import read_counts
from benchround.rounds.record_line import Reader
from benchround.rounds.typed_words import batch_named, kind_named, place_named
from benchround.store.codec import decode, encode
from tests.anything.spoilt import spoilt_texts
from tests.feeds.seasons import sample_season
from tests.sample.story import DAY_0
from tests.sample.story import records as story

LONGEST_S = 2.0
NAMES = load_library().names()


@cache
def season() -> Season:
    return sample_season()


def figures(text: str) -> object:
    """`note lost count=3 cause=slug`, taken apart as the shell does it."""
    kind, *words = text.split(" ")
    reader = Reader(season(), DAY_0, lambda typed: load_library().crop(typed).key)
    pairs = [(name, value) for name, _, value in (word.partition("=") for word in words)]
    return reader.figures(kind_named(kind), pairs)


PARSERS: dict[str, tuple[Callable[[str], object], str]] = {
    "a day": (lambda text: read_day(text, DAY_0), "27 may 2026"),
    "a day ahead": (lambda text: read_day(text, DAY_0, ahead=True, month_first=True), "5/27/26"),
    "a day of every year": (read_year_day, "11 may"),
    "a day of the site": (lambda text: read_month_day("last frost", text), "05-11"),
    "a diary line": (
        lambda text: read_diary_line(text, DAY_0, NAMES, season().places, "b40"),
        "12 apr cosmos Paper Lantern 40 seeds 8 cells 5 per cell bench 1 packet p01",
    ),
    "an outlook line": (
        lambda text: read_outlook(text, DAY_0, 15.0),
        "today 5 to 23, sun 12 h, dry, gusts 22; fri 29/11, 22 mm",
    ),
    "a sheet of sowings": (
        lambda text: read_sheet(text, season(), NAMES, DAY_0, "b34"),
        'crop,variety,sown,seeds,place\ncosmos,"Paper, Lantern",12 apr,40,Bench 1\nleek,,3/6,9,\n',
    ),
    "a table of sowings": (read_table, "crop;seeds\ncosmos;40\n"),
    "daily weather": (
        read_daily,
        "date,tmin (F),tmax,rain_mm,gust_kmh\n# x\n2026-05-01,41,66,0.5,22\n20260502,,9,T,\n",
    ),
    "columns of weather": (read_map, "min=Low,max=High,rain=Rain mm"),
    "a forecast": (
        lambda text: read_forecast(text, ""),
        '{"daily_units": {"temperature_2m_min": "\u00b0C"}, "daily": {"time": ["2026-05-27"], '
        '"temperature_2m_min": [5.1], "precipitation_sum": [null]}}',
    ),
    "everything of a season": (
        lambda text: everything_from(text, decode),
        everything_text(Everything("Garden", DAY_0, story()[:6]), encode),
    ),
    "what was ticked on paper": (read_entry, "3 5 7:22 8:4,2"),
    "a size of paper": (read_size, "210x297"),
    "counts of seedlings": (read_counts, "4:3 6:17 8:2"),
    "figures of a record": (figures, "lost count=3 cause=slug"),
    "a kind": (kind_named, "pricked out"),
    "a batch": (lambda text: batch_named(text, season()), "b07"),
    "a place": (lambda text: place_named(text, season()), "Bench 1"),
    "a choice": (lambda text: read_choice(text, ("dried out", "drowned")), "dried"),
    "a typed place": (lambda text: read_place(text, season().places), "frame a"),
    "places": (read_places, "Propagator P: propagator, Bench 1: bench, Frame A: frame"),
    "a plan of a lid": (read_plan, "07:00 first notch, 18:00 shut"),
    "a latitude": (read_latitude, "52.5 N"),
    "a longitude": (read_longitude, "1\u00b0 30' W"),
    "a whole number": (read_whole, "1 200"),
    "a number": (lambda text: read_number(text, -40.0, 60.0, "C"), "-12,5"),
    "a temperature": (lambda text: Units().read_temp_c(text, -40.0, 60.0), "41 F"),
    "rain": (lambda text: Units().read_fall_mm(text, 500.0), '0.5"'),
    "a length": (lambda text: Units().read_length_mm(text, 500.0), "3/4 in"),
    "a note": (read_note, "the outer row is drawn\nlook again"),
    "an edge of a window": (edge_from_text, "day length falling 10 -7"),
}


@pytest.mark.parametrize("what", PARSERS)
@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(data=st.data())
def test_any_text_gives_a_result_or_a_sentence(what: str, data: st.DataObject) -> None:
    parse, good = PARSERS[what]
    text = data.draw(spoilt_texts(good))
    began = time.perf_counter()
    try:
        parse(text)
    except BenchroundError as error:
        assert str(error).strip(), what
    assert time.perf_counter() - began < LONGEST_S


@pytest.mark.parametrize("what", PARSERS)
def test_the_good_text_is_read(what: str) -> None:
    parse, good = PARSERS[what]
    if what == "a length":
        good = "0.75 in"
    elif what == "a whole number":
        good = "1200"
    parse(good)


@pytest.mark.parametrize("what", PARSERS)
@pytest.mark.parametrize("piece", ["9", "(", "a ", "1.", " ", '"', "[", "-", "é"])
def test_a_long_text_takes_no_long_time(what: str, piece: str) -> None:
    """Twenty thousand letters: what is read again and again for every letter would show."""
    parse, _ = PARSERS[what]
    began = time.perf_counter()
    try:
        parse(piece * (20_000 // len(piece)))
    except BenchroundError as error:
        assert len(str(error)) < 3_000, what
    assert time.perf_counter() - began < LONGEST_S


def test_every_kind_is_fuzzed_through_its_own_words() -> None:
    for kind in Kind:
        if kind in KINDS:
            assert kind_named(str(kind)) is kind
