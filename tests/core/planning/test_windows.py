"""Sowing windows on a site's year: Iowa weeks, biennials by midsummer, and both hemispheres."""

from __future__ import annotations

import csv
from datetime import date, timedelta
from pathlib import Path

import pytest

from benchround.core.crop.crop import Anchor, Edge, PlantClass, SowingWindow
from benchround.core.dates import Year
from benchround.core.site import Site
from benchround.crops.library import load_library

DATA = Path(__file__).resolve().parents[2] / "data"
NORTH = Site(lat_deg=52.5, last_frost=(5, 11), last_frost_safe=(5, 30), first_frost=(10, 12))
SOUTH = Site(lat_deg=-45.9, last_frost=(11, 11), last_frost_safe=(11, 30), first_frost=(4, 12))
"""The same garden, six months away: a made-up site at the latitude of Otago."""

LIBRARY = load_library()


def iowa_rows() -> list[dict[str, str]]:
    with (DATA / "iowa_weeks.csv").open(encoding="utf-8") as lines:
        return list(csv.DictReader(line for line in lines if not line.startswith("#")))


ROWS = iowa_rows()


@pytest.mark.parametrize(
    "row", ROWS, ids=[f"Iowa State {r.get('source_key', '')} {r['key']}" for r in ROWS]
)
@pytest.mark.parametrize("site", [NORTH, SOUTH], ids=["52 N", "46 S"])
def test_annuals_are_sown_iowas_weeks_before_planting(row: dict[str, str], site: Site) -> None:
    """Source: Iowa State University Extension, germination requirements (weeks from sowing to
    planting out; read). Planting is taken at the last frost."""
    crop = LIBRARY[row["key"]]
    least, most = float(row["weeks_min"]), float(row["weeks_max"])
    year = 2026
    planting = date(year, *site.last_frost)
    spans = []
    for window in crop.windows:
        span = site.year.span(window, planting - timedelta(weeks=most))
        assert span is not None
        spans.append(span)
    earliest, latest = planting - timedelta(weeks=most), planting - timedelta(weeks=least)
    assert any(span.opens <= earliest and latest <= span.closes for span in spans)


BIENNIALS = sorted(key for key in LIBRARY if LIBRARY[key].plant_class is PlantClass.BIENNIAL)


@pytest.mark.parametrize("key", BIENNIALS)
@pytest.mark.parametrize("site", [NORTH, SOUTH], ids=["52 N", "46 S"])
def test_biennials_are_sown_around_and_after_midsummer(key: str, site: Site) -> None:
    """Garden Answers 2018 and 2019 (months read): May to mid July in the north."""
    midsummer = site.year.midsummer(2026)
    span = site.year.span(LIBRARY[key].windows[0], midsummer - timedelta(days=60))
    assert span is not None
    assert timedelta(days=-60) <= span.opens - midsummer <= timedelta(days=0)
    assert timedelta(days=-10) <= span.closes - midsummer <= timedelta(days=45)


@pytest.mark.parametrize("key", sorted(LIBRARY))
def test_every_window_stands_six_months_away_in_the_south(key: str) -> None:
    """Anchored windows keep their distance to frost and midsummer on either side of the line."""
    for window in LIBRARY[key].windows:
        north = NORTH.year.span(window, date(2026, 1, 1))
        south = SOUTH.year.span(window, date(2026, 1, 1))
        assert north is not None and south is not None, f"{key} {window.name} never comes"
        if window.opens.anchor is window.closes.anchor:
            assert north.days - 2 <= south.days <= north.days + 2 or window.opens.value is not None
        shift = abs((south.opens - north.opens).days) % 365
        assert 150 <= shift <= 215, f"{key} {window.name}: {north.opens} against {south.opens}"


FAR_NORTH = Site(lat_deg=65.0, last_frost=(6, 5), last_frost_safe=(6, 20), first_frost=(8, 28))
TOO_COLD = {
    ("courgette", "outdoors"),  # the soil is warm enough only after midsummer
    ("sweetcorn", "outdoors"),
    ("zinnia", "later, for a second sowing"),  # the last useful sowing is before the first late one
}
"""Windows that would close before they open at 65 N with its first frost at the end of August."""


def test_at_65_north_three_windows_never_come_and_every_crop_keeps_another() -> None:
    never = {
        (key, window.name)
        for key, crop in LIBRARY.items()
        for window in crop.windows
        if FAR_NORTH.year.span(window, date(2026, 1, 1)) is None
    }
    assert never == TOO_COLD
    for key, name in never:
        assert [window for window in LIBRARY[key].windows if window.name != name]


def test_a_window_over_the_turn_of_the_year_closes_after_it_opens() -> None:
    window = SowingWindow("winter", Edge(Anchor.MIDWINTER, -20), Edge(Anchor.LAST_FROST, -90))
    span = NORTH.year.span(window, date(2026, 12, 15))
    assert span is not None
    assert (span.opens, span.closes) == (date(2026, 12, 1), date(2027, 2, 10))


def test_an_anchor_that_never_comes_gives_no_window() -> None:
    window = SowingWindow(
        "never", Edge(Anchor.DAY_LENGTH_RISING, 0, 20.0), Edge(Anchor.MIDSUMMER, 0)
    )
    assert NORTH.year.span(window, date(2026, 3, 1)) is None


def test_day_length_anchor_at_52_north() -> None:
    """Under 10 h from about 27 October to 16 February at 52 N (computed in the trade notes)."""
    year: Year = Site(lat_deg=52.0).year
    rising = year.edge(Edge(Anchor.DAY_LENGTH_RISING, 0, 10.0), 2026)
    falling = year.edge(Edge(Anchor.DAY_LENGTH_FALLING, 0, 10.0), 2026)
    assert abs((rising - date(2026, 2, 16)).days) <= 2
    assert abs((falling - date(2026, 10, 27)).days) <= 2
