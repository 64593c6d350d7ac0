"""What the grower's own sowings taught of a crop or a packet, beside the library's figures.

Germination: the library's or the packet's share is worth 25 seeds, own counts are added to it.
Emergence: ln of the degree-days to the first seedling; the library's range is worth 4 sowings. It
is read as what the next sowing does, its own doubt included, so that with no own sowing the learned
figures are the library's.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import replace

from benchround.core.crop.crop import Germination
from benchround.core.frozen import dataclass
from benchround.core.learning.days import PRIOR_BATCHES, DaysBelief
from benchround.core.learning.learned_figures import (
    LearnedShare,
    LearnedTime,
    LeftOut,
    left_out_words,
)
from benchround.core.learning.lesson import Lesson
from benchround.core.learning.share import PRIOR_SEEDS, beta_update, packet_belief
from benchround.core.seed.heat import thermal_model
from benchround.core.seed.packet import Packet
from benchround.core.seed.thermal_model import LEAST_SIGMA, ThermalModel

__all__ = [
    "Learned",
    "LearnedShare",
    "LearnedTime",
    "LeftOut",
    "learn",
    "learned_model",
    "left_out_words",
]


@dataclass(frozen=True, slots=True)
class Learned:
    """What is known of a crop or a packet; a half is None where the library says nothing of it."""

    about: str
    share: LearnedShare | None = None
    time: LearnedTime | None = None

    @property
    def left_out(self) -> tuple[LeftOut, ...]:
        """Own sowings that taught nothing, or only half of what they might."""
        halves = (self.share, self.time)
        found = {left: None for half in halves if half is not None for left in half.left_out}
        return tuple(found)


def learn(
    about: str,
    germination: Germination | None,
    lessons: Iterable[Lesson],
    packet: Packet | None = None,
) -> Learned:
    """What own sowings taught.

    Args:
        about: crop key or packet id.
        germination: the library's figures; None: nothing to learn beside.
        lessons: what each own sowing of this crop, or from this packet, teaches, oldest first.
        packet: the packet, where it is one; its own germination figure is then the prior.
    """
    if germination is None:
        return Learned(about)
    taught = tuple(lessons)
    return Learned(about, _share(germination, taught, packet), _time(germination, taught))


def _share(
    germination: Germination, lessons: tuple[Lesson, ...], packet: Packet | None
) -> LearnedShare:
    prior, of, worth = germination.share, "library", PRIOR_SEEDS
    if packet is not None and packet.germination is not None:
        prior, of = packet.germination, "packet"
        worth = min(PRIOR_SEEDS, float(packet.tested)) if packet.tested else PRIOR_SEEDS
    used, left_out = [], []
    for lesson in lessons:
        if lesson.old_seed and packet is None:
            left_out.append(LeftOut(lesson.batch, "old seed: it tells of its packet only"))
        elif lesson.sown is not None and lesson.up is not None:
            used.append((lesson.batch, lesson.up, lesson.sown))
        elif lesson.no_share:
            left_out.append(LeftOut(lesson.batch, lesson.no_share))
    up, sown = sum(up for _, up, _ in used), sum(sown for _, _, sown in used)
    return LearnedShare(
        prior=prior,
        of=of,
        prior_seeds=worth,
        belief=beta_update(packet_belief(prior, worth), up, sown),
        up=up,
        sown=sown,
        batches=tuple(name for name, _, _ in used),
        left_out=tuple(left_out),
    )


def _time(germination: Germination, lessons: tuple[Lesson, ...]) -> LearnedTime:
    library = thermal_model(germination)
    own = tuple(
        (lesson.batch, lesson.days, lesson.heat)
        for lesson in lessons
        if lesson.days is not None and lesson.heat is not None
    )
    left_out = tuple(LeftOut(lesson.batch, lesson.no_time) for lesson in lessons if lesson.no_time)
    if not own:
        return LearnedTime(library, library, germination.at_c, (), left_out)
    model = learned_model(library, tuple(heat for _, _, heat in own))
    return LearnedTime(library, model, germination.at_c, own, left_out)


def learned_model(library: ThermalModel, own_heat: tuple[float, ...]) -> ThermalModel:
    """The library's model with median and spread moved by own sowings.

    Normal-inverse-gamma on ln heat (`days`). The library's sigma is the spread of the next
    sowing, sigma^2 = v (1 + 1/k) with k the sowings its median is worth, so v = sigma^2 / (1 + 1/k)
    goes in as the spread about the median. The spread is kept from falling below 0.10.

    Args:
        library: the library's model.
        own_heat: degree-days to the first seedling of each own sowing, above 0.
    """
    about_median = library.sigma / math.sqrt(1.0 + 1.0 / PRIOR_BATCHES)
    belief = DaysBelief.of_library(library.theta50, about_median).update(own_heat)
    sigma = belief.sigma()
    return replace(
        library,
        theta50=belief.median,
        sigma=max(LEAST_SIGMA, library.sigma if sigma is None else sigma),
    )
