"""The stages of a life, gathered into what can be told apart on a strip."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum

from benchround.core.batch.batch import Part
from benchround.core.lifecycle import BEFORE, ENDED, OUTWARD, SEEDLING, WAITING, YOUNG, Stage
from benchround.core.record import Kind

OUT_KINDS = (Kind.PLANTED_OUT, Kind.PLANTED_BULBS)


class Phase(StrEnum):
    """The stages of a life, gathered into what can be told apart on a strip."""

    PLANNED = "planned"
    TREATED = "seed treated"
    SOWN = "sown"
    UP = "up"
    GROWING = "growing on"
    HARDENING = "hardening"
    OUT = "planted out"
    WINTER = "wintering"
    FLOWER = "in flower"
    PICKING = "picking"
    OVER = "going over"
    RESTING = "resting"
    ENDED = "ended"


LETTERS: Mapping[Phase, str] = {
    Phase.TREATED: "T",
    Phase.SOWN: "S",
    Phase.UP: "U",
    Phase.GROWING: "G",
    Phase.HARDENING: "H",
    Phase.OUT: "O",
    Phase.WINTER: "W",
    Phase.FLOWER: "F",
    Phase.PICKING: "P",
    Phase.OVER: "V",
    Phase.RESTING: "R",
    Phase.ENDED: "X",
}
"""The letter of each phase; a plan not yet begun has no strip and needs none."""

_PHASE_OF: Mapping[Stage, Phase] = {
    **dict.fromkeys(BEFORE, Phase.TREATED),
    Stage.PLANNED: Phase.PLANNED,
    **dict.fromkeys(WAITING, Phase.SOWN),
    **dict.fromkeys(SEEDLING, Phase.UP),
    **dict.fromkeys(YOUNG, Phase.GROWING),
    **dict.fromkeys(OUTWARD, Phase.HARDENING),
    Stage.ESTABLISHING: Phase.OUT,
    Stage.OVERWINTERING: Phase.WINTER,
    Stage.FLOWERING: Phase.FLOWER,
    Stage.CROPPING: Phase.PICKING,
    Stage.GOING_OVER: Phase.OVER,
    Stage.LEFT_FOR_SEED: Phase.OVER,
    Stage.SEED_SAVED: Phase.OVER,
    Stage.DORMANT: Phase.RESTING,
    **dict.fromkeys(ENDED, Phase.ENDED),
}


def phase_of(part: Part) -> Phase:
    """The phase a part is in; what grows on after planting out counts as planted out."""
    if part.stage is Stage.GROWING_ON and part.last_day(*OUT_KINDS) is not None:
        return Phase.OUT
    return _PHASE_OF[part.stage]
