"""Write the committed sample season from its story: `python -m tests.sample.write`."""

from __future__ import annotations

import shutil
from datetime import datetime, time
from pathlib import Path

from benchround.store import SeasonFolder
from tests.sample.story import DAY_0, MACHINE, records

SAMPLE = Path(__file__).resolve().parents[2] / "sample_season"


def write_sample(folder: Path) -> None:
    """Write the sample season into a folder that is not there yet."""
    written = datetime.combine(DAY_0, time(6, 0))
    season = SeasonFolder.create(folder, "The sample season", MACHINE, DAY_0, clock=lambda: written)
    season.append(records())
    season.close()


if __name__ == "__main__":
    shutil.rmtree(SAMPLE, ignore_errors=True)
    write_sample(SAMPLE)
