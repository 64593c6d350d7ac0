"""Cautions: what to say at the step where work can hurt someone, and when to say it again.

What sets a caution off is in `triggers` and `plants`, the words in the three files of texts. Here
they are put together: by task, by crop page, by set-up page, and by day.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date
from enum import StrEnum
from functools import lru_cache
from types import MappingProxyType

from benchround.core.caution import triggers as triggers
from benchround.core.caution.kind import WORST_FIRST, Caution, Repeat, Severity
from benchround.core.caution.plants import EDIBLE, plant_cautions, plant_of, plant_page
from benchround.core.caution.texts import WORK
from benchround.core.caution.texts_plants import PLANTS
from benchround.core.caution.texts_site import SITE
from benchround.core.crop.crop import Crop
from benchround.core.frozen import dataclass
from benchround.core.record import Kind
from benchround.core.site import Place, Site
from benchround.core.sky.weather import DayWeather
from benchround.core.task import Family

__all__ = [
    "CAUTIONS",
    "Caution",
    "Page",
    "Repeat",
    "Severity",
    "Work",
    "blocks",
    "cautions_for",
    "closing_cautions",
    "crop_cautions",
    "mixed_with_edible",
    "read_key",
    "setup_cautions",
    "to_show",
    "worst_first",
]

CAUTIONS: Mapping[str, Caution] = MappingProxyType(
    {caution.id: caution for caution in sorted((*WORK, *PLANTS, *SITE), key=lambda c: c.id)}
)
BLOCKING = frozenset(("C15", "C17", "C44", "C46", "C50"))
"""What can kill: monkshood, castor bean, mains heat, fuel heaters, water and children."""
YEAR_DAYS = 365
OF_THE_PLANT = (Repeat.PER_CROP, Repeat.CROP_PAGE)


class Page(StrEnum):
    """Pages outside the round on which cautions stand."""

    FIRST_RUN = "first run"
    HELP = "help"
    PLACE = "place"
    COMPOST_STOCK = "compost in stock"
    COMPOST_MIX = "compost mix"
    CHEMICAL_STOCK = "chemical in stock"
    TREATED_PACKET = "treated packet"
    SEED_AWAY = "seed given or sold"


_PAGES: dict[Page, tuple[str, ...]] = {
    Page.FIRST_RUN: ("C05", "C12", "C41", "C56"),
    Page.HELP: ("C03", "C05", "C12", "C13", "C26", "C31", "C41", "C56"),
    Page.PLACE: ("C50",),
    Page.COMPOST_STOCK: ("C01", "C02", "C04", "C43"),
    Page.COMPOST_MIX: ("C07", "C08", "C37"),
    Page.CHEMICAL_STOCK: ("C31", "C32"),
    Page.TREATED_PACKET: ("C29",),
    Page.SEED_AWAY: ("C54", "C55"),
}


def _rank(caution_id: str) -> tuple[bool, int, str]:
    severity = CAUTIONS[caution_id].severity
    return (caution_id not in BLOCKING, WORST_FIRST.index(severity), caution_id)


@lru_cache(maxsize=8192)
def _worst_first(ids: frozenset[str]) -> tuple[str, ...]:
    return tuple(sorted(ids, key=_rank))


def worst_first(ids: Iterable[str]) -> tuple[str, ...]:
    """Ids in the order in which they are said: those that can kill first, then worst first."""
    return _worst_first(frozenset(ids))


@dataclass(frozen=True, slots=True)
class Work:
    """A piece of work, as far as it decides what is said before it.

    Attributes:
        family: what is to be done.
        crop: the rules of the plant; None for work on a place.
        place: where it is done, None where that is not known.
        weather: the outside weather of the day it is done.
        site: who lives there.
        covering: what goes over the seed; empty: what the crop asks for.
        cause: the cause of a loss behind the task, such as "slug".
        mixed_with_edible: food and poisonous plants stand in this place together.
        bottom_watering: trays are stood in water.
        sprinkled: water is given from above in drops.
        treated: the packet is marked as treated.
        trays: how many full trays are carried, None where that is not known.
    """

    family: Family
    crop: Crop | None
    place: Place | None
    weather: DayWeather | None
    site: Site
    covering: str = ""
    cause: str = ""
    mixed_with_edible: bool = False
    bottom_watering: bool = False
    sprinkled: bool = False
    treated: bool = False
    trays: float | None = None


def cautions_for(work: Work) -> tuple[str, ...]:
    """Ids of the cautions of a piece of work, those that can kill first, then worst first."""
    family, place = work.family, work.place
    ids = set(triggers.BY_WORK.get(family, ()))
    ids.update(triggers.covering_cautions(family, work.crop, work.covering))
    ids.update(triggers.lifting_cautions(family, work.trays))
    ids.update(triggers.BY_CAUSE.get(work.cause, ()))
    poisonous = False
    if work.crop is not None:
        plant = plant_of(work.crop)
        poisonous = plant.poisonous
        ids.update(plant_cautions(family, plant))
        if "C24" in ids and not triggers.sunny(work.weather):
            ids.discard("C24")
        if triggers.in_the_ground(family, work.crop.raising, place):
            ids.discard("C01")
    if place is not None:
        ids.update(triggers.place_cautions(family, place))
    if work.weather is not None:
        kind = None if place is None else place.kind
        ids.update(triggers.sky_cautions(family, work.weather, kind))
    if work.site.children:
        ids.update(triggers.child_cautions(family, poisonous, work.bottom_watering))
    told = (
        ("C10", work.sprinkled),
        ("C26", work.mixed_with_edible and family in triggers.SIDE_BY_SIDE),
        ("C29", work.treated and family in triggers.TREATED_SEED_WORK),
    )
    ids.update(caution for caution, holds in told if holds)
    return _worst_first(frozenset(ids))


def mixed_with_edible(crops: Iterable[Crop]) -> bool:
    """Whether food and something poisonous are among plants that stand together."""
    plants = [plant_of(crop) for crop in crops]
    return any(p.plant_class in EDIBLE for p in plants) and any(p.poisonous for p in plants)


def closing_cautions(to_do: Iterable[Family], done: Iterable[Kind] = ()) -> tuple[str, ...]:
    """Ids for the end of the round: wash your hands, where anything dirty is to do or was done."""
    dirty = any(family in triggers.DIRTY_WORK for family in to_do)
    return ("C03",) if dirty or any(kind in triggers.DIRTY_KINDS for kind in done) else ()


def crop_cautions(crop: Crop) -> tuple[str, ...]:
    """Ids for a crop's own page, worst first; the page says all of them in full."""
    return _worst_first(plant_page(plant_of(crop)))


