"""Tables of published figures as test cases, each with its source and how it was seen."""

from collections.abc import Callable, Iterable
from csv import DictReader
from dataclasses import dataclass
from datetime import time
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from _pytest.mark.structures import ParameterSet

WEATHER_DATA = Path(__file__).parents[1] / "data" / "weather"

FAO56 = "Allen, Pereira, Raes & Smith 1998, FAO Irrigation and Drainage Paper 56"
MCMAHON = "McMahon et al. 2013, Hydrol. Earth Syst. Sci. 17:1331, Supplement S19"


class Seen(StrEnum):
    """How a figure was come by."""

    READ = "read"
    SECOND_HAND = "read second-hand"
    FROM_MEMORY = "from memory"
    DERIVED = "derived from the formula, not published"
    PRACTICE = "common practice, no source"


@dataclass(frozen=True, slots=True)
class Figure:
    """One figure we must reproduce, and how near."""

    check: str
    source: str
    seen: Seen
    expected: float
    within: float
    ours: Callable[[], float]

    def assert_reproduced(self) -> None:
        assert self.ours() == pytest.approx(self.expected, abs=self.within, rel=0.0)


def figure_cases(figures: Iterable[Figure]) -> "list[ParameterSet]":
    """Turn figures into test cases whose names carry check, source and standing."""
    return [
        pytest.param(figure, id=f"{figure.check}: {figure.source} ({figure.seen})")
        for figure in figures
    ]


def rows(name: str) -> list[dict[str, str]]:
    """Read one of the open data files."""
    with (WEATHER_DATA / name).open(encoding="utf-8", newline="") as file:
        return list(DictReader(file))


def minutes(moment: time) -> float:
    """Return minutes since midnight."""
    return moment.hour * 60.0 + moment.minute + moment.second / 60.0


def clock_minutes(text: str) -> float:
    """Return minutes since midnight of "7:43" or "07:08:15"."""
    return minutes(time.fromisoformat(text.zfill(5)))
