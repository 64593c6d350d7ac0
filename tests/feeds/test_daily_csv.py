"""Tables of daily weather: open data, units, gaps, impossible figures, files that are no tables."""

from __future__ import annotations

import csv
from datetime import date
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import InputError
from benchround.core.record import Kind
from benchround.core.sky.weather import COLDEST_C, HOTTEST_C
from benchround.feeds import daily_csv, text_file
from benchround.feeds.daily_columns import Column, columns_of, read_map
from benchround.feeds.daily_csv import read_daily, read_daily_file
from benchround.feeds.daily_reading import DailyFile, read_date

DATA = Path(__file__).resolve().parents[1] / "data" / "weather"
GHCND = "NOAA GHCN-Daily, station USC00010655 (read)"
SEATTLE = "vega-datasets seattle-weather, from NOAA records (read)"


@pytest.mark.parametrize(
    ("name", "days", "empty", "first", "low", "high"),
    [
        ("ghcnd_USC00010655_minima_2003-2024.csv", 7979, 22, date(2003, 1, 1), 8.9, None),
        ("seattle_extremes_2012-2015.csv", 1461, 0, date(2012, 1, 1), 5.0, 12.8),
        ("ucipm_degree_days_ojai_2016.csv", 366, 0, date(2016, 1, 1), 7.8, 19.4),
    ],
    ids=[GHCND, SEATTLE, "UC IPM degree-day tool, Ojai 2016 (read)"],
)
def test_open_data_are_read_as_printed(
    name: str, days: int, empty: int, first: date, low: float, high: float | None
) -> None:
    found = read_daily_file(DATA / name)
    assert (len(found.readings), found.empty, found.faults) == (days, empty, ())
    assert (found.readings[0].day, found.readings[0].min_c, found.readings[0].max_c) == (
        first,
        low,
        high,
    )
    with (DATA / name).open(encoding="utf-8", newline="") as file:
        printed = {row["date"]: row["tmin_c"] for row in csv.DictReader(file) if row["tmin_c"]}
    ours = {r.day.isoformat(): r.min_c for r in found.readings}
    assert ours == {day: float(text) for day, text in printed.items()}


def test_gaps_of_open_data_are_named() -> None:
    found = read_daily_file(DATA / "ghcnd_USC00010655_minima_2003-2024.csv")
    assert found.gaps[0] == (date(2007, 10, 1), 31)
    whole = (date(2024, 12, 31) - date(2003, 1, 1)).days + 1
    assert len(found.readings) + found.empty + sum(days for _, days in found.gaps) == whole


AMERICAN = "DATE,TMIN,TMAX,PRCP,WSFG\n2026-05-20,32,212.0,1,10\n2026-05-21,50,68,T,\n"


def test_units_are_turned_into_ours() -> None:
    units = {Column.MIN: "F", Column.MAX: "F", Column.RAIN: "in", Column.GUST: "mph"}
    found = read_daily(AMERICAN, units=units)
    first, second = found.readings
    # 32 F is 0 C, 50 F 10 C, 68 F 20 C; 1 in is 25.4 mm; 1 mile is 1.609344 km (definitions)
    assert (first.min_c, first.rain_mm, first.gust_kmh) == (0.0, 25.4, 16.09)
    assert (second.min_c, second.max_c, second.rain_mm) == (10.0, 20.0, 0.0)
    assert first.max_c is None  # 212 F is 100 C: no air was ever that warm
    assert [str(fault) for fault in found.faults] == [
        "row 2: TMAX: 100 C cannot be (-45 to 70); left out"
    ]


@pytest.mark.parametrize(
    ("heading", "column", "unit"),
    [
        ("tmin_c", Column.MIN, "C"),
        ("Tmin (°F)", Column.MIN, "F"),
        ("LOW", Column.MIN, "C"),
        ("temperature_2m_min", Column.MIN, "C"),
        ("Max Temp", Column.MAX, "C"),
        ("Temp_Max_F", Column.MAX, "F"),
        ("PRCP", Column.RAIN, "mm"),
        ("rain (in)", Column.RAIN, "in"),
        ("Precipitation mm", Column.RAIN, "mm"),
        ("gust km/h", Column.GUST, "kmh"),
        ("wind gust m/s", Column.GUST, "ms"),
        ("sunshine hours", Column.SUN, "h"),
    ],
)
def test_usual_headings_are_found_with_their_unit(heading: str, column: Column, unit: str) -> None:
    found = columns_of(["Date", heading], {}, {})
    assert (found[column].index, found[column].unit) == (1, unit)


