"""Strips from the sample season, held against the story it was made from and the crop's days."""

from __future__ import annotations

from datetime import date, timedelta
from itertools import pairwise

import pytest

from benchround.core.record import Kind
from benchround.core.season import Season
from benchround.drawing.phases import LETTERS, Phase, phase_of
from benchround.drawing.stretches import Stretch, expected, part_history, recorded
from tests.sample.story import BATCHES, DAY_0


def past(season: Season, name: str, part: str = "") -> tuple[Stretch, ...]:
    return recorded(part_history(season.batches[name])[part], DAY_0)


def ahead(season: Season, name: str) -> tuple[Stretch, ...]:
    batch = season.batches[name]
    return expected(season, batch, season.crop(batch.crop), DAY_0)


def days_from(*told: tuple[int, Phase]) -> list[tuple[date, Phase]]:
    return [(DAY_0 + timedelta(days=offset), phase) for offset, phase in told]


@pytest.mark.parametrize(
    ("name", "part", "told"),
    [
        # offsets as told in tests/sample/story.py
        (
            "b01",
            "",
            [(-48, Phase.SOWN), (-43, Phase.UP), (-22, Phase.GROWING), (-11, Phase.HARDENING)],
        ),
        ("b31", "", [(-60, Phase.SOWN), (-50, Phase.UP), (-40, Phase.ENDED)]),
        (
            "b30",
            "",
            [(-195, Phase.OUT), (-34, Phase.FLOWER), (-17, Phase.OVER), (-15, Phase.RESTING)],
        ),
        ("b03", "spares", [(-8, Phase.HARDENING)]),
        ("b24", "", [(-42, Phase.TREATED)]),
        ("b09", "", []),
    ],
)
def test_recorded_stretches_begin_on_the_days_of_the_story(
    sample: Season, name: str, part: str, told: list[tuple[int, Phase]]
) -> None:
    found = past(sample, name, part)
    assert [(one.opens, one.phase) for one in found] == days_from(*told)
    assert not any(one.expected for one in found)


def test_stretches_follow_each_other_without_gap_up_to_today(sample: Season) -> None:
    for name in BATCHES:
        found = (*past(sample, name), *ahead(sample, name))
        for before, after in pairwise(found):
            assert after.opens == before.closes + timedelta(days=1), name
        assert all(one.opens <= one.closes for one in found), name
        live = past(sample, name)
        if live and live[-1].phase is not Phase.ENDED:
            assert live[-1].closes == DAY_0, name


def test_nothing_expected_lies_in_the_past(sample: Season) -> None:
    for name in BATCHES:
        assert all(one.opens > DAY_0 and one.expected for one in ahead(sample, name)), name


def test_flowering_lasts_as_long_as_the_crop_says(sample: Season) -> None:
    found = [one for one in ahead(sample, "b01") if one.phase is Phase.FLOWER]
    flowering = sample.crop("cosmos").flowering
    assert flowering is not None
    assert len(found) == 1
    assert (found[0].closes - found[0].opens).days + 1 == flowering.lasts_days


def test_resting_bulbs_flower_at_their_next_time_not_the_last(sample: Season) -> None:
    flowers = [one for one in ahead(sample, "b30") if one.phase is Phase.FLOWER]
    assert flowers and flowers[0].opens.year == DAY_0.year + 1


def test_what_has_ended_expects_nothing(sample: Season) -> None:
    assert ahead(sample, "b31") == ()


def test_growing_on_in_the_bed_counts_as_planted_out(sample: Season) -> None:
    assert phase_of(sample.batches["b22"].main) is Phase.OUT  # planted out -62, then growing on
    assert phase_of(sample.batches["b28"].main) is Phase.GROWING


def test_every_phase_that_is_drawn_has_a_letter_of_its_own() -> None:
    assert set(LETTERS) == set(Phase) - {Phase.PLANNED}
    assert len(set(LETTERS.values())) == len(LETTERS)


def test_two_records_of_one_day_leave_the_later_stage(sample: Season) -> None:
    kinds = [kind for offset, kind, _ in BATCHES["b30"] if offset == -15]
    assert kinds == [Kind.DEADHEADED, Kind.DORMANT]
    assert past(sample, "b30")[-1].phase is Phase.RESTING
