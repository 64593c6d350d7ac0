"""The sample season, folded once."""

from __future__ import annotations

import pytest

from benchround.core.season import Season
from benchround.crops.library import load_library
from tests.folding import fold_season
from tests.sample.story import records


@pytest.fixture(scope="session")
def sample() -> Season:
    return fold_season(records(), load_library())
