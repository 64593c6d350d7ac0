"""Sowing from the shell: batch, label, looked-for day, cautions, and what is refused."""

from __future__ import annotations

from datetime import date, timedelta
from pathlib import Path

import pytest

from benchround.core.record import Kind
from benchround.desk import Desk
from benchround.rounds.sowing import label_words
from benchround.rounds.view import BatchView
from tests.commands.recording.bench import Run, files_of, rounds_of
from tests.sample.story import DAY_0


def opened(folder: Path) -> Desk:
    return Desk.open(folder, today=lambda: DAY_0, read_only=True)


def test_a_sowing_is_on_the_books_with_what_the_crop_says(season: Path, run: Run) -> None:
    ran = run(
        *("sow", "Cosmos", "--variety", "Paper Lantern", "--seeds", "40", "--cells", "40"),
        *("--place", "bench 1", "--wanted", "24", "--container", "40-cell tray", "--json"),
    )
    assert ran.code == 0, ran.err
    value = ran.value
    batch = opened(season).season.batches[value["batch"]]
    assert (batch.crop, batch.variety, batch.wanted) == ("cosmos", "Paper Lantern", 24)
    assert batch.sowing is not None
    assert (batch.sowing.seeds, batch.sowing.cells, batch.sowing.day) == (40, 40, DAY_0)
    assert (batch.sowing.raising, batch.sowing.covering) == ("cells", "vermiculite")
    assert (batch.main.place, batch.main.container) == ("bench-1", "40-cell tray")
    assert value["batch"] == "b34"
    assert set(value) == {
        *("batch", "crop", "label", "look_from", "half_by", "late_from", "sow_from"),
        *("seeds_reckoned", "remarks", "cautions", "written"),
    }


def test_the_label_is_worded_as_in_the_round(season: Path, run: Run) -> None:
    label = run("sow", "cosmos", "--variety", "A 'B'", "--seeds", "40", "--json").value["label"]
    desk = opened(season)
    batch = desk.season.batches["b34"]
    view = BatchView(desk.season, batch, batch.main, desk.season.crop("cosmos"), DAY_0)
    assert label_words(view, 40) == f"Label: front {label['front']}; back {label['back']}"


def test_the_day_to_look_is_near_the_published_one(season: Path, run: Run) -> None:
    """Tomato at a steady 20 C: 8 days, Harrington & Minges 1954 (read), to a quarter."""
    words = ("--place", "propagator", "--seeds", "10", "--have-read", "--json")
    value = run("sow", "tomato", *words).value
    half = (date.fromisoformat(value["half_by"]) - DAY_0).days
    assert 6 <= half <= 10
    assert DAY_0 < date.fromisoformat(value["look_from"]) < date.fromisoformat(value["late_from"])


def test_a_past_day_counts_from_that_day_and_a_coming_one_is_refused(
    season: Path, run: Run
) -> None:
    first = run("sow", "tomato", "--place", "bench-1", "--on", "-3", "--json").value
    assert first["written"][0]["day"] == (DAY_0 - timedelta(days=3)).isoformat()
    ran = run("sow", "tomato", "--on", "+3")
    assert (ran.code, "still to come" in ran.err) == (1, True)


def test_a_plan_is_no_sowing_and_asks_for_it_on_its_day(season: Path, run: Run) -> None:
    value = run("sow", "foxglove", "--plan", "--wanted", "40", "--on", "+10", "--json").value
    batch = opened(season).season.batches[value["batch"]]
    assert [record.kind for record in batch.records] == [Kind.PLANNED]
    assert value["sow_from"] == (DAY_0 + timedelta(days=10)).isoformat()
    assert value["written"][0]["figures"]["sow_on"] == value["sow_from"]
    assert value["look_from"] is None


def test_a_bulb_is_planted_and_counted(season: Path, run: Run) -> None:
    words = ("--wanted", "30", "--place", "Bed 3", "depth_mm=150", "--json")
    value = run("sow", "tulip", *words).value
    batch = opened(season).season.batches[value["batch"]]
    assert [record.kind for record in batch.records] == [Kind.PLANTED_BULBS]
    assert (batch.main.alive, batch.tally.planted) == (30, 30)


def test_undoing_a_sowing_leaves_the_round_as_it_was(season: Path, run: Run) -> None:
    before = rounds_of(season)
    run("sow", "cosmos", "--seeds", "40", "--place", "bench-1")
    assert rounds_of(season) != before
    assert run("undo").code == 0
    assert rounds_of(season) == before


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("cosmoss",), "cosmos"),
        (("cosmos", "--place", "bench"), "Near it: Bench 1, Bench 2"),
        (("cosmos", "--place", "Frame Z"), "Near it: Frame A"),
        (("cosmos", "--seeds", "many"), "seeds: 'many' is not a whole number"),
        (("cosmos", "--seeds", "-4"), "seeds"),
        (("cosmos", "--seeds", "12.5"), "whole number"),
        (("cosmos", "depth=4"), "depth_mm"),
        (("cosmos", "crop=leek"), "named already"),
        (("cosmos", "covering=glass"), "vermiculite"),
        (("cosmos", "seeds=4", "--seeds", "5"), "given twice"),
        (("cosmos", "--on", "27"), "could be a day of the month"),
        (("",), "No crop is called"),
    ],
)
def test_what_cannot_be_is_refused_and_nothing_is_written(
    season: Path, run: Run, words: tuple[str, ...], said: str
) -> None:
    before = files_of(season)
    ran = run("sow", *words)
    assert ran.code == 1
    assert said in ran.err
    assert files_of(season) == before


def test_what_can_kill_is_read_first_and_the_reading_is_kept(season: Path, run: Run) -> None:
    before = files_of(season)
    ran = run("sow", "monkshood", "--seeds", "20")
    assert ran.code == 1
    assert "--have-read" in ran.err
    assert files_of(season) == before
    assert run("sow", "monkshood", "--seeds", "20", "--have-read").code == 0
    assert run("sow", "monkshood", "--seeds", "20").code == 0
    assert opened(season).season.cautions_read
    run("undo")
    run("undo")
    assert opened(season).season.cautions_read == {}
    assert run("sow", "monkshood", "--seeds", "20").code == 1


@pytest.mark.parametrize(
    ("crop", "day", "outside"),
    [  # runner beans and parsnips are sown in spring (common practice, no source)
        ("runner bean", "2025-11-29", True),
        ("parsnip", "2025-11-20", True),
        ("runner bean", "2026-05-25", False),
    ],
)
def test_a_day_outside_its_sowing_windows_is_told(
    season: Path, run: Run, crop: str, day: str, outside: bool
) -> None:
    ran = run("sow", crop, "--seeds", "20", "--on", day, "--have-read")
    assert ran.code == 0, ran.err
    assert ("Outside its sowing window" in ran.out) is outside
    assert ("benchround undo --last" in ran.out) is outside


def test_a_million_seeds_are_told_with_their_weight(season: Path, run: Run) -> None:
    """3150 seeds of sweet alyssum a gram: Seed Crop Information (read)."""
    said = run("sow", "sweet alyssum", "--seeds", "1000000", "--place", "bench 1").out
    assert "1,000,000 seeds, 317 g: more than are usually sown at once" in said
    assert "usually sown" not in run("sow", "sweet alyssum", "--seeds", "400").out
