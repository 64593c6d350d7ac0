"""What sets a caution off at a task besides the plant: the work, the place, the sky, a loss.

Limits of weather are those of the table of cautions where it gives one; the others are our own and
say so.
"""

from __future__ import annotations

from functools import lru_cache

from benchround.core.crop.crop import Covering, Crop, Raising
from benchround.core.record import Kind
from benchround.core.site import INDOORS, Place, PlaceKind
from benchround.core.sky.weather import DayWeather
from benchround.core.task import Family

GUST_KMH = 40.0
"""From here a loose lid is thrown about (from memory)."""
HOT_C = 28.0
"""A heat day (from memory)."""
WARM_BUTT_C = 25.0
"""A day that warms a butt to where Legionella grows (our own rule; growth at 20-45 C read)."""
SUNNY_H = 4.0
SUNNY_MAX_C = 20.0
"""Hours of sun, or warmth, from which sap on skin is a risk (our own rule)."""
FROST_C = 0.0
MANY_TRAYS = 6.0
"""From here carrying trays wants a caution (our own rule)."""

COMPOST_WORK = (Family.SOW, Family.SOW_AGAIN, Family.RESOW, Family.PRICK_OUT, Family.POT_ON)
SEED_WORK = (Family.SOW, Family.SOW_AGAIN, Family.RESOW)
DIRTY_WORK = (
    *COMPOST_WORK,
    Family.SOAK,
    Family.CHILL,
    Family.THIN,
    Family.WEED,
    Family.PLANT_OUT,
    Family.BULBS,
    Family.SAVE_SEED,
    Family.PACK_SEED,
    Family.CLEAR,
    Family.FEED,
    Family.WASH,
)
DIRTY_KINDS = (
    Kind.SOAKED,
    Kind.CHILLED,
    Kind.SOWN,
    Kind.RESOWN,
    Kind.PRICKED_OUT,
    Kind.POTTED_ON,
    Kind.THINNED,
    Kind.WEEDED,
    Kind.PLANTED_OUT,
    Kind.PLANTED_BULBS,
    Kind.LIFTED,
    Kind.SEED_SAVED,
    Kind.PACKED,
    Kind.CUT_BACK,
    Kind.COMPOSTED,
    Kind.FED,
    Kind.WASHED,
)
"""Records of such work."""
LID_WORK = (Family.LIDS, Family.SHUT, Family.STRAP, Family.AIR)
SIDE_BY_SIDE = (
    Family.SOW,
    Family.SOW_AGAIN,
    Family.RESOW,
    Family.PRICK_OUT,
    Family.THIN,
    Family.POT_ON,
    Family.PICK,
    Family.LOCATE,
)
TREATED_SEED_WORK = (Family.SOW, Family.SOW_AGAIN, Family.RESOW, Family.SOAK, Family.CHILL)
HEATER_WORK = (Family.FLEECE, Family.LIDS)
"""Work on a cold night, and on the lids that must not be shut over a flame."""

BY_WORK: dict[Family, tuple[str, ...]] = {
    **{family: ("C01",) for family in COMPOST_WORK},
    Family.FEED: ("C33",),
    Family.WASH: ("C11", "C36"),
    Family.SUPPORT: ("C42",),
    Family.SOAK: ("C49",),
    Family.CHILL: ("C27",),
    Family.BULBS: ("C21",),
    Family.PESTS: ("C31",),
    Family.RELABEL: ("C26",),
    Family.SAVE_SEED: ("C30", "C54", "C55"),
    Family.PACK_SEED: ("C30", "C54", "C55"),
    Family.SPARES: ("C54",),
    Family.CLEAR: ("C06",),
    Family.DEADHEAD: ("C48",),
    Family.PICK: ("C48",),
}

BY_CAUSE: dict[str, tuple[str, ...]] = {
    "slug": ("C31", "C34"),
    "mouse": ("C11", "C31", "C35"),
    "rat": ("C11", "C31", "C35"),
    "disease": ("C31",),
    "damping off": ("C31", "C57"),
}