def test_a_mean_wind_is_not_taken_for_a_gust() -> None:
    assert Column.GUST not in columns_of(["date", "tmin", "wind"], {}, {})


def test_what_is_told_goes_before_what_is_guessed() -> None:
    text = "when;lowest soil;tmin\n2026-05-20;7,5;5\n"
    found = read_daily(text, read_map("day=When, min=lowest soil"))
    assert found.readings[0].min_c == 7.5


BAD_ROWS = """# a comment line
date,tmin,tmax,rain

2026-05-20,5,15,0
2026-13-01,5,15,0
2026-05-21,18,9,0
2026-05-22,abc,15,-1
2026-05-20,6,16,0
2026-05-24,,,
2026-05-25,NA,-9999,
2026-05-26,4
"""


def test_every_fault_is_named_by_its_row_and_the_rest_is_kept() -> None:
    found = read_daily(BAD_ROWS)
    assert [str(fault) for fault in found.faults] == [
        "row 5: '2026-13-01' is no day (iso); say how dates are written: dmy or mdy",
        "row 6: lowest 18.0 C is above highest 9.0 C; neither is used",
        "row 7: tmin: 'abc' is no number",
        "row 7: rain: -1 mm cannot be (0 to 500); left out",
        "row 8: 2026-05-20 was given before; the first row counts",
    ]
    assert [(r.day.day, r.min_c, r.max_c, r.rain_mm) for r in found.readings] == [
        (20, 5.0, 15.0, 0.0),
        (21, None, None, 0.0),
        (22, None, 15.0, None),
        (26, 4.0, None, None),
    ]
    assert found.empty == 2
    assert found.gaps == ((date(2026, 5, 23), 1),)


def test_only_readings_come_out() -> None:
    drafts = [one.draft("frame-a", "from a file") for one in read_daily(BAD_ROWS).readings]
    assert {draft.kind for draft in drafts} == {Kind.READING}
    assert {draft.about for draft in drafts} == {"frame-a"}
    assert drafts[0].figures == {"min_c": 5.0, "max_c": 15.0, "rain_mm": 0.0}


@pytest.mark.parametrize(
    ("written", "dates", "day"),
    [
        ("2026-05-27", "iso", date(2026, 5, 27)),
        ("20260527", "iso", date(2026, 5, 27)),
        ("2026-05-27T00:00:00Z", "iso", date(2026, 5, 27)),
        ("27/5/2026", "dmy", date(2026, 5, 27)),
        ("27.05.2026", "dmy", date(2026, 5, 27)),
        ("5/27/2026", "mdy", date(2026, 5, 27)),
        ("5/27/2026", "dmy", None),
        ("27/5/2026", "iso", None),
        ("2026-02-30", "iso", None),
        ("0001-01-01", "iso", None),
        ("", "iso", None),
    ],
)
def test_days_are_read_one_way_only(written: str, dates: str, day: date | None) -> None:
    assert read_date(written, dates) == day


@pytest.mark.parametrize(
    ("raw", "degree"),
    [
        ("date,tmin,note\n2026-05-20,5,Gärtnerei\n".encode(), 5.0),
        ("\ufeffdate,tmin\n2026-05-20,5\n".encode(), 5.0),
        ("date,tmin,note\n2026-05-20,5,G\xe4rtnerei\n".encode("latin-1"), 5.0),
        (b"date\ttmin\r\n2026-05-20\t5\r\n", 5.0),
    ],
    ids=["utf-8", "utf-8 with its mark", "latin-1", "tabs and Windows line ends"],
)
def test_encodings(tmp_path: Path, raw: bytes, degree: float) -> None:
    path = tmp_path / "station.csv"
    path.write_bytes(raw)
    assert read_daily_file(path).readings[0].min_c == degree


