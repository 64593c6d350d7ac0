"""Seasons and records for the tests of the store, with a clock and chance that always agree."""

from __future__ import annotations

import random
from collections.abc import Mapping
from datetime import date, datetime, time
from pathlib import Path

from benchround.core.record import NO_FIGURES, Figure, Kind, Record
from benchround.store.disk import SYSTEM_DISK, Disk
from benchround.store.folder import SeasonFolder
from benchround.store.ids import IdMaker

DAY = date(2027, 4, 3)
NOW = datetime(2027, 4, 3, 7, 30)
START_MS = 1_806_736_200_000

HOSTILE = (
    "tray [A]",
    "[/]",
    "[bold red]x[/bold red]",
    "\\[",
    "{0} %s $HOME `x`",
    '"quoted", \\ and \'',
    "</script>",
    "🌱🐌 seedlings 👩🏽‍🌾",
    "\u202eright to left\u202c עגבנייה طماطم",
    "first line\nsecond\tline\n",
    "e\u0301 is not \u00e9",
    "\u2028 and \u2029 and \u00a0",
    "<<<<<<< HEAD\n=======\n>>>>>>> other",
    '"1": {"id": "x"},',
    " " * 3,
    "\ufffd\ufeff",
)


class Clock:
    """Milliseconds that move on by a set step at every look."""

    def __init__(self, start_ms: int = START_MS, step_ms: int = 1) -> None:
        self.now_ms = start_ms
        self.step_ms = step_ms

    def __call__(self) -> int:
        self.now_ms += self.step_ms
        return self.now_ms


class Scribe:
    """Makes records in the name of one computer."""

    def __init__(self, machine: str = "laptop", start_ms: int = START_MS) -> None:
        self.machine = machine
        self.ids = IdMaker(clock_ms=Clock(start_ms), chance=random.Random(machine).randbytes)

    def record(
        self,
        kind: Kind = Kind.COUNTED,
        about: str = "tomato-1",
        figures: Mapping[str, Figure] = NO_FIGURES,
        note: str = "",
        at: time | None = None,
    ) -> Record:
        return Record(self.ids.next(), DAY, kind, about, figures, note, at, self.machine)

    def records(self, count: int) -> tuple[Record, ...]:
        return tuple(self.record(figures={"count": n}, note=f"look {n}") for n in range(count))


def now() -> datetime:
    return NOW


def new_season(path: Path, machine: str = "laptop", disk: Disk = SYSTEM_DISK) -> SeasonFolder:
    return SeasonFolder.create(path, "Test year", machine, DAY, clock=now, disk=disk)


def reopen(
    path: Path, machine: str = "laptop", read_only: bool = False, disk: Disk = SYSTEM_DISK
) -> SeasonFolder:
    return SeasonFolder.open(path, machine, read_only, clock=now, disk=disk)


def filled_season(path: Path, count: int, machine: str = "laptop") -> tuple[Record, ...]:
    """A closed season with that many records, one action each."""
    scribe = Scribe(machine)
    records = scribe.records(count)
    with new_season(path, machine) as season:
        for record in records:
            season.append((record,))
    return records


def page(path: Path, number: int = 1, machine: str = "laptop") -> Path:
    return path / "records" / f"{machine}-2027-04-{number:03d}.json"


def journal(path: Path, number: int = 1, machine: str = "laptop") -> Path:
    return path / "records" / f"{machine}-2027-04-{number:03d}.jsonl"
