"""What to do about seed that sulks in heat or cold: move it, shade it, wait, or sow again."""

from __future__ import annotations

from datetime import date, timedelta

from benchround.core.dates import say_day
from benchround.core.seed.heat import thermal_model
from benchround.core.seed.stall import Stall, too_cold, too_hot
from benchround.core.site import Place, PlaceKind
from benchround.core.task import Slot
from benchround.rounds.view import BatchView

AHEAD_DAYS = 60
"""How far ahead it is looked for warmer days."""
HEAT_SHY_CEILING_C = 30.0
"""Seed that comes up in nothing warmer is sown in the evening in hot weather (our proposal)."""
EVENING_SOWING_C = 22.0
"""The day's highest from which heat-shy seed is sown in the evening.

Lettuce, celery and pansy fail in compost above 25 C (University of Florida IFAS, thermodormancy:
read); compost in daylight stands about 3 C above the air (our proposal).
"""
NO_BENCH = (PlaceKind.BED, PlaceKind.FRIDGE)


def remedy(view: BatchView, stall: Stall) -> str:
    """What to do about a stall, as the end of an instruction."""
    return _cool(view) if stall.cause == "heat" else _warm(view)


def cool_place(view: BatchView) -> Place | None:
    """The coolest place that stays below the crop's ceiling today, the shaded ones first."""
    return _best(view, hot=True)


def heat_shy(view: BatchView) -> bool:
    """Whether the crop's seed comes up in nothing warm."""
    germination = view.crop.germination
    return germination is not None and germination.ceiling_c < HEAT_SHY_CEILING_C


def sowing_slot(view: BatchView) -> Slot:
    """The part of the day to sow in: the evening for heat-shy seed on a warm day."""
    weather = view.season.weather.on_or_usual(view.day, view.season.site)
    warm = weather.max_c is not None and weather.max_c >= EVENING_SOWING_C
    return Slot.EVENING if warm and heat_shy(view) else Slot.MORNING


def _cool(view: BatchView) -> str:
    place = cool_place(view)
    move = f"move to {place.name}" if place else "move to a cool shaded place"
    if view.place is not None and view.place.kind is PlaceKind.BED:
        move = "shade the row and keep it moist"
    again = ", or re-sow in the evening" if heat_shy(view) else ""
    return f"{move}, or shade and wait for cooler days{again}"


def _warm(view: BatchView) -> str:
    until = warm_from(view)
    wait = f"wait: {say_day(until)} should be warm enough" if until else "wait for warmth"
    place = _best(view, hot=False)
    if place is None or (view.place is not None and view.place.kind is PlaceKind.BED):
        return wait
    return f"move to {place.name}, or {wait}"


def warm_from(view: BatchView) -> date | None:
    """The next day warm enough where it stands; None within two months."""
    if view.crop.germination is None:
        return None
    model = thermal_model(view.crop.germination)
    for ahead in range(AHEAD_DAYS):
        day = view.day + timedelta(days=ahead)
        if not too_cold(model, view.season.warmth_at(view.part.place, day)):
            return day
    return None


def _best(view: BatchView, *, hot: bool) -> Place | None:
    """A place to move to: neither too hot nor too cold for the seed today."""
    if view.crop.germination is None:
        return None
    model = thermal_model(view.crop.germination)
    found: list[tuple[bool, float, int, Place]] = []
    for place in view.season.places:
        if place.code == view.part.place or place.kind in NO_BENCH:
            continue
        if hot and (place.heated or place.kind is PlaceKind.PROPAGATOR):
            continue  # a thermostat warms and never cools
        warm = view.season.warmth_at(place.code, view.day)
        if not too_hot(model, warm) and not too_cold(model, warm):
            better = warm.max_c if hot else abs(warm.mean_c - model.optimum_c)
            exposed = hot and (place.shade_share <= 0 or not place.lidded)
            found.append((exposed, better, place.order, place))
    return min(found, key=lambda entry: entry[:3])[3] if found else None
