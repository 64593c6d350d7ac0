"""Opens the screens over a season folder: for signals from outside, and for timing."""

from __future__ import annotations

import sys
from pathlib import Path

from benchround.clock import SampleClock
from benchround.desk import Desk
from benchround.screens.app import run
from benchround.screens.sitting import Sitting

if __name__ == "__main__":
    clock = SampleClock()
    desk = Desk.open(Path(sys.argv[1]), today=clock, machine="shed")
    code = run(desk, Sitting(sample=True, clock=clock))
    desk.close()
    sys.exit(code)
