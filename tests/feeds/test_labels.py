"""What stands on labels, and which are to be printed."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from benchround.core.errors import UnknownNameError
from benchround.core.record import Draft, Figure, Kind, Record
from benchround.core.season import Season
from benchround.core.seed.waiting import forecast
from benchround.crops.library import load_library
from benchround.feeds.labels import (
    FAMILY,
    Label,
    Standing,
    due,
    label_text,
    labels_of,
    printed_drafts,
)
from tests.feeds.seasons import HOSTILE, empty_season, hostile_records, sample_season
from tests.folding import fold_season
from tests.sample.story import DAY_0, records

SOWN = date(2026, 4, 12)


def told(*more: Record) -> tuple[Season, tuple[Record, ...]]:
    figures: dict[str, Figure] = {"crop": "cosmos", "variety": "Paper Lantern", "seeds": 40}
    story = (Record("0A01", SOWN, Kind.SOWN, "b01", {**figures, "place": "bench"}), *more)
    return fold_season(story, load_library()), story


def as_records(drafts: tuple[Draft, ...], day: date, start: int) -> tuple[Record, ...]:
    return tuple(
        Record(f"0P{start + at:04d}", day, draft.kind, draft.about, draft.figures)
        for at, draft in enumerate(drafts)
    )


def test_front_has_crop_and_variety_and_back_the_rest() -> None:
    """As the trade writes them: front crop and variety; back day, batch, number, day to look."""
    season, story = told()
    (label,) = labels_of(season, story, SOWN)
    assert label.front == ("Cosmos", "Paper Lantern")
    assert label.back == ("sown 12 Apr 2026", "b01, 40 seeds")
    waiting = forecast(
        season, season.batches["b01"], season.batches["b01"].main, season.crop("cosmos"), SOWN
    )
    assert waiting is not None
    look = waiting.look_from
    assert look is not None
    assert label.look == f"look from {look.day} {look:%b} {look.year}"
    assert label.standing is Standing.NEW


@pytest.mark.parametrize(
    ("batch", "back"),
    [
        ("b23", ("sown 5 Apr 2026", "b23, 4 m row")),
        ("b24", ("in the cold from 15 Apr 2026", "b24, 80 seeds")),
        ("b30", ("planted 13 Nov 2025", "b30, 100 bulbs")),
        ("b32", ("found 24 May 2026", "b32, 37")),
        ("b21", ("sown 11 May 2026", "b21, 24 + 5 seeds")),
        ("b09", ("planned 15 May 2026", "b09")),
    ],
)
def test_what_was_not_sown_by_number_says_what_it_is(batch: str, back: tuple[str, ...]) -> None:
    (label,) = labels_of(sample_season(), records(), DAY_0, [batch])
    assert label.back == back


def test_all_that_stands_has_a_label_plans_and_ended_batches_have_none() -> None:
    names = {label.batch for label in labels_of(sample_season(), records(), DAY_0)}
    assert "b01" in names
    assert "b24" in names
    assert not names & {"b09", "b26", "b31"}


def test_two_trays_of_one_batch_have_two_labels() -> None:
    labels = labels_of(sample_season(), records(), DAY_0, ["b16"])
    assert labels[0].copies == 2
    assert list(label_text(labels)).count("Leek") == 2


def test_a_printed_label_is_not_printed_again_until_something_on_it_changes() -> None:
    season, story = told()
    first = labels_of(season, story, SOWN)
    drafts = printed_drafts(first)
    assert drafts == (
        Draft(
            Kind.DONE,
            "b01",
            {"family": FAMILY, "text": "Cosmos\nPaper Lantern\nsown 12 Apr 2026\nb01, 40 seeds"},
        ),
    )
    printed = as_records(drafts, SOWN, 1)
    season, story = told(*printed)
    later = SOWN + timedelta(days=3)
    (label,) = labels_of(season, story, later)
    assert label.standing is Standing.PRINTED
    assert due([label]) == ()

    resown = Record("0Q01", later, Kind.RESOWN, "b01", {"seeds": 10})
    season, story = told(*printed, resown)
    (label,) = labels_of(season, story, later)
    assert label.standing is Standing.CHANGED
    assert label.back[1] == "b01, 40 + 10 seeds"

    again = as_records(printed_drafts([label]), later, 7)
    season, story = told(*printed, resown, *again)
    assert due(labels_of(season, story, later)) == ()


def test_a_forecast_that_moves_makes_no_new_label() -> None:
    season, story = told()
    printed = as_records(printed_drafts(labels_of(season, story, SOWN)), SOWN, 1)
    cold = tuple(
        Record(f"0C{n:03d}", SOWN + timedelta(days=n), Kind.READING, "", {"min_c": 1, "max_c": 6})
        for n in range(6)
    )
    before = labels_of(*told(*printed), SOWN)[0]
    after = labels_of(*told(*printed, *cold), SOWN + timedelta(days=6))[0]
    assert before.look != after.look
    assert after.standing is Standing.PRINTED


def test_a_lost_label_is_printed_again_once() -> None:
    season, story = told()
    printed = as_records(printed_drafts(labels_of(season, story, SOWN)), SOWN, 1)
    lost = Record("0R01", SOWN + timedelta(days=5), Kind.LABEL_LOST, "b01")
    (label,) = labels_of(*told(*printed, lost), SOWN)
    assert label.standing is Standing.LOST
    again = as_records(printed_drafts([label]), SOWN + timedelta(days=6), 5)
    assert due(labels_of(*told(*printed, lost, *again), SOWN)) == ()


def test_withdrawing_the_record_of_a_printing_makes_the_label_new_again() -> None:
    season, story = told()
    printed = as_records(printed_drafts(labels_of(season, story, SOWN)), SOWN, 1)
    gone = Record("0Z01", SOWN, Kind.WITHDRAWN, "", {"record": printed[0].id})
    assert labels_of(*told(*printed, gone), SOWN)[0].standing is Standing.NEW


def test_the_round_is_the_same_whether_labels_were_printed_or_not() -> None:
    from benchround.rounds.build import build_round

    season = sample_season()
    printed = as_records(printed_drafts(labels_of(season, records(), DAY_0)), DAY_0, 1)
    after = fold_season((*records(), *printed), load_library())
    assert build_round(after, DAY_0) == build_round(season, DAY_0)


def test_a_name_that_is_no_batch_is_refused() -> None:
    with pytest.raises(UnknownNameError, match="b99"):
        labels_of(sample_season(), records(), DAY_0, ["b01", "b99"])


def test_an_empty_season_has_no_labels() -> None:
    assert labels_of(empty_season(), (), DAY_0) == ()


def test_hostile_names_stand_in_one_line_each_and_none_is_empty() -> None:
    season = fold_season(hostile_records(), load_library())
    labels = labels_of(season, hostile_records(), DAY_0)
    assert len(labels) == len(HOSTILE)
    for label in labels:
        for line in label.lines:
            assert line
            assert len(line.splitlines()) == 1
            assert line.isprintable() or "\ue000" in line


LONG = Label("b01", ("Cosmos", "a very long variety indeed"), ("sown",), "", 1, Standing.NEW)


@pytest.mark.parametrize("width", [4, 7, 12, 26, 40])
def test_lines_for_a_narrow_label_printer_are_broken_not_cut(width: int) -> None:
    lines = list(label_text([LONG], width))
    assert max(len(line) for line in lines) <= width
    letters = "".join("".join(lines).split())
    assert letters == "".join("".join(LONG.lines).split())
