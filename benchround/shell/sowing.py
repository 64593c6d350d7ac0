"""A sowing as it is recorded from the shell, and what is said of it: label, looked-for day."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date

from benchround.core.batch.batch import Batch
from benchround.core.crop.crop import Crop, Raising
from benchround.core.dates import say_date
from benchround.core.frozen import dataclass
from benchround.core.planning.schedule import Step, expected_course
from benchround.core.record import Figure, Kind
from benchround.core.season import Season
from benchround.core.seed.waiting import forecast
from benchround.rounds.seed_packet import seeds_for
from benchround.rounds.view import BatchView


@dataclass(frozen=True, slots=True)
class Label:
    """What goes on the two sides of a label."""

    front: str
    back: str


@dataclass(frozen=True, slots=True)
class Ahead:
    """What to expect of a batch just begun; None where nothing tells.

    Attributes:
        look_from: the morning a tenth of such sowings are up.
        half_by: the morning half of them are.
        late_from: the first morning after nine in ten.
        sow_from: the day a planned one is to be sown.
        seeds: seeds reckoned for the plants wanted, and how.
    """

    look_from: date | None
    half_by: date | None
    late_from: date | None
    sow_from: date | None
    seeds: int | None
    seeds_how: str


def begins_with(crop: Crop, *, planned: bool) -> Kind:
    """The kind of record a batch of this crop begins with."""
    if planned:
        return Kind.PLANNED
    return Kind.PLANTED_BULBS if crop.raising is Raising.BULB else Kind.SOWN


def filled_in(crop: Crop, kind: Kind, said: Mapping[str, Figure]) -> dict[str, Figure]:
    """The figures of a sowing, those nobody said taken from the crop's rules."""
    figures: dict[str, Figure] = {"crop": crop.key, **said}
    if kind is Kind.PLANTED_BULBS:
        return {"count": figures["wanted"], **figures} if "wanted" in figures else figures
    if kind is not Kind.SOWN:
        return figures
    usual: dict[str, Figure] = {
        "per_cell": crop.growing.per_cell,
        "raising": str(crop.raising),
    }
    if crop.germination is not None:
        usual["covering"] = str(crop.germination.covering)
        usual["depth_mm"] = crop.germination.depth_mm
    return {**figures, **{name: usual[name] for name in usual if name not in figures}}


def label_of(batch: Batch, crop: Crop) -> Label:
    """Front: what it is; back: day, batch and number, as the round words it."""
    sowing = batch.sowing
    number = f", {sowing.seeds} seeds" if sowing and sowing.seeds else ""
    variety = f" '{batch.variety}'" if batch.variety else ""
    day = sowing.day if sowing else batch.begun
    return Label(f"{crop.name}{variety}", f"{say_date(day)}, {batch.id}{number}")


def ahead_of(season: Season, batch: Batch, crop: Crop, day: date) -> Ahead:
    """What to expect of the batch."""
    waiting = forecast(season, batch, batch.main, crop, max(day, batch.begun))
    planned = batch.main.last.get(Kind.PLANNED) is not None and batch.sowing is None
    course = expected_course(season, batch, crop, day) if planned else ()
    sow_from = next((step.day for step in course if step.step is Step.SOW), None)
    seeds, how = seeds_for(BatchView(season, batch, batch.main, crop, day))
    return Ahead(
        look_from=waiting.look_from if waiting else None,
        half_by=waiting.half_by if waiting else None,
        late_from=waiting.late_from if waiting else None,
        sow_from=sow_from,
        seeds=seeds,
        seeds_how=how,
    )
