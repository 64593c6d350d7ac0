"""Keeping copies and bringing them back: nothing is ever overwritten."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.commands.recording.bench import Run, files_of, round_of
from tests.sample.story import DAY_0


def pages(folder: Path) -> list[Path]:
    return sorted((folder / "records").iterdir())


def test_one_copy_a_day_is_kept_and_listed(season: Path, run: Run) -> None:
    first = run("keep", "--json").value
    assert first["made"].startswith(DAY_0.isoformat())
    [copy] = first["copies"]
    assert set(copy) == {"name", "day", "machine", "bytes"}
    assert (copy["name"], copy["day"]) == (first["made"], DAY_0.isoformat())
    again = run("keep", "--json").value
    assert (again["made"], again["copies"]) == (None, first["copies"])
    before = files_of(season)
    assert run("keep", "--list", "--json").value["copies"] == first["copies"]
    assert files_of(season) == before


def test_what_was_lost_comes_back_and_a_preview_changes_nothing(season: Path, run: Run) -> None:
    whole = round_of(season)
    run("keep")
    for page in pages(season):
        page.unlink()
    before = files_of(season)
    preview = run("restore", "latest", "--preview", "--json").value
    assert files_of(season) == before
    assert preview["preview"] is True
    done = run("restore", DAY_0.isoformat(), "--json").value
    assert set(done) == {"copy", "preview", "files", "records", "unread"}
    assert [r["id"] for r in done["records"]] == [r["id"] for r in preview["records"]]
    assert round_of(season) == whole
    assert run("restore", "latest", "--json").value["records"] == []


def test_what_was_recorded_since_stays(season: Path, run: Run) -> None:
    run("keep")
    run("tick", "feed:b16")
    after = round_of(season)
    assert run("restore", "latest").code == 0
    assert round_of(season) == after


def test_a_damaged_heading_is_put_right(season: Path, run: Run) -> None:
    run("keep")
    (season / "benchround.json").write_text("{", encoding="utf-8")
    assert run("note", "b20", "fed").code == 1
    ran = run("restore", "latest", "--json")
    assert ran.code == 0, ran.err
    assert "benchround.json" in ran.value["files"]
    assert run("note", "b20", "fed").code == 0


def test_a_damaged_file_is_mended_from_its_copy_and_moved_aside(season: Path, run: Run) -> None:
    whole = round_of(season)
    run("keep")
    page = pages(season)[0]
    half = page.read_bytes()[: page.stat().st_size // 2]
    page.write_bytes(half)
    before = files_of(season)
    preview = run("restore", "--damaged", "--preview", "--json").value
    assert files_of(season) == before
    [told] = preview["damaged"]
    assert (told["file"], told["aside"]) == (page.name, None)
    assert told["copy"].startswith(DAY_0.isoformat())
    ran = run("restore", "--damaged")
    assert ran.code == 0, ran.err
    assert f"{page.name}: sound in {told['copy']}" in ran.out
    assert (season / "aside" / page.name).read_bytes() == half
    assert not page.exists()
    assert round_of(season) == whole
    again = run("restore", "--damaged", "--json")
    assert (again.code, again.value["damaged"], again.value["records"]) == (0, [], [])


def test_what_was_rescued_or_brought_back_is_mended_as_well_when_it_is_damaged_again(
    season: Path, run: Run
) -> None:
    whole = round_of(season)
    run("keep")
    for _ in range(3):
        page = max(pages(season), key=lambda path: path.stat().st_size)
        page.write_bytes(page.read_bytes()[: page.stat().st_size // 2])
        ran = run("restore", "--damaged")
        assert ran.code == 0, ran.err
        assert f"{page.name}: sound in {DAY_0.isoformat()}" in ran.out
        assert round_of(season) == whole
    assert all(path.name.count("(rescued") <= 1 for path in pages(season))


def test_a_damaged_file_of_which_there_is_no_copy_is_moved_with_nothing_lost(
    season: Path, run: Run
) -> None:
    page = pages(season)[0]
    page.write_bytes(page.read_bytes()[:-300])
    left = round_of(season)
    ran = run("restore", "--damaged")
    assert ran.code == 0, ran.err
    assert "sound in no copy" in ran.out
    assert round_of(season) == left
    assert run("today").err.count("damaged") == 0


@pytest.mark.parametrize("words", [(), ("latest", "--damaged")])
def test_a_copy_is_named_or_the_damaged_are_meant(
    season: Path, run: Run, words: tuple[str, ...]
) -> None:
    assert "one of the two" in run("restore", *words).err


@pytest.mark.parametrize(
    ("copy", "said"),
    [
        ("2026-05-26", "there are|near it"),
        ("2026-05-2", "near it"),
        ("../../season", "No copy is called"),
        ("", "No copy is called"),
    ],
)
def test_a_copy_that_is_not_there_is_named(season: Path, run: Run, copy: str, said: str) -> None:
    run("keep")
    before = files_of(season)
    ran = run("restore", copy)
    assert ran.code == 1
    assert any(words in ran.err for words in said.split("|"))
    assert files_of(season) == before


def test_without_any_copy_it_says_so(season: Path, run: Run) -> None:
    assert "benchround keep" in run("restore", "latest").err
    assert run("keep", "--list").out == "no copy was kept yet\n"
