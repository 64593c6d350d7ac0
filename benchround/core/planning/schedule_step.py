"""The steps a batch has before it, and the stages in which each still lies ahead."""

from __future__ import annotations

from datetime import date
from enum import StrEnum

from benchround.core.dates import say_day
from benchround.core.frozen import dataclass
from benchround.core.lifecycle import BEFORE, OUTWARD, SEEDLING, WAITING, YOUNG, Stage


class Step(StrEnum):
    """A step still to come."""

    SOW = "sow"
    LOOK = "look from"
    UP = "first up about"
    PRICK_OUT = "prick out"
    THIN = "thin"
    POT_ON = "pot on"
    HARDEN = "start hardening"
    PLANT_OUT = "plant out"
    FLOWER = "in flower"
    CROP = "first picking"


@dataclass(frozen=True, slots=True)
class Expected:
    """A coming step: its day, the last day it may reasonably be, and why that day."""

    step: Step
    day: date
    until: date | None
    because: str

    def __str__(self) -> str:
        to = f" to {say_day(self.until)}" if self.until and self.until != self.day else ""
        return f"{self.step} {say_day(self.day)}{to}: {self.because}"


_RAISED = BEFORE | WAITING | SEEDLING | YOUNG | OUTWARD
_OUT_SOON = frozenset({Stage.ESTABLISHING, Stage.OVERWINTERING})

STAGES_AHEAD: dict[Step, frozenset[Stage]] = {
    Step.SOW: BEFORE,
    Step.LOOK: BEFORE | WAITING,
    Step.UP: BEFORE | WAITING,
    Step.PRICK_OUT: BEFORE | WAITING | SEEDLING,
    Step.THIN: BEFORE | WAITING | SEEDLING,
    Step.POT_ON: BEFORE | WAITING | SEEDLING | (YOUNG - {Stage.POTTED_ON}),
    Step.HARDEN: BEFORE | WAITING | SEEDLING | YOUNG,
    Step.PLANT_OUT: _RAISED,
    Step.FLOWER: _RAISED | _OUT_SOON | {Stage.DORMANT},
    Step.CROP: _RAISED | _OUT_SOON,
}
"""The stages in which a step still lies ahead."""
