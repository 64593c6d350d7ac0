"""A family that is not asked at a stage would have asked for nothing there."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from benchround.core.lifecycle import Stage
from benchround.crops.library import load_library
from benchround.rounds.asked_at import ASKED_AT, BatchFamily
from benchround.rounds.build import BATCH_FAMILIES
from benchround.rounds.view import BatchView
from tests.folding import fold_season
from tests.sample.story import DAY_0, records

LATER = tuple(timedelta(days=days) for days in (0, 45, 150))
SEASON = fold_season(records(), load_library())


@pytest.mark.parametrize("family", ASKED_AT, ids=lambda family: family.__module__)
def test_no_part_of_the_sample_is_asked_anything_at_a_stage_left_out(family: BatchFamily) -> None:
    """Regression: every part of the sample, put into every stage the table leaves out.

    Some time later more has fallen due, such as looking whether flowering is over.
    """
    assert family in BATCH_FAMILIES
    for stage in set(Stage) - ASKED_AT[family]:
        for batch in SEASON.batches.values():
            for part in batch.parts:
                moved = replace(part, stage=stage)
                for later in LATER:
                    view = BatchView(SEASON, batch, moved, SEASON.crop(batch.crop), DAY_0 + later)
                    assert not list(family(view)), f"{batch.id} as {stage}, {later.days} days on"
