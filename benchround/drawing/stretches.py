"""A batch as stretches of time: what its records say, and what it is expected to do."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import date, timedelta

from benchround.core.batch.batch import Batch, Part, apply
from benchround.core.crop.crop import Crop
from benchround.core.frozen import dataclass
from benchround.core.lifecycle import Stage
from benchround.core.planning.schedule import Expected, Step, expected_course
from benchround.core.record import Kind
from benchround.core.season import Season
from benchround.drawing.phases import OUT_KINDS, Phase, phase_of

ONE_DAY = timedelta(days=1)
AS_USUAL = "as long as the crop usually lasts"


_LEADS_TO: Mapping[Step, Phase] = {
    Step.SOW: Phase.SOWN,
    Step.UP: Phase.UP,
    Step.PRICK_OUT: Phase.GROWING,
    Step.POT_ON: Phase.GROWING,
    Step.HARDEN: Phase.HARDENING,
    Step.PLANT_OUT: Phase.OUT,
    Step.FLOWER: Phase.FLOWER,
    Step.CROP: Phase.PICKING,
}
_ORDER = tuple(Phase)
"""The phases as they follow each other; after a pause, any may come."""
_PAUSES = frozenset({Phase.WINTER, Phase.RESTING})
_BEFORE_PLANTING = frozenset({Step.THIN, Step.PRICK_OUT, Step.POT_ON, Step.HARDEN, Step.PLANT_OUT})


@dataclass(frozen=True, slots=True)
class Stretch:
    """Days spent in one phase, both ends included.

    Attributes:
        expected: not recorded, only reckoned from the crop's rules.
        because: why it is expected then; empty where it was recorded.
    """

    opens: date
    closes: date
    phase: Phase
    expected: bool = False
    because: str = ""


def part_history(batch: Batch) -> Mapping[str, tuple[tuple[date, Part], ...]]:
    """Each part of a batch after each of its records, oldest first.

    A part split off later begins on the day of the split.
    """
    told: dict[str, list[tuple[date, Part]]] = {}
    now: Batch | None = None
    for record in batch.records:
        now = apply(now, record, batch.id)
        for part in now.parts:
            past = told.setdefault(part.name, [])
            if not past or past[-1][1] is not part:
                past.append((record.day, part))
    return {name: tuple(past) for name, past in told.items()}


def recorded(history: tuple[tuple[date, Part], ...], day: date) -> tuple[Stretch, ...]:
    """The stretches a part's records tell, up to and including `day`."""
    found: list[Stretch] = []
    for since, part in history:
        phase = phase_of(part)
        if found and found[-1].phase is phase:
            continue
        while found and found[-1].opens >= since:
            found.pop()
        if found:
            found[-1] = replace(found[-1], closes=since - ONE_DAY)
        if not found or found[-1].phase is not phase:
            found.append(Stretch(since, since, phase))
    if found and found[-1].phase is not Phase.ENDED:
        found[-1] = replace(found[-1], closes=max(day, found[-1].opens))
    return tuple(stretch for stretch in found if stretch.phase is not Phase.PLANNED)


def expected(season: Season, batch: Batch, crop: Crop, day: date) -> tuple[Stretch, ...]:
    """The stretches the main part of a batch is expected to go through from the next day on."""
    if batch.main.ended:
        return ()
    ahead = list(_ahead(season, batch, crop, day))
    ends = [stretch.opens - ONE_DAY for stretch in ahead[1:]]
    closed = [replace(one, closes=end) for one, end in zip(ahead, ends, strict=False)]
    return tuple(one for one in (*closed, *ahead[-1:]) if one.closes >= one.opens)


def _ahead(season: Season, batch: Batch, crop: Crop, day: date) -> Iterator[Stretch]:
    """The coming phases in order, the present one first; days that have slipped begin tomorrow."""
    at, phase = day + ONE_DAY, phase_of(batch.main)
    steps = [step for step in coming_steps(season, batch, crop, day) if step.step in _LEADS_TO]
    if phase is not Phase.PLANNED:
        last = at if steps else _goes_on_until(batch, crop)
        if last is not None:
            yield Stretch(at, last, phase, True, AS_USUAL)
    for step in steps:
        leads_to = _LEADS_TO[step.step]
        if phase in _PAUSES or _ORDER.index(leads_to) > _ORDER.index(phase):
            at, phase = max(at, step.day), leads_to
            yield Stretch(at, _last_day(crop, at, phase, step), phase, True, step.because)


def coming_steps(season: Season, batch: Batch, crop: Crop, day: date) -> tuple[Expected, ...]:
    """The steps still before the main part of a batch, without those its records leave behind."""
    if batch.main.ended:
        return ()
    steps = (
        _next_time(season, crop, step, day)
        for step in expected_course(season, batch, crop, day)
        if not _behind(batch.main, step)
    )
    return tuple(sorted(steps, key=lambda step: step.day))


def _next_time(season: Season, crop: Crop, step: Expected, day: date) -> Expected:
    """A flowering at its own time of the year that is over by now, moved to its next time."""
    window = crop.flowering.window if crop.flowering is not None else None
    if step.step is not Step.FLOWER or window is None or (step.until or step.day) > day:
        return step
    span = season.site.year.span(window, day + ONE_DAY)
    return replace(step, day=span.opens, until=span.closes) if span is not None else step


def _behind(part: Part, step: Expected) -> bool:
    if step.step is Step.THIN and part.last_day(Kind.THINNED) is not None:
        return True
    planted = part.last_day(*OUT_KINDS) is not None
    return step.because == "done" or (planted and step.step in _BEFORE_PLANTING)


def _last_day(crop: Crop, opens: date, phase: Phase, step: Expected) -> date:
    """The last day of a phase nothing follows; one whose end nothing tells is a single day."""
    flowering, cropping = crop.flowering, crop.cropping
    if phase is Phase.FLOWER and flowering is not None:
        if flowering.window is not None and step.until is not None:
            return max(opens, step.until)
        return opens + timedelta(days=max(1, flowering.lasts_days) - 1)
    if phase is Phase.PICKING and cropping is not None:
        return opens + timedelta(days=max(1, cropping.lasts_days) - 1)
    return opens


def _goes_on_until(batch: Batch, crop: Crop) -> date | None:
    """How long the present phase should last where no further step is known."""
    part = batch.main
    first = part.first_day(Kind.FIRST_FLOWER)
    if part.stage is Stage.FLOWERING and crop.flowering is not None:
        return (first or part.since) + timedelta(days=crop.flowering.lasts_days - 1)
    if part.stage is Stage.CROPPING and crop.cropping is not None:
        return part.since + timedelta(days=crop.cropping.lasts_days - 1)
    if part.stage is Stage.LEFT_FOR_SEED and first is not None:
        over = part.last_day(Kind.GOING_OVER, Kind.LEFT_FOR_SEED) or first
        return first + (over - first) / 2 + timedelta(days=crop.seed.ripe_days)
    return None
