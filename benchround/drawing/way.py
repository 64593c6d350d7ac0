"""A batch's way through the stages: past, now and ahead."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from enum import StrEnum

from benchround.core.batch.batch import Batch, Part
from benchround.core.crop.crop import Crop
from benchround.core.frozen import dataclass
from benchround.core.lifecycle import Stage
from benchround.core.planning.schedule import Step
from benchround.core.season import Season
from benchround.drawing.stretches import coming_steps, part_history

AHEAD_WORDS = {
    Step.SOW: "sow",
    Step.UP: "up",
    Step.PRICK_OUT: "prick out",
    Step.THIN: "thin",
    Step.POT_ON: "pot on",
    Step.HARDEN: "harden off",
    Step.PLANT_OUT: "plant out",
    Step.FLOWER: "in flower",
    Step.CROP: "picking",
}
"""Coming steps as they stand in line; looking is no stage."""


class When(StrEnum):
    """Which side of today a stop lies on."""

    PAST = "past"
    NOW = "now"
    AHEAD = "ahead"


@dataclass(frozen=True, slots=True)
class Stop:
    """One stage on the way, and the day it began or is expected to begin."""

    name: str
    day: date
    when: When


@dataclass(frozen=True, slots=True)
class Way:
    """A part's way from its first record to the last step known.

    Attributes:
        title: batch, part and name.
        today: the day it is looked at.
        stops: the stages, in order; at most one is now.
    """

    title: str
    today: date
    stops: tuple[Stop, ...] = ()

    @property
    def now(self) -> int | None:
        """Number of the present stop; None where there is none."""
        return next((n for n, stop in enumerate(self.stops) if stop.when is When.NOW), None)


def way_of(season: Season, batch: Batch, part: Part, day: date) -> Way:
    """The way of a part of a batch: what was recorded, then what is expected of the main part."""
    crop = season.crop(batch.crop)
    history = part_history(batch).get(part.name, ())
    ahead = () if part.name else _ahead(season, batch, crop, day)
    title = " ".join(filter(None, (batch.id, part.name, crop.name)))
    return Way(title, day, (*_past(history), *ahead))


def _past(history: Sequence[tuple[date, Part]]) -> Iterator[Stop]:
    stages: list[tuple[Stage, date]] = []
    for since, part in history:
        if not stages or stages[-1][0] is not part.stage:
            stages.append((part.stage, since))
    for number, (stage, since) in enumerate(stages, start=1):
        yield Stop(str(stage), since, When.NOW if number == len(stages) else When.PAST)


def _ahead(season: Season, batch: Batch, crop: Crop, day: date) -> tuple[Stop, ...]:
    return tuple(
        Stop(AHEAD_WORDS[step.step], max(day, step.day), When.AHEAD)
        for step in coming_steps(season, batch, crop, day)
        if step.step in AHEAD_WORDS
    )
