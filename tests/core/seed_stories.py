"""Short stories of sowings for tests of what is learned from them. All names are invented."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import date, timedelta

from benchround.core.batch.batch import Batch, fold_batch
from benchround.core.crop.crop import Crop, Germination, Hardiness, PlantClass, Raising
from benchround.core.record import Figure, Kind, Record
from benchround.core.season import Season
from tests.folding import fold_season

DAY_0 = date(2027, 3, 1)
TENBELL = Crop(
    key="tenbell",
    name="Tenbell",
    latin="",
    plant_class=PlantClass.HARDY_ANNUAL,
    hardiness=Hardiness.HARDY,
    raising=Raising.TRAY,
    germination=Germination(4.0, 24.0, 30.0, 6.80797, 14.68866, 20.0, share=0.8),
)
"""A made-up crop: median 10 days at 20 C, sigma 0.30 (10 exp(-/+ 1.28155 x 0.30) days)."""

Event = tuple[int, Kind, dict[str, Figure]]


def on(day: int, kind: Kind, **figures: Figure) -> Event:
    """Something that happened so many days after the sowing."""
    return day, kind, figures


def batch_of(*events: Event, name: str = "b01", **sown: Figure) -> Batch:
    """A batch sown on day 0 with its events, days counted from the sowing."""
    batch, doubts = fold_batch(name, sowing_records(name, 0, *events, **sown))
    assert batch is not None
    assert doubts == ()
    return batch


def sowing_records(name: str, begun: int, *events: Event, **sown: Figure) -> list[Record]:
    """The records of one sowing; `begun` counts from day 0, the events from the sowing."""
    first: dict[str, Figure] = {"crop": "tenbell", "seeds": 50, "place": "warm", **sown}
    told: list[Event] = [(0, Kind.SOWN, first), *events]
    return [
        Record(f"{name}-{number:03d}", DAY_0 + timedelta(days=begun + day), kind, name, figures)
        for number, (day, kind, figures) in enumerate(told)
    ]


WARM_PLACE = Record(
    "0place",
    DAY_0,
    Kind.PLACE,
    "warm",
    {"name": "Warm box", "kind": "propagator", "set_c": 20.0, "order": 1},
)


def warm_season(records: Iterable[Record], set_c: float = 20.0) -> Season:
    """A season with one propagator that stands at a steady temperature."""
    place = replace(WARM_PLACE, figures={**WARM_PLACE.figures, "set_c": set_c})
    return fold_season([place, *records], {"tenbell": TENBELL})


def came_up(day: int, *, looked: int, up: int | None = None) -> tuple[Event, ...]:
    """Nothing at one look, the first seedling at a later one, and a final count."""
    events = [on(looked, Kind.LOOKED), on(day, Kind.FIRST_UP, count=1)]
    if up is not None:
        events.append(on(day + 9, Kind.COUNTED, count=up, final=True))
    return tuple(events)
