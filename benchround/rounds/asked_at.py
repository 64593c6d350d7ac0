"""At which stages a family can ask for anything, so that the others are not even asked.

A family that is not named here is asked at every stage.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from benchround.core.lifecycle import OUTWARD, SEEDLING, WAITING, YOUNG, Stage
from benchround.core.water.tray_holder import WATERED_STAGES
from benchround.rounds import (
    airing,
    bulbs,
    clearing,
    counting,
    deadheading,
    feeding,
    flower_watch,
    frost_cover,
    frosted,
    hardening,
    looking,
    overwintering,
    pinching,
    planting_out,
    potting_on,
    pricking_out,
    relabelling,
    resowing,
    soaking,
    sowing,
    sowing_in_turn,
    spares,
    supporting,
    thinning,
    turning,
    uncovering,
    washing,
    watering,
    weeding,
)
from benchround.rounds.proposal import Proposal
from benchround.rounds.view import BatchView

BatchFamily = Callable[[BatchView], Iterator[Proposal]]

ASKED_AT: Mapping[BatchFamily, frozenset[Stage]] = {
    soaking.propose: frozenset({Stage.PLANNED, Stage.STRATIFYING}),
    sowing.propose: frozenset({Stage.PLANNED, Stage.PRETREATED, Stage.CHITTED, Stage.STRATIFYING}),
    sowing_in_turn.propose: sowing_in_turn.STAGES,
    looking.propose: WAITING | {Stage.EMERGING},
    uncovering.propose: SEEDLING,
    resowing.propose: WAITING | SEEDLING,
    counting.propose: SEEDLING | {Stage.PRICKED_OUT, Stage.ESTABLISHING},
    watering.propose: WATERED_STAGES,
    thinning.propose: SEEDLING,
    pricking_out.propose: SEEDLING,
    potting_on.propose: frozenset(potting_on.STAGES),
    pinching.propose: frozenset(pinching.STAGES),
    feeding.propose: frozenset(feeding.STAGES),
    turning.propose: YOUNG | SEEDLING,
    weeding.propose: SEEDLING | {Stage.GROWING_ON},
    hardening.propose: YOUNG | SEEDLING | {Stage.HARDENING, Stage.OVERWINTERING},
    planting_out.propose: OUTWARD | frozenset(planting_out.UNHARDENED),
    spares.propose: SEEDLING | YOUNG | OUTWARD,
    supporting.propose: frozenset(supporting.STAGES),
    deadheading.propose: frozenset({Stage.FLOWERING, Stage.CROPPING}),
    flower_watch.propose: SEEDLING
    | {*flower_watch.STAGES, *flower_watch.IN_ITS_TIME, Stage.FLOWERING, Stage.CROPPING},
    relabelling.propose: relabelling.TRAY_STAGES,
    frosted.propose: frozenset(frosted.STAGES),
    clearing.propose: frozenset({Stage.GOING_OVER, Stage.SEED_SAVED}),
    bulbs.propose: frozenset({Stage.PLANNED, Stage.DORMANT}),
    washing.propose: frozenset({Stage.LOST, Stage.COMPOSTED}),
    overwintering.propose: YOUNG | SEEDLING,
    airing.propose: frozenset({Stage.OVERWINTERING}),
    frost_cover.propose: frozenset(frost_cover.STAGES),
}