SHUT_AIR = (*INDOORS, PlaceKind.GREENHOUSE, PlaceKind.TUNNEL)


def in_the_ground(family: Family, raising: str, place: Place | None) -> bool:
    """Whether seed goes into a bed, and no compost is handled."""
    if family not in SEED_WORK:
        return False
    if place is None:
        return raising == Raising.DRILL
    return place.kind is PlaceKind.BED


def has_mains_heat(place: Place) -> bool:
    """Whether mains current warms it; a propagator with a thermostat is taken to be heated."""
    return place.heated or (place.kind is PlaceKind.PROPAGATOR and place.set_c is not None)


@lru_cache(maxsize=4096)
def place_cautions(family: Family, place: Place) -> frozenset[str]:
    """Ids a place brings to a task, in no order."""
    heated = has_mains_heat(place)
    watering = family in (Family.WATER, Family.UNCOVER, Family.WASH)
    checks = (
        ("C02", family in COMPOST_WORK and place.kind in SHUT_AIR),
        (
            "C27",
            family in (Family.SOW, Family.SOW_AGAIN, Family.LOOK)
            and place.kind is PlaceKind.FRIDGE,
        ),
        ("C38", family in LID_WORK and place.glazing == "glass"),
        ("C44", heated and (watering or family in (Family.SOW, Family.SOW_AGAIN, Family.RESOW))),
        ("C45", heated and watering),
        ("C46", place.fuel_heater and family in HEATER_WORK),
    )
    return frozenset(caution for caution, holds in checks if holds)


def sunny(weather: DayWeather | None) -> bool:
    """Whether sap on skin may burn today: sun or warmth expected, or the sun not known.

    A warm dull day counts, and so does a cool one of which the hours of sun are unknown.
    """
    if weather is None or weather.sun_h is None or weather.basis == "usual":
        return True
    warm = weather.max_c is not None and weather.max_c >= SUNNY_MAX_C
    return weather.sun_h >= SUNNY_H or warm


def sky_cautions(family: Family, weather: DayWeather, kind: PlaceKind | None) -> frozenset[str]:
    """Ids the weather brings to a task, in no order; what is not known brings none."""
    highest = weather.max_c if weather.max_c is not None else FROST_C
    gusty = weather.gust_kmh is not None and weather.gust_kmh >= GUST_KMH
    frosty = weather.min_c is not None and weather.min_c <= FROST_C
    checks = (
        ("C09", family is Family.WATER and highest >= WARM_BUTT_C),
        ("C40", gusty and family in (*LID_WORK, Family.SHADE, Family.FLEECE)),
        ("C41", frosty and family in (Family.THERMOMETER, Family.LIDS)),
        ("C47", highest > HOT_C and kind not in INDOORS),
    )
    return frozenset(caution for caution, holds in checks if holds)


def covering_cautions(family: Family, crop: Crop | None, covering: str) -> tuple[str, ...]:
    """Ids of what is strewn over the seed; where nobody chose, what the crop asks for."""
    if family not in (Family.SOW, Family.RESOW):
        return ()
    if not covering and crop is not None and crop.germination is not None:
        covering = crop.germination.covering
    return {Covering.VERMICULITE.value: ("C07",), "perlite": ("C08",)}.get(covering, ())


def lifting_cautions(family: Family, trays: float | None) -> tuple[str, ...]:
    """Ids for carrying: potting on six trays or more, or a number nobody has told."""
    heavy = family is Family.POT_ON and (trays is None or trays >= MANY_TRAYS)
    return ("C43",) if heavy else ()


LOOSE_SEED = frozenset({Family.SOAK, Family.CHILL, Family.SOW, Family.SAVE_SEED, Family.PACK_SEED})
"""Families in which seed lies open."""


def child_cautions(family: Family, poisonous: bool, bottom_watering: bool) -> tuple[str, ...]:
    """Ids where children live or visit."""
    found = ("C50",) if bottom_watering else ()
    return (*found, "C51") if poisonous and family in LOOSE_SEED else found
