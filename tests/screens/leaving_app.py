"""Opens the screens over the season folder named, for the tests that end it by a signal."""

from __future__ import annotations

import sys
from pathlib import Path

from benchround.clock import SampleClock
from benchround.desk import Desk
from benchround.screens.app import run
from tests.screens.stage import MACHINE

if __name__ == "__main__":
    clock = SampleClock()
    desk = Desk.open(Path(sys.argv[1]), today=clock, machine=MACHINE)
    code = run(desk, True, clock)
    desk.close()
    sys.exit(code)