def poison_cautions(crop: Crop) -> tuple[str, ...]:
    """Ids a plan says of a crop that does harm when eaten or touched, worst first.

    Of food nobody is told never to eat it; what its other parts do stands on its own page.
    """
    plant = plant_of(crop)
    if not plant.poisonous:
        return ()
    general = frozenset[str]() if crop.edible else frozenset({"C13"})
    return _worst_first(frozenset(plant.own()) or general)


def setup_cautions(page: Page, place: Place | None = None) -> tuple[str, ...]:
    """Ids for a page outside the round, worst first; a place adds its heat and its glass."""
    ids = set(_PAGES[page])
    if place is not None:
        if triggers.has_mains_heat(place):
            ids.add("C44")
        if place.fuel_heater:
            ids.add("C46")
        if place.glazing == "glass":
            ids.update(("C38", "C39"))
    return _worst_first(frozenset(ids))


def blocks(caution_id: str, crop: Crop | None = None) -> bool:
    """Whether the work waits until it has been read, as long as it is shown in full.

    A plant its crop table calls deadly blocks by the general caution on poison.
    """
    deadly = caution_id == "C13" and crop is not None and plant_of(crop).deadly
    return caution_id in BLOCKING or deadly


def read_key(caution_id: str, crop_key: str = "") -> str:
    """What the reading of a caution is recorded by: "C01", or "C14:foxglove" for a plant's."""
    if crop_key and CAUTIONS[caution_id].repeat in OF_THE_PLANT:
        return f"{caution_id}:{crop_key}"
    return caution_id


def _in_full(caution: Caution, last: date | None, day: date) -> bool:
    if last is None:
        return True
    if caution.repeat in (*OF_THE_PLANT, Repeat.AT_SETUP):
        return False
    worst_each_day = caution.severity is Severity.VERY_HIGH and caution.repeat is Repeat.EVERY_TIME
    return (day - last).days >= (1 if worst_each_day else YEAR_DAYS)


def _in_short(caution: Caution, last: date | None, day: date) -> bool:
    if caution.repeat is Repeat.FIRST_OF_DAY:
        return last is None or last < day
    if caution.repeat is Repeat.YEARLY:
        return caution.severity in (Severity.HIGH, Severity.VERY_HIGH)
    return True


def to_show(
    ids: Iterable[str], read: Mapping[str, date], day: date, crop_key: str = ""
) -> tuple[tuple[str, bool], ...]:
    """Which cautions are said on a day, in the order given, each in full (True) or as one line.

    In full when it was never read, and once a year again, except that the cautions of a plant and
    of set-up are said in full once only, and the worst every-time ones each day. Between, it is one
    line; a first-of-day one falls silent once read that day, and a yearly one of low or medium
    severity until its year is over.

    Args:
        ids: as `cautions_for` gives them.
        read: the last day each was acknowledged, by `read_key`.
        day: the day of the round.
        crop_key: the crop of the task.

    Raises:
        KeyError: an id is no caution's.
    """
    shown: list[tuple[str, bool]] = []
    for caution_id in ids:
        caution = CAUTIONS[caution_id]
        last = read.get(read_key(caution_id, crop_key))
        if _in_full(caution, last, day):
            shown.append((caution_id, True))
        elif _in_short(caution, last, day):
            shown.append((caution_id, False))
    return tuple(shown)
