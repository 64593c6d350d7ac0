"""Opens the screens over a season folder on a day: `python -m tests.bench.screens_on_a_day F D`."""

from __future__ import annotations

import sys
from datetime import date
from pathlib import Path

from benchround.desk import Desk
from benchround.screens.app import run

if __name__ == "__main__":
    day = date.fromisoformat(sys.argv[2])
    desk = Desk.open(Path(sys.argv[1]), today=lambda: day, machine="shed")
    code = run(desk)
    desk.close()
    sys.exit(code)
