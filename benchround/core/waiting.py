"""What to expect of seed not yet up: from when to look, when late, when to give up.

The seed's clock is the heat it really had: degree-days above the crop's base at the place it stood,
by day. Warmth above the optimum counts as the optimum, so that a cooked tray is found late and
its cause named, instead of being excused by the heat that stalled it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta

from benchround.core.batch import Batch, Part
from benchround.core.crop import Crop, Germination, PlantClass
from benchround.core.lateness import chance_alive, survival_at_which_alive_is
from benchround.core.lifecycle import Stage
from benchround.core.record import Kind
from benchround.core.season import Season
from benchround.core.thermal_model import (
    ThermalModel,
    chance_nothing,
    emerged_share,
    heat_for_share,
)
from benchround.core.warmth import warmth

LOOK_SHARE, HALF_SHARE, LATE_SHARE = 0.10, 0.50, 0.90
GIVE_UP_ALIVE = 0.20
"""Chance of being alive at which a batch is given up (our proposal)."""
PERENNIAL_PATIENCE = 4.0
"""Perennials are given up at this many times the median heat (our proposal)."""
FURTHEST_DAYS = 400
HEAT_MARGIN = 1e-6


@dataclass(frozen=True, slots=True)
class Stall:
    """Why seed may be sulking: too hot or too cold, where and when."""

    cause: str  # "heat" or "cold"
    day: date
    temp_c: float
    limit_c: float

    def __str__(self) -> str:
        side = "above" if self.cause == "heat" else "below"
        return (
            f"stalled by {self.cause}: {self.temp_c:.0f} C on {self.day.day} {self.day:%b}, "
            f"{side} its {self.limit_c:.0f} C"
        )


@dataclass(frozen=True, slots=True)
class Waiting:
    """The forecast for one sowing, seen on the morning of `day`.

    Attributes:
        look_from, half_by: mornings when a tenth and half of such batches are up.
        late_from: first morning after nine in ten of them.
        give_up_on: morning when, with nothing up, the chance that it is alive falls to 0.20.
        heat: degree-days had by the morning of `day`; `heat_half` what half emergence needs.
        share: share that should be up by now.
        last_look: the last day somebody looked and saw nothing.
        alive: chance that the sowing is alive, given nothing at the last look.
        basis: where the temperatures come from.
    """

    since: date
    look_from: date | None
    half_by: date | None
    late_from: date | None
    give_up_on: date | None
    heat: float
    heat_half: float
    share: float
    last_look: date | None
    alive: float
    stall: Stall | None
    basis: str


def thermal_model(germination: Germination) -> ThermalModel:
    """The thermal-time model of a crop's germination figures."""
    return ThermalModel.from_days(
        germination.days_first,
        germination.days_last,
        germination.at_c,
        germination.base_c,
        germination.optimum_c,
        germination.ceiling_c,
    )


def places_of(batch: Batch, part: Part) -> tuple[tuple[date, str], ...]:
    """From which day the part stood where, oldest first."""
    moves = [
        (record.day, record.text("place"))
        for record in batch.records
        if record.text("place") and record.text("part") in ("", part.name)
    ]
    return tuple(moves) or ((batch.begun, part.place),)


def place_on(moves: tuple[tuple[date, str], ...], day: date) -> str:
    """The place a part stood at on a day, by `places_of`."""
    found = moves[0][1]
    for since, place in moves:
        if since > day:
            break
        found = place
    return found


def _daily(
    season: Season, batch: Batch, part: Part, since: date, model: ThermalModel
) -> Iterator[tuple[date, float, float, str]]:
    moves = places_of(batch, part)
    for ahead in range(FURTHEST_DAYS):
        day = since + timedelta(days=ahead)
        felt = warmth(season.place(place_on(moves, day)), season.weather, season.site, day)
        heat = max(0.0, min(felt.mean_c, model.optimum_c) - model.base_c)
        yield day, heat, felt.max_c, felt.basis


def forecast(season: Season, batch: Batch, part: Part, crop: Crop, day: date) -> Waiting | None:
    """What to expect of a sown part on the morning of `day`.

    None where the crop has no germination figures or nothing was sown.
    """
    if crop.germination is None or batch.sowing is None:
        return None
    model = thermal_model(crop.germination)
    sown = batch.sowing.again_on or batch.sowing.day
    give_up = _give_up_heat(model, crop)
    needs = {
        LOOK_SHARE: heat_for_share(model, LOOK_SHARE),
        HALF_SHARE: heat_for_share(model, HALF_SHARE),
        LATE_SHARE: heat_for_share(model, LATE_SHARE) + HEAT_MARGIN,
        GIVE_UP_ALIVE + 1: give_up,
    }
    mornings: dict[float, date] = {}
    total = heat_now = 0.0
    heat_at_look: float | None = None
    stall: Stall | None = None
    basis = ""
    last_look = _last_look(part, sown)
    for at, heat, highest, known in _daily(season, batch, part, sown, model):
        for name, need in needs.items():
            if name not in mornings and total >= need - HEAT_MARGIN / 2:
                mornings[name] = at
        if at == last_look:
            heat_at_look = total
        if at <= day:
            heat_now, basis = total, known
        if at < day and highest > model.ceiling_c:
            stall = Stall("heat", at, highest, model.ceiling_c)
        if at >= day and len(mornings) == len(needs):
            break
        total += heat
    if stall is None:
        stall = _cold_stall(season, batch, part, model, day, mornings)
    seen = chance_nothing(model, heat_at_look) if heat_at_look is not None else 1.0
    return Waiting(
        since=sown,
        look_from=mornings.get(LOOK_SHARE),
        half_by=mornings.get(HALF_SHARE),
        late_from=mornings.get(LATE_SHARE),
        give_up_on=mornings.get(GIVE_UP_ALIVE + 1),
        heat=heat_now,
        heat_half=needs[HALF_SHARE],
        share=emerged_share(model, heat_now),
        last_look=last_look,
        alive=chance_alive(seen),
        stall=stall,
        basis=basis,
    )


def _give_up_heat(model: ThermalModel, crop: Crop) -> float:
    by_chance = heat_for_share(model, 1.0 - survival_at_which_alive_is(GIVE_UP_ALIVE))
    if crop.plant_class is PlantClass.HARDY_PERENNIAL:
        return max(by_chance, PERENNIAL_PATIENCE * model.theta50)
    return by_chance


def _last_look(part: Part, sown: date) -> date | None:
    days = [
        record.day
        for kind in (Kind.LOOKED, Kind.STALLED)
        if (record := part.last.get(kind)) is not None and record.day >= sown
    ]
    return max(days) if days else None


def _cold_stall(
    season: Season,
    batch: Batch,
    part: Part,
    model: ThermalModel,
    day: date,
    mornings: dict[float, date],
) -> Stall | None:
    late = mornings.get(LATE_SHARE)
    if part.stage not in (Stage.SOWN, Stage.STALLED) or (late is not None and late <= day):
        return None
    moves = places_of(batch, part)
    days = [day - timedelta(days=back) for back in range(1, 6)]
    means = [
        warmth(season.place(place_on(moves, at)), season.weather, season.site, at).mean_c
        for at in days
        if at >= batch.begun
    ]
    if len(means) == len(days) and max(means) <= model.base_c + 1.0:
        return Stall("cold", day - timedelta(days=1), means[0], model.base_c)
    return None