@pytest.mark.parametrize(
    ("raw", "said"),
    [
        (b"", "empty"),
        (b"# nothing\n", "empty"),
        (b"date,tmin\n", "no row could be used"),
        (b"a,b,c\n1,2,3\n", "No column holds a day"),
        (b"date,b\n2026-05-20,2\n", "No column holds a figure"),
        (b"date,tmin,tmin\n2026-05-20,2,3\n", "More than one column"),
        (b"PK\x03\x04\x00\x00", "no text file"),
        (b"date,tmin\n27/5/2026,5\n", "dmy or mdy"),
        (b'date,tmin\n"2026-05-20,5\n' + b"x" * 140_000, "row"),
    ],
)
def test_what_is_no_table_is_refused_with_a_sentence(tmp_path: Path, raw: bytes, said: str) -> None:
    path = tmp_path / "station.csv"
    path.write_bytes(raw)
    with pytest.raises(InputError, match=said) as caught:
        read_daily_file(path)
    assert "station.csv" in str(caught.value)


def test_a_missing_file_and_a_folder_are_named(tmp_path: Path) -> None:
    with pytest.raises(InputError, match=r"nothing\.csv cannot be read"):
        read_daily_file(tmp_path / "nothing.csv")
    with pytest.raises(InputError, match="cannot be read"):
        read_daily_file(tmp_path)


def test_size_is_limited(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "station.csv"
    path.write_text("date,tmin\n2026-05-20,5\n2026-05-21,6\n", encoding="utf-8")
    assert (text_file.MOST_BYTES, daily_csv.MOST_ROWS) == (20_000_000, 200_000)
    monkeypatch.setattr(daily_csv, "MOST_ROWS", 1)
    with pytest.raises(InputError, match="more than 1 rows"):
        read_daily_file(path)
    monkeypatch.setattr(text_file, "MOST_BYTES", 10)
    with pytest.raises(InputError, match="cut it into years"):
        read_daily_file(path)
    with pytest.raises(InputError, match="not read"):
        text_file.decoded(b"x" * 11)


@pytest.mark.parametrize(
    "text", ["min", "min=", "low=TMIN", "min=A,min=B", "=A"], ids=lambda text: str(text)
)
def test_a_map_that_cannot_be_is_refused(text: str) -> None:
    with pytest.raises(InputError):
        read_map(text)


def test_a_heading_that_is_not_there_is_named_with_those_that_are() -> None:
    with pytest.raises(InputError, match=r"'TMIN' for 'min' is not in the file.*date, low"):
        read_daily("date,low\n2026-05-20,5\n", {Column.MIN: "TMIN"})


def test_unknown_units_and_dates_are_refused() -> None:
    with pytest.raises(InputError, match="use C, F"):
        read_daily("date,tmin\n2026-05-20,5\n", units={Column.MIN: "K"})
    with pytest.raises(InputError, match="iso, dmy or mdy"):
        read_daily("date,tmin\n2026-05-20,5\n", dates="ymd")


CELLS = st.text(alphabet="0123456789.,-;\"' \tTNAabc#", max_size=12)


@given(st.lists(st.lists(CELLS, max_size=4), max_size=8))
def test_whatever_the_rows_hold_only_possible_figures_come_out(rows: list[list[str]]) -> None:
    """Property: a table or a sentence, never a figure out of range."""
    text = "date,tmin,tmax,rain\n" + "\n".join(",".join(row) for row in rows)
    found = table_or_none(text)
    for reading in () if found is None else found.readings:
        assert reading.figures()
        for value in (reading.min_c, reading.max_c):
            assert value is None or COLDEST_C <= value <= HOTTEST_C
        assert reading.rain_mm is None or 0.0 <= reading.rain_mm <= 500.0


def table_or_none(text: str) -> DailyFile | None:
    try:
        return read_daily(text)
    except InputError as error:
        assert str(error)
        return None


DAILY = st.lists(
    st.tuples(
        st.dates(date(1990, 1, 1), date(2030, 12, 31)),
        st.integers(-400, 200),
        st.integers(0, 300),
    ),
    min_size=1,
    max_size=20,
    unique_by=lambda row: row[0],
)


@given(DAILY, st.sampled_from([",", ";", "\t"]))
def test_what_is_written_comes_back(rows: list[tuple[date, int, int]], parting: str) -> None:
    """Property: order of rows and the sign between cells make no difference."""
    lines = [parting.join(("date", "tmin", "tmax"))]
    lines += [
        parting.join((day.isoformat(), f"{low / 10}", f"{(low + spread) / 10}"))
        for day, low, spread in rows
    ]
    found = read_daily("\n".join(lines))
    assert [(r.day, r.min_c, r.max_c) for r in found.readings] == sorted(
        (day, low / 10, (low + spread) / 10) for day, low, spread in rows
    )
    assert found.faults == ()
