"""The life of a batch as one table.

Theory. A batch, or a part of one, stands in exactly one stage. Things that happen to it are
records, each of one kind. The table says, for every kind, from which stages it may be taken and to
which stage it leads; a pair that is not in the table is illegal and raises `IllegalRecordError`,
and nothing changes. Three rules keep the table small:

* `SAME` means the stage stays: care (watering, turning, feeding) and looks never move a batch.
* A batch starts in no stage (`None`): first comes a plan, a sowing, a chilling,
  planted bulbs, or a tray found without a name.
* Losing or composting *some* plants keeps the stage; losing or composting *all* of them ends the
  batch. That is decided by counts: the table gives the end, `core.batch` whether it is reached.

A count of 0 while nothing is up is a look that saw nothing (`nothing_up`) and moves nothing.

Being held by frost, gale or a full bench is no stage: it is worked out each morning from the
weather and the room, so that it can never go stale.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum

from benchround.core.errors import IllegalRecordError
from benchround.core.record import Kind


class Stage(StrEnum):
    """Where a batch, or a part of it, is in its life."""

    PLANNED = "planned"
    PRETREATED = "pretreated"
    STRATIFYING = "stratifying"
    CHITTED = "chitted"
    SOWN = "sown"
    STALLED = "stalled"
    EMERGING = "emerging"
    SEED_LEAF = "seed leaves"
    TRUE_LEAF = "first true leaves"
    PRICKED_OUT = "pricked out"
    GROWING_ON = "growing on"
    POTTED_ON = "potted on"
    HARDENING = "hardening"
    READY = "ready"
    ESTABLISHING = "establishing"
    OVERWINTERING = "overwintering"
    FLOWERING = "in flower"
    CROPPING = "cropping"
    GOING_OVER = "going over"
    LEFT_FOR_SEED = "left for seed"
    SEED_SAVED = "seed saved"
    DORMANT = "dormant"
    LIFTED = "lifted"
    LOST = "lost"
    COMPOSTED = "composted"
    CANCELLED = "cancelled"


BEFORE = frozenset({Stage.PLANNED, Stage.PRETREATED, Stage.STRATIFYING, Stage.CHITTED})
WAITING = frozenset({Stage.SOWN, Stage.STALLED})
SEEDLING = frozenset({Stage.EMERGING, Stage.SEED_LEAF, Stage.TRUE_LEAF})
YOUNG = frozenset({Stage.PRICKED_OUT, Stage.GROWING_ON, Stage.POTTED_ON})
OUTWARD = frozenset({Stage.HARDENING, Stage.READY})
OUT = frozenset(
    {
        Stage.ESTABLISHING,
        Stage.OVERWINTERING,
        Stage.FLOWERING,
        Stage.CROPPING,
        Stage.GOING_OVER,
        Stage.LEFT_FOR_SEED,
        Stage.SEED_SAVED,
        Stage.DORMANT,
    }
)
ENDED = frozenset({Stage.LIFTED, Stage.LOST, Stage.COMPOSTED, Stage.CANCELLED})
GROWING = SEEDLING | YOUNG | OUTWARD | OUT
ALIVE = BEFORE | WAITING | GROWING
EVERY = ALIVE | ENDED

SEEDLINGS_SEEN = (Kind.FIRST_UP, Kind.COUNTED)
"""Kinds that say how many seedlings were seen."""

SAME = None
"""Marks a kind that leaves the stage as it is."""

START = None
"""The stage of a batch nothing has happened to yet."""

From = frozenset[Stage]
_Row = tuple[From, bool, Stage | None]


def _row(stages: From | Stage, to: Stage | None = SAME, *, first: bool = False) -> _Row:
    return (frozenset({stages}) if isinstance(stages, Stage) else stages, first, to)


CARE = (
    Kind.WATERED,
    Kind.FED,
    Kind.TURNED,
    Kind.WEEDED,
    Kind.SPACED,
    Kind.MOVED,
    Kind.WEIGHED,
    Kind.MOISTURE,
    Kind.SHADED,
    Kind.COVERED,
    Kind.PATROLLED,
    Kind.TRAP_SET,
    Kind.TRAP_SEEN,
    Kind.TRAP_LIFTED,
    Kind.LABEL_LOST,
    Kind.RELABELLED,
    Kind.SEEN,
)
"""Care and remarks: they may be told of anything alive and never move it."""

TABLE: dict[Kind, tuple[_Row, ...]] = {
    Kind.PLANNED: (_row(frozenset(), Stage.PLANNED, first=True),),
    Kind.CANCELLED: (_row(BEFORE, Stage.CANCELLED),),
    Kind.SOAKED: (_row(frozenset({Stage.PLANNED, Stage.PRETREATED}), Stage.PRETREATED),),
    Kind.CHILLED: (
        _row(frozenset({Stage.PLANNED, Stage.PRETREATED}), Stage.STRATIFYING, first=True),
        _row(Stage.SOWN),
    ),
    Kind.BROUGHT_OUT: (_row(Stage.STRATIFYING, Stage.PRETREATED), _row(Stage.SOWN)),
    Kind.CHITTED: (_row(frozenset({Stage.PLANNED, Stage.PRETREATED}), Stage.CHITTED, first=True),),
    Kind.FOUND: (_row(frozenset(), Stage.SEED_LEAF, first=True),),
    Kind.SOWN: (_row(BEFORE, Stage.SOWN, first=True),),
    Kind.PLANTED_BULBS: (_row(Stage.PLANNED, Stage.ESTABLISHING, first=True),),
    Kind.RESOWN: (_row(WAITING, Stage.SOWN), _row(SEEDLING)),
    Kind.LOOKED: (_row(ALIVE),),
    Kind.STALLED: (_row(Stage.SOWN, Stage.STALLED), _row(Stage.STALLED)),
    Kind.FIRST_UP: (_row(WAITING | {Stage.STRATIFYING}, Stage.EMERGING), _row(Stage.EMERGING)),
    Kind.COUNTED: (_row(WAITING, Stage.EMERGING), _row(GROWING)),
    Kind.UNCOVERED: (_row(WAITING | SEEDLING),),
    Kind.SEED_LEAVES: (_row(WAITING | {Stage.EMERGING, Stage.SEED_LEAF}, Stage.SEED_LEAF),),
    Kind.TRUE_LEAVES: (_row(WAITING | SEEDLING, Stage.TRUE_LEAF),),
    Kind.THINNED: (
        _row(frozenset({Stage.EMERGING, Stage.SEED_LEAF}), Stage.SEED_LEAF),
        _row(frozenset({Stage.TRUE_LEAF, Stage.GROWING_ON}), Stage.GROWING_ON),
    ),
    Kind.PRICKED_OUT: (_row(SEEDLING | {Stage.GROWING_ON}, Stage.PRICKED_OUT),),
    Kind.TAKEN: (_row(Stage.PRICKED_OUT, Stage.GROWING_ON), _row(frozenset({Stage.GROWING_ON}))),
    Kind.GROWING_ON: (
        _row(SEEDLING | YOUNG | {Stage.ESTABLISHING, Stage.OVERWINTERING}, Stage.GROWING_ON),
    ),
    Kind.POTTED_ON: (
        _row(
            SEEDLING | YOUNG | OUTWARD | {Stage.OVERWINTERING},
            Stage.POTTED_ON,
        ),
    ),
    Kind.PINCHED: (_row(SEEDLING | YOUNG | OUTWARD | OUT),),
    Kind.MEASURED: (_row(GROWING),),
    Kind.HARDENING_BEGUN: (_row(SEEDLING | YOUNG | {Stage.OVERWINTERING}, Stage.HARDENING),),
    Kind.HARDENING_STEP: (_row(Stage.HARDENING),),
    Kind.HARDENED: (_row(Stage.HARDENING, Stage.READY),),
    Kind.READY: (_row(SEEDLING | YOUNG | OUTWARD | {Stage.OVERWINTERING}, Stage.READY),),
    Kind.PLANTED_OUT: (
        _row(SEEDLING | YOUNG | OUTWARD | {Stage.OVERWINTERING}, Stage.ESTABLISHING),
    ),
    Kind.GAPPED_UP: (_row(OUT | YOUNG),),
    Kind.SUPPORTED: (_row(GROWING),),
    Kind.OVERWINTERING: (
        _row(SEEDLING | YOUNG | OUTWARD | {Stage.ESTABLISHING}, Stage.OVERWINTERING),
    ),
    Kind.BUDS: (_row(GROWING),),
    Kind.FIRST_FLOWER: (
        _row(
            YOUNG | OUTWARD | SEEDLING | {Stage.ESTABLISHING, Stage.OVERWINTERING, Stage.DORMANT},
            Stage.FLOWERING,
        ),
        _row(Stage.FLOWERING),
    ),
    Kind.CROPPED: (_row(GROWING - {Stage.CROPPING}, Stage.CROPPING), _row(Stage.CROPPING)),
    Kind.PICKED: (_row(OUT | YOUNG),),
    Kind.DEADHEADED: (_row(OUT | YOUNG),),
    Kind.CUT_BACK: (
        _row(
            frozenset({Stage.FLOWERING, Stage.GOING_OVER, Stage.CROPPING, Stage.SEED_SAVED}),
            Stage.GROWING_ON,
        ),
    ),
    Kind.GOING_OVER: (_row(frozenset({Stage.FLOWERING, Stage.CROPPING}), Stage.GOING_OVER),),
    Kind.MARKED_FOR_SEED: (_row(OUT),),
    Kind.LEFT_FOR_SEED: (
        _row(frozenset({Stage.FLOWERING, Stage.GOING_OVER, Stage.CROPPING}), Stage.LEFT_FOR_SEED),
    ),
    Kind.SEED_RIPE: (_row(OUT),),
    Kind.SEED_SAVED: (
        _row(frozenset({Stage.LEFT_FOR_SEED, Stage.GOING_OVER, Stage.CROPPING}), Stage.SEED_SAVED),
        _row(frozenset({Stage.FLOWERING, Stage.SEED_SAVED})),
    ),
    Kind.PACKED: (_row(OUT | {Stage.COMPOSTED}),),
    Kind.DORMANT: (
        _row(
            frozenset({Stage.FLOWERING, Stage.GOING_OVER, Stage.SEED_SAVED})
            | {Stage.ESTABLISHING, Stage.GROWING_ON},
            Stage.DORMANT,
        ),
    ),
    Kind.LIFTED: (_row(Stage.DORMANT, Stage.LIFTED),),
    Kind.SPARES_SETTLED: (_row(ALIVE),),
    Kind.LOST: (_row(ALIVE, Stage.LOST),),
    Kind.COMPOSTED: (_row(ALIVE, Stage.COMPOSTED),),
    Kind.SAME_AS: (_row(ALIVE, Stage.CANCELLED),),
    Kind.WASHED: (_row(EVERY),),
    Kind.WASHED_OUT: (_row(WAITING | SEEDLING),),
    **dict.fromkeys(CARE, (_row(ALIVE),)),
    Kind.NOTED: (_row(EVERY),),
    Kind.DONE: (_row(EVERY),),
    Kind.PUT_OFF: (_row(EVERY),),
}
"""Kind of record -> rows of (stages it may be taken in, may it be the first, stage it leads to)."""


def _spread() -> dict[Stage | None, dict[Kind, Stage]]:
    ways: dict[Stage | None, dict[Kind, Stage]] = {stage: {} for stage in (START, *Stage)}
    for kind, rows in TABLE.items():
        for stages, first, to in rows:
            for stage in stages:
                ways[stage][kind] = stage if to is SAME else to
            if first and to is not SAME:
                ways[START][kind] = to
    return ways


WAYS: Mapping[Stage | None, Mapping[Kind, Stage]] = _spread()
"""The same table by stage: where each kind leads from there."""
NEXT: Mapping[tuple[Stage | None, Kind], Stage] = {
    (stage, kind): to for stage, ways in WAYS.items() for kind, to in ways.items()
}
"""And spread out: (stage, kind) -> next stage."""


def nothing_up(kind: Kind, count: int | None) -> bool:
    """Whether a record of seedlings says that there were none: a count of 0."""
    return count == 0 and kind in SEEDLINGS_SEEN


def next_stage(stage: Stage | None, kind: Kind, name: str = "this batch") -> Stage:
    """The stage a record leads to.

    Raises:
        IllegalRecordError: this kind cannot be recorded in this stage.
    """
    try:
        return NEXT[(stage, kind)]
    except KeyError:
        where = "not begun" if stage is None else f"at the stage '{stage}'"
        raise IllegalRecordError(
            f"'{kind}' cannot be recorded for {name}: it is {where}. {_what_fits(stage)}"
        ) from None


def _what_fits(stage: Stage | None) -> str:
    moves = [kind for kind in TABLE if NEXT.get((stage, kind), stage) is not stage]
    if not moves:
        return "It has ended; a note can still be written."
    return "What fits now: " + ", ".join(moves) + "."
