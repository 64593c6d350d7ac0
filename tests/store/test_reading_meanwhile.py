"""Reading while another program puts a journal into its page: no record is ever missed."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from pathlib import Path
from typing import Any

import pytest

from benchround.core.record import Record
from benchround.store.contents import Contents
from benchround.store.folder import SeasonFolder
from benchround.store.keep import files_in, keep_copy
from benchround.store.pages import documents_in, read_page
from tests.store.builders import DAY, Scribe, filled_season, new_season, reopen

ROOT = Path(__file__).parents[2]


def half_full(path: Path) -> tuple[SeasonFolder, tuple[Record, ...]]:
    """An open season with two records in a page and three in its journal."""
    filled = filled_season(path, 2)
    writer = reopen(path)
    added = Scribe("b").records(3)
    writer.append(added)
    return writer, tuple(sorted((*filled, *added), key=lambda record: record.id))


def test_a_journal_that_goes_before_it_is_read_is_found_in_its_page(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    writer, records = half_full(tmp_path / "s")

    def late(path: Path, *rest: Any) -> Any:
        if path.suffix == ".jsonl":
            writer.close()
        return read_page(path, *rest)

    monkeypatch.setattr("benchround.store.contents.read_page", late)
    reader = reopen(tmp_path / "s", read_only=True)
    assert writer.records() == records
    assert not list((tmp_path / "s" / "records").glob("*.jsonl"))
    assert reader.records() == records
    assert reader.damaged == ()


def test_a_journal_that_goes_while_the_folder_is_listed_is_found_in_its_page(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    writer, records = half_full(tmp_path / "s")
    reader = reopen(tmp_path / "s", read_only=True)
    real = Contents._list

    def torn(contents: Contents) -> dict[str, Any]:
        """The page as it was before, and then the journal already gone."""
        marks = real(contents)
        if any(name.endswith(".jsonl") for name in marks):
            writer.close()
            return {name: mark for name, mark in marks.items() if name.endswith(".json")}
        return marks

    monkeypatch.setattr(Contents, "_list", torn)
    assert reader.reload_if_changed()
    assert reader.records() == records
    assert len(reader.problems) == 1  # that it is open for reading only


@pytest.mark.parametrize("moment", [1, 2])
def test_a_copy_kept_while_a_journal_goes_holds_every_record(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, moment: int
) -> None:
    path = tmp_path / "s"
    new_season(path, "laptop").close()
    writer = reopen(path, "laptop")
    records = Scribe().records(3)
    writer.append(records)
    real, listed = Path.iterdir, []

    def late(folder: Path) -> Any:
        names = list(real(folder))
        listed.append(folder)
        if len(listed) == moment:
            writer.close()
        return iter(names)

    monkeypatch.setattr(Path, "iterdir", late)
    made = keep_copy(path, "desktop", DAY, drop=False)
    assert made is not None
    documents = [d for name, data in files_in(made).items() for d in documents_in(name, data)]
    assert {d["id"] for d in documents if "id" in d} == {record.id for record in records}


WRITER = """
import sys
from pathlib import Path
from tests.store.builders import Scribe, reopen

scribe = Scribe()
season = reopen(Path(sys.argv[1]))
for number in range(100_000):
    season.append((scribe.record(figures={"number": number}),))
"""


def numbers(season: SeasonFolder) -> list[int]:
    return sorted(int(record.figures["number"]) for record in season.records())


def test_readers_see_all_that_was_written_before_they_looked(tmp_path: Path) -> None:
    path = tmp_path / "s"
    new_season(path).close()
    asked = [sys.executable, "-c", WRITER, str(path)]
    writer = subprocess.Popen(asked, cwd=ROOT, env={**os.environ, "PYTHONPATH": str(ROOT)})
    try:
        looks, seen, staying = 0, 0, reopen(path, read_only=True)
        end = time.monotonic() + 3
        while time.monotonic() < end or seen < 400:
            found = numbers(reopen(path, read_only=True))
            assert found == list(range(len(found)))
            assert len(found) >= seen
            staying.reload_if_changed()
            kept = numbers(staying)
            assert kept == list(range(len(kept)))
            assert len(kept) >= len(found)
            assert len(staying.problems) == 1
            looks, seen = looks + 1, len(kept)
            assert time.monotonic() < end + 60
        assert looks > 10
    finally:
        writer.kill()
        writer.wait()
