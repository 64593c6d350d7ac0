"""Every file that is read: a result or a sentence whatever it holds, and nothing half taken."""

from __future__ import annotations

import contextlib
import shutil
import time
from collections.abc import Callable, Mapping
from functools import cache
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from benchround.cli import main
from benchround.core.errors import BenchroundError
from benchround.crops.library import faults_in_files, load_library
from benchround.crops.shipped import shipped_files
from benchround.feeds.daily_csv import read_daily_file
from benchround.feeds.frost_file import frost_days_of
from benchround.feeds.table_rows import readings_table, records_table
from benchround.feeds.tables import csv_text, json_text, json_value
from benchround.feeds.text_file import read_text
from benchround.store.codec import encode
from benchround.store.heading import read_heading
from benchround.store.journal import line_of, parse_journal
from benchround.store.keep import files_in, packed
from benchround.store.layout import HEADING
from benchround.store.lock import read_holder
from benchround.store.pages import page_from
from benchround.store.seal import format_page
from benchround.whereabouts import sample_folder
from tests.anything.spoilt import spoilt_bytes
from tests.sample.story import DAY_0
from tests.sample.story import records as story
from tests.store.builders import reopen

LONGEST_S = 5.0
WEATHER = b"date,tmin,tmax,rain\n2026-05-01,4.1,16.6,0.5\n2026-05-02,,19,0\n2026-05-03,-1,9,12\n"
LOCK = b'{"host": "shed", "pid": 12, "start": "1", "since": "2026-05-27 07:30", "claim": "ab"}'


@cache
def page() -> bytes:
    documents = {str(n): encode(record) for n, record in enumerate(story()[:5], start=1)}
    return format_page({"records": documents})


@cache
def journal() -> bytes:
    return b"".join(line_of([encode(record)]) for record in story()[:5])


def frost(path: Path) -> object:
    return frost_days_of(path, 52.5)


def heading(path: Path) -> object:
    path.rename(path.with_name(HEADING))
    return read_heading(path.parent)


def crops(path: Path) -> object:
    faults = faults_in_files((path,))
    if not faults:
        return load_library.__wrapped__((path,))
    return [str(fault) for fault in faults]


READERS: dict[str, tuple[Callable[[Path], object], Callable[[], bytes]]] = {
    "text": (read_text, lambda: "crop;seeds\n\u00e9;1\n".encode("cp1252")),
    "daily weather": (read_daily_file, lambda: WEATHER),
    "lowest temperatures": (frost, lambda: WEATHER),
    "crops": (crops, lambda: shipped_files()[0].read_bytes()[:1500]),
    "a season's own file": (heading, lambda: (sample_folder() / HEADING).read_bytes()),
    "a lock": (read_holder, lambda: LOCK),
    "a kept copy": (files_in, lambda: packed(sample_folder(), DAY_0)[:20_000]),
    "a page": (lambda path: page_from("x.json", (0, 0, 0), path.read_bytes()), page),
    "a journal": (lambda path: parse_journal(path.read_bytes()), journal),
}
FUZZED = settings(
    max_examples=60,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture],
)


@pytest.mark.parametrize("what", READERS)
@FUZZED
@given(data=st.data())
def test_any_file_gives_a_result_or_a_sentence(
    what: str, data: st.DataObject, tmp_path: Path
) -> None:
    read, good = READERS[what]
    path = tmp_path / "file"
    path.write_bytes(data.draw(spoilt_bytes(good())))
    began = time.perf_counter()
    try:
        read(path)
    except BenchroundError as error:
        assert str(error).strip(), what
    assert time.perf_counter() - began < LONGEST_S


@FUZZED
@given(data=st.data())
def test_a_season_of_any_files_opens_or_says_why_and_writes_over_none(
    data: st.DataObject, tmp_path: Path
) -> None:
    season = tmp_path / "season"
    shutil.rmtree(season, ignore_errors=True)
    (season / "records").mkdir(parents=True)
    files: Mapping[str, Callable[[], bytes]] = {
        HEADING: (sample_folder() / HEADING).read_bytes,
        "records/shed-2026-05-001.json": page,
        "records/shed-2026-05-001 (copy).json": page,
        "records/tent-2026-05-001.jsonl": journal,
    }
    for name, good in files.items():
        (season / name).write_bytes(data.draw(spoilt_bytes(good())))
    before = {name: (season / name).read_bytes() for name in files}
    with contextlib.suppress(BenchroundError), reopen(season, "hut") as opened:
        assert all(record.id for record in opened.records())
        assert all(isinstance(said, str) for said in opened.problems)
    assert {name: (season / name).read_bytes() for name in files} == before


RECORDS, READINGS = records_table(story()[:6]), readings_table(story())
TAKEN_IN: dict[str, tuple[tuple[str, ...], bytes, tuple[str, ...]]] = {
    "daily weather": (("weather", "import"), WEATHER, ()),
    **{
        f"a table of {table.name} as {form}": (("tables", "--take-in"), text.encode(), ("--yes",))
        for table in (RECORDS, READINGS)
        for form, text in (
            ("CSV", csv_text(table)[0]),
            ("JSON", json_text(json_value(table))),
        )
    },
}


@pytest.mark.parametrize("what", TAKEN_IN)
@settings(FUZZED, max_examples=25)
@given(data=st.data())
def test_a_file_is_taken_in_whole_or_not_at_all(
    what: str, data: st.DataObject, tmp_path: Path
) -> None:
    season, file = tmp_path / "season", tmp_path / "file.csv"
    if not season.exists():
        shutil.copytree(sample_folder(), season, ignore=shutil.ignore_patterns("*.lock"))
    command, good, more = TAKEN_IN[what]
    file.write_bytes(data.draw(spoilt_bytes(good)))
    before = {record.id for record in reopen(season, read_only=True).records()}
    code = main([*command, str(file), str(season), *more])
    after = {record.id for record in reopen(season, read_only=True).records()}
    assert code in (0, 1, 2)
    assert before <= after
    assert code == 0 or before == after
