"""How many trays' room each batch takes, where, and from when to when."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from datetime import date, timedelta

from benchround.core.batch.batch import Batch, Part
from benchround.core.containers import USUAL_CONTAINERS
from benchround.core.crop.crop import Crop, Raising
from benchround.core.frozen import dataclass
from benchround.core.lifecycle import BEFORE
from benchround.core.planning.schedule import Step
from benchround.core.record import Kind
from benchround.core.season import Season
from benchround.core.seed.room_needed import trays_that_fit
from benchround.core.site import Place
from benchround.core.water.tray_holder import compost_of, holder_of, in_container
from benchround.drawing.stretches import coming_steps, part_history

FULL_TRAY = USUAL_CONTAINERS["full tray"]
TRAY_FOOTPRINT_MM = (240.0, 380.0)
"""What a full tray stands on, rim included; common practice, from memory."""
ONE_DAY = timedelta(days=1)
FAR = timedelta(days=366)
CELLS_AFTER_PRICKING_OUT = 40
"""Cells of the tray seedlings are taken to go into; common practice, no source."""
LEAVE = frozenset({Step.PLANT_OUT, Step.FLOWER, Step.CROP})
"""Steps after which plants have left the benches."""


@dataclass(frozen=True, slots=True)
class Stay:
    """Some trays at one place, both days included.

    Attributes:
        trays: in full trays; a half tray counts half, a pot by the ground it covers.
    """

    batch: str
    place: str
    opens: date
    closes: date
    trays: float


def capacity(place: Place) -> float | None:
    """Full trays a place holds: as told, else by the size of a frame; None where neither is."""
    if place.trays is not None:
        return place.trays
    if place.size_m is None:
        return None
    length, width = place.size_m
    return float(trays_that_fit(max(0.0, length * width), *TRAY_FOOTPRINT_MM))


def trays_of(season: Season, batch: Batch, part: Part) -> float:
    """Room a part takes in full trays; 0 for what stands in no container."""
    crop, compost = season.crop(batch.crop), compost_of(season)
    if part.stage in BEFORE and crop.raising in (Raising.BULB, Raising.DRILL):
        return 0.0
    if not in_container(season, batch, part) and part.stage not in BEFORE:
        return 0.0
    holder = holder_of(batch, part, crop, season.containers, compost)
    known = USUAL_CONTAINERS.get(holder.name)
    cells = known.cells if known else holder.water.cells
    share = (known.area_m2 if known else holder.water.area_m2) / FULL_TRAY.area_m2
    return _holders(batch, part, cells, "pot" in holder.name) * share


def _holders(batch: Batch, part: Part, cells: int, pots: bool) -> int:
    """How many containers: by the cells filled, else by the plants; a seed tray is one."""
    sown = part.first.get(Kind.SOWN)
    if cells == 1 and not pots:
        return (sown.count("trays") if sown else None) or 1
    moved = part.last_day(Kind.PRICKED_OUT, Kind.POTTED_ON)
    filled = batch.sowing.cells if batch.sowing and moved is None and not part.name else None
    plants = filled or part.alive or batch.wanted or 1
    return max(1, math.ceil(plants / cells))


def stays(season: Season, batch: Batch, day: date) -> Iterator[Stay]:
    """Where a batch has stood, stands and is expected to stand.

    What is expected goes by the crop's usual days: potting on takes pots, hardening moves to where
    most of what hardens stands, planting out frees the room. Any other move is not foreseen.
    """
    for name, history in part_history(batch).items():
        past = list(_past(season, batch, history, day))
        yield from past
        if name == batch.main.name:
            yield from _ahead(season, batch, day)
        elif past and not history[-1][1].ended:
            yield replace(past[-1], opens=day + ONE_DAY, closes=day + FAR)


def _past(
    season: Season, batch: Batch, history: tuple[tuple[date, Part], ...], day: date
) -> Iterator[Stay]:
    ends = [since - ONE_DAY for since, _ in history[1:]] + [day]
    for (since, part), last in zip(history, ends, strict=True):
        trays = 0.0 if part.ended or part.stage in BEFORE else trays_of(season, batch, part)
        if trays and part.place and since <= last:
            yield Stay(batch.id, part.place, since, last, trays)


def _ahead(season: Season, batch: Batch, day: date) -> Iterator[Stay]:
    part, crop = batch.main, season.crop(batch.crop)
    if part.ended or crop.raising is Raising.BULB:
        return
    place, trays = _first_place(batch), trays_of(season, batch, part)
    waits = part.stage in BEFORE
    at = day + ONE_DAY
    for step in coming_steps(season, batch, crop, day):
        until = max(at, step.day)
        if until > at and not waits and trays and place:
            yield Stay(batch.id, place, at, until - ONE_DAY, trays)
        at = until
        if step.step in LEAVE:
            return
        waits = waits and step.step is not Step.SOW
        trays = _later_trays(batch, crop, step.step, trays)
        place = _later_place(season, step.step, place)
    if not waits and trays and place:
        yield Stay(batch.id, place, at, day + FAR, trays)


def _first_place(batch: Batch) -> str:
    """Where it stands, or where it is to be sown."""
    chilled = batch.main.last.get(Kind.CHILLED)
    to = chilled.text("sow_place") if chilled and batch.main.stage in BEFORE else ""
    return to or batch.main.place


def _later_place(season: Season, step: Step, place: str) -> str:
    standing = season.place(place)
    if step is not Step.HARDEN or (standing is not None and standing.lidded):
        return place
    return season.hardening_place or place


def _later_trays(batch: Batch, crop: Crop, step: Step, trays: float) -> float:
    """Cells take more room than a seed tray, pots more than cells."""
    plants = batch.main.alive or batch.wanted or 0
    if step is Step.PRICK_OUT:
        return max(trays, float(math.ceil(plants / CELLS_AFTER_PRICKING_OUT)))
    if step is Step.POT_ON:
        side_m = crop.growing.pot_cm / 100.0
        return max(trays, plants * side_m * side_m / FULL_TRAY.area_m2)
    return trays
