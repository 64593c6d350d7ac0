"""What a record sheet asks for each kind of thing that can happen."""

from __future__ import annotations

from collections.abc import Mapping

from benchround.core.frozen import dataclass
from benchround.core.lifecycle import NEXT, Stage
from benchround.core.record import Cause, Kind

STALLED_BY = ("heat", "cold")
MOISTURES = ("still wet", "already dry")
RESTS = ("kept", "composted")
CAUSES = tuple(str(cause) for cause in Cause)
NUMBER, WHOLE, PLACE, WORDS = "number", "whole", "place", "words"


@dataclass(frozen=True, slots=True)
class Wanted:
    """A figure a kind of record can take.

    Attributes:
        name: the figure's name in the record.
        label: its words.
        sort: whole number, number, place or words.
        choices: what may be typed; empty: anything.
        most: the greatest number.
        unit: said after the field.
    """

    name: str
    label: str
    sort: str = WHOLE
    choices: tuple[str, ...] = ()
    most: float = 1_000_000
    unit: str = ""


WANTED: Mapping[str, Wanted] = {
    wanted.name: wanted
    for wanted in (
        Wanted("count", "how many"),
        Wanted("seeds", "seeds"),
        Wanted("cells", "cells"),
        Wanted("cause", "cause", WORDS, CAUSES),
        Wanted("said", "it is", WORDS, MOISTURES),
        Wanted("place", "place", PLACE),
        Wanted("rest", "the rest", WORDS, RESTS),
        Wanted("container", "container", WORDS),
        Wanted("pot_cm", "pot", NUMBER, most=100, unit="cm"),
        Wanted("stem_mm", "stem", NUMBER, most=500, unit="mm"),
        Wanted("pairs", "pairs of leaves", WHOLE, most=99),
        Wanted("height_cm", "height", NUMBER, most=1000, unit="cm"),
        Wanted("spacing_mm", "spacing", NUMBER, most=2000, unit="mm"),
        Wanted("grams", "weight", NUMBER, most=100_000, unit="g"),
        Wanted("days", "days of cold", WHOLE, most=400),
        Wanted("packet", "packet", WORDS),
    )
}

ASKED: Mapping[Kind, tuple[str, ...]] = {
    Kind.CHILLED: ("days", "place"),
    Kind.SOWN: ("seeds", "cells", "container", "place"),
    Kind.RESOWN: ("seeds", "place"),
    Kind.PLANTED_BULBS: ("count", "place"),
    Kind.FIRST_UP: ("count",),
    Kind.COUNTED: ("count",),
    Kind.STALLED: ("cause",),
    Kind.UNCOVERED: ("place",),
    Kind.SEED_LEAVES: ("count",),
    Kind.TRUE_LEAVES: ("count",),
    Kind.THINNED: ("count", "spacing_mm"),
    Kind.PRICKED_OUT: ("count", "cells", "container", "place"),
    Kind.TAKEN: ("count",),
    Kind.GROWING_ON: ("place",),
    Kind.POTTED_ON: ("count", "pot_cm", "place"),
    Kind.MEASURED: ("pairs", "height_cm", "stem_mm"),
    Kind.HARDENING_BEGUN: ("place",),
    Kind.HARDENED: ("place",),
    Kind.READY: ("place",),
    Kind.PLANTED_OUT: ("count", "place", "rest"),
    Kind.GAPPED_UP: ("count",),
    Kind.OVERWINTERING: ("place",),
    Kind.FIRST_FLOWER: ("count",),
    Kind.CROPPED: ("count",),
    Kind.PICKED: ("count",),
    Kind.MARKED_FOR_SEED: ("count",),
    Kind.LEFT_FOR_SEED: ("count", "rest"),
    Kind.SEED_SAVED: ("packet", "grams"),
    Kind.LIFTED: ("count",),
    Kind.MOVED: ("place",),
    Kind.WEIGHED: ("grams",),
    Kind.MOISTURE: ("said",),
    Kind.LOST: ("count", "cause"),
    Kind.COMPOSTED: ("count",),
    Kind.SPARES_SETTLED: ("count",),
    Kind.SEEN: ("place",),
}
"""Figures asked for by kind; a kind that is not here takes a note and a day only."""

NEEDS: Mapping[Kind, tuple[str, ...]] = {
    Kind.COUNTED: ("count",),
    Kind.MOVED: ("place",),
    Kind.WEIGHED: ("grams",),
    Kind.MOISTURE: ("said",),
    Kind.NOTED: ("note",),
}
"""Figures without which a record of that kind says nothing."""

NOT_BY_HAND = frozenset({Kind.PUT_OFF, Kind.DONE, Kind.SAME_AS, Kind.FOUND, Kind.PLANNED})
"""Kinds that other screens and keys write."""


def kinds_for(stage: Stage) -> tuple[Kind, ...]:
    """What can be recorded in a stage: what moves the batch on first, then the rest."""
    legal = [kind for (at, kind) in NEXT if at is stage and kind not in NOT_BY_HAND]
    moving = [kind for kind in legal if NEXT[(stage, kind)] is not stage]
    return (*moving, *(kind for kind in legal if kind not in moving))
