"""What the year picture is drawn from: each batch and bulb as a strip of stretches."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date
from enum import StrEnum

from benchround.core.batch.batch import Batch, Part
from benchround.core.crop.crop import Crop
from benchround.core.dates import Span as Days
from benchround.core.frozen import dataclass
from benchround.core.season import Season
from benchround.drawing.phases import Phase
from benchround.drawing.stretches import Stretch, expected, part_history, recorded

NOWHERE = 10_000
"""Order of a place that is not set up: after all others."""


class Order(StrEnum):
    """What the strips are sorted by."""

    PLACE = "place"
    SOWING = "sowing"
    FLOWERING = "flowering"


@dataclass(frozen=True, slots=True)
class YearStrip:
    """One part of one batch across time.

    Attributes:
        batch, part: which; the main part has an empty name.
        name: crop and variety.
        place, place_order: where it stands, in walking order.
        stage: the stage it is in today.
        stretches: recorded and expected, in order of time.
        colours, height_cm: what the crop's flowers may look like, and how tall it grows.
    """

    batch: str
    part: str
    name: str
    place: str
    place_order: int
    stage: str
    stretches: tuple[Stretch, ...]
    colours: tuple[str, ...] = ()
    height_cm: tuple[int, int] | None = None

    @property
    def title(self) -> str:
        """Batch, part and name in one."""
        return " ".join(word for word in (self.batch, self.part, self.name) if word)

    @property
    def begins(self) -> date | None:
        """The first day of the strip: sowing, planting, or what came before."""
        return self.stretches[0].opens if self.stretches else None

    @property
    def flowerings(self) -> tuple[Days, ...]:
        """The times in flower, recorded and expected days that meet taken as one."""
        found: list[Days] = []
        for one in self.stretches:
            if one.phase is not Phase.FLOWER:
                continue
            if found and (one.opens - found[-1].closes).days <= 1:
                found[-1] = Days(found[-1].opens, one.closes)
            else:
                found.append(Days(one.opens, one.closes))
        return tuple(found)


def year_strips(season: Season, day: date, order: Order = Order.PLACE) -> tuple[YearStrip, ...]:
    """Every part of every batch as a strip, sorted.

    Args:
        season: the season.
        day: today; what comes after it is expected, not recorded.
        order: what to sort by.
    """
    found = [
        strip for batch in season.batches.values() for strip in batch_strips(season, batch, day)
    ]
    return in_order(found, order)


def batch_strips(season: Season, batch: Batch, day: date) -> tuple[YearStrip, ...]:
    """The strips of one batch: its main part, with what is expected of it, and its spares."""
    crop, history = season.crop(batch.crop), part_history(batch)
    ahead = expected(season, batch, crop, day)
    return tuple(
        _strip(season, batch, part, crop, recorded(history.get(part.name, ()), day) + rest)
        for part in batch.parts
        for rest in (ahead if part is batch.main else (),)
    )


def _strip(
    season: Season, batch: Batch, part: Part, crop: Crop, stretches: tuple[Stretch, ...]
) -> YearStrip:
    place, flowering = season.place(part.place), crop.flowering
    variety = f" '{batch.variety}'" if batch.variety else ""
    return YearStrip(
        batch=batch.id,
        part=part.name,
        name=f"{crop.name}{variety}",
        place=place.name if place else part.place,
        place_order=place.order if place else NOWHERE,
        stage=str(part.stage),
        stretches=stretches,
        colours=flowering.colours if flowering else (),
        height_cm=flowering.height_cm if flowering else None,
    )


def in_order(strips: Iterable[YearStrip], order: Order) -> tuple[YearStrip, ...]:
    """Strips sorted by walking order, by first day or by first flower; those without at the end."""

    def key(strip: YearStrip) -> tuple[int, int, str, str]:
        begins = strip.begins.toordinal() if strip.begins else date.max.toordinal()
        if order is Order.PLACE:
            return strip.place_order, begins, strip.batch, strip.part
        first = begins
        if order is Order.FLOWERING:
            opens = [days.opens for days in strip.flowerings[:1]]
            first = min(opens, default=date.max).toordinal()
        return first, begins, strip.batch, strip.part

    return tuple(sorted(strips, key=key))
