"""A crop: the rules for one kind of plant, as frozen records.

A crop never names a month. Its windows hang on anchors of the site (frost, midsummer, day length,
soil temperature), so the same rule serves both hemispheres. Every figure has its source in
`Crop.sources`, by dotted key; figures without an entry of their own fall under `default`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from enum import StrEnum

from benchround.core.frozen import dataclass


class PlantClass(StrEnum):
    """How the trade sorts plants by the way they live."""

    HARDY_ANNUAL = "hardy annual"
    HALF_HARDY_ANNUAL = "half-hardy annual"
    BIENNIAL = "biennial"
    HARDY_PERENNIAL = "hardy perennial"
    TENDER_PERENNIAL = "tender perennial"
    VEGETABLE = "vegetable"
    HERB = "herb"
    BULB = "bulb"
    UNKNOWN = "unknown"


class Hardiness(StrEnum):
    """What cold a young plant stands, from most to least."""

    HARDY = "hardy"
    HALF_HARDY = "half-hardy"
    TENDER = "tender"
    VERY_TENDER = "very tender"


class Raising(StrEnum):
    """How the crop is usually started."""

    TRAY = "tray"  # sown broadcast in a tray or pan, pricked out later
    CELLS = "cells"  # one or a few seeds a cell, thinned to one
    CLUMPS = "clumps"  # several seeds a cell, kept as a clump
    POTS = "pots"
    DRILL = "drill"  # sown where it grows, in a row
    BULB = "bulb"  # planted, not sown


class Light(StrEnum):
    """What the seed wants of light while it germinates."""

    LIGHT = "light"
    DARK = "dark"
    EITHER = "either"


class Covering(StrEnum):
    """What goes over the seed."""

    NONE = "none"
    VERMICULITE = "vermiculite"
    COMPOST = "compost"
    GRIT = "grit"
    SOIL = "soil"


class Anchor(StrEnum):
    """The day of the site's year a window hangs on."""

    LAST_FROST = "last frost"  # the day half the years have had their last frost
    LAST_FROST_SAFE = "last frost safe"  # only one year in ten has a frost after it
    FIRST_FROST = "first frost"  # the day half the years have had their first frost
    MIDSUMMER = "midsummer"
    MIDWINTER = "midwinter"
    DAY_LENGTH_RISING = "day length rising"  # to `value` hours
    DAY_LENGTH_FALLING = "day length falling"
    SOIL_WARMING = "soil warming"  # soil at sowing depth rises to `value` degrees C
    SOIL_COOLING = "soil cooling"


@dataclass(frozen=True, slots=True)
class Edge:
    """One end of a window: `days` after an anchor (before it if negative)."""

    anchor: Anchor
    days: int = 0
    value: float | None = None


@dataclass(frozen=True, slots=True)
class SowingWindow:
    """A span of the site's year in which a sowing makes sense.

    Attributes:
        name: short words, such as "under cover in spring" or "for next year".
        opens: the first sensible day.
        closes: the last sensible day.
        where: "heat", "cover", "outdoors" or "shade".
    """

    name: str
    opens: Edge
    closes: Edge
    where: str = "cover"


@dataclass(frozen=True, slots=True)
class Germination:
    """What the seed needs to come up, and how long it takes.

    `days_first` to `days_last` at `at_c` degrees C are read as the tenth and ninetieth percentile
    of batches' first emergence. Temperatures are those of the compost.
    """

    base_c: float
    optimum_c: float
    ceiling_c: float
    days_first: float
    days_last: float
    at_c: float
    share: float = 0.75
    light: Light = Light.EITHER
    covering: Covering = Covering.COMPOST
    depth_mm: float = 5.0
    heat_c: float | None = None


@dataclass(frozen=True, slots=True)
class Treatment:
    """Something done to the seed before sowing: soak, chip, chill, warm or fresh."""

    name: str
    days: float = 0.0
    temp_c: float | None = None


@dataclass(frozen=True, slots=True)
class Growing:
    """From seedling to pot. Days are the usual ones; what was seen on the plant goes before."""

    true_leaf_days: int = 10  # from first up to first true leaves
    prick_out: bool = True
    prick_out_spacing_mm: int = 40
    per_cell: int = 1  # seeds a cell or pot
    keep_per_cell: int = 1  # plants left in a cell after thinning
    thin_to_mm: int | None = None  # final spacing in a row
    thin_first_mm: int | None = None  # spacing after the first of two thinnings
    pot_on: bool = False
    pot_on_days: int = 24  # from pricking out
    pot_on_days_from_up: int = 21  # from first up, where sown singly in cells
    pot_cm: float = 9.0
    pinch_pairs: int | None = None
    pinch_height_cm: float | None = None
    pinch_days: int | None = None  # from pricking out or potting on, where nobody counted leaves
    feed: bool = True


@dataclass(frozen=True, slots=True)
class Hardening:
    """How long the move from cover to open air takes, and what stops it.

    `days` is the whole course; `least_days` the shortest that is still one. `after_potting_days`:
    how long a newly potted plant is left before it starts. `limit_c`: forecast night at or below
    which a step goes back. `starts`: the day of the site's year before which it does not begin.
    """

    days: int = 18
    least_days: int = 18
    after_potting_days: int = 14
    limit_c: float = 4.0
    starts: Edge | None = None


@dataclass(frozen=True, slots=True)
class Planting:
    """Into its flowering or cropping place."""

    spacing_cm: int = 30
    row_cm: int | None = None
    depth: str = "to the seed leaves"
    least_night_c: float | None = None  # five nights above this are wanted; None: frost is no bar
    size_stem_mm: float | None = None  # measured trigger, such as the leek's
    from_sowing_days: tuple[int, int] | None = None
    window: SowingWindow | None = None  # biennials and autumn-sown stock wait for it
    support: bool = False


@dataclass(frozen=True, slots=True)
class Flowering:
    """Flower, deadheading and what the eye gets."""

    colours: tuple[str, ...] = ()
    height_cm: tuple[int, int] | None = None
    from_planting_days: tuple[int, int] | None = None
    from_sowing_days: tuple[int, int] | None = None
    window: SowingWindow | None = None  # where the site's year, not the sowing, sets the time
    lasts_days: int = 42
    deadhead: str = "none"  # none, heads, spikes, pick
    deadhead_every_days: int | None = None
    deadhead_first_days: int | None = None  # from first flower to the first round
    shear: bool = False  # answers to cutting back with a second flush


@dataclass(frozen=True, slots=True)
class Cropping:
    """A vegetable's harvest: days from planting out or from sowing, and how long it lasts."""

    from_planting_days: tuple[int, int] | None = None
    from_sowing_days: tuple[int, int] | None = None
    lasts_days: int = 21


@dataclass(frozen=True, slots=True)
class SeedSaving:
    """Whether and when home-saved seed is worth having."""

    worth: bool = False
    ripe_days: int = 60  # from the middle of flowering to ripe
    sheds_within_days: int = 7  # from ripe to lost
    keeps_years: int = 3
    bag: bool = False  # heads that burst or shed suddenly
    fresh_only: bool = False


@dataclass(frozen=True, slots=True)
class Crop:
    """The rules for one kind of plant.

    Attributes:
        key: short name of lower-case letters, digits and hyphens, unique in the library.
        hazards: words out of `HAZARDS`; the cautions shown at a step follow from them.
        succession_days: least and most days between successive sowings; None: sown once.
        bulb_rest_days: how long a bulb's leaves stay after deadheading.
        sources: dotted key (such as `germination.days_first`, `sowing`, `default`) -> source.
    """

    key: str
    name: str
    latin: str
    plant_class: PlantClass
    hardiness: Hardiness
    raising: Raising
    germination: Germination | None = None
    synonyms: tuple[str, ...] = ()
    treatments: tuple[Treatment, ...] = ()
    windows: tuple[SowingWindow, ...] = ()
    growing: Growing = Growing()
    hardening: Hardening | None = None
    planting: Planting = Planting()
    flowering: Flowering | None = None
    cropping: Cropping | None = None
    seed: SeedSaving = SeedSaving()
    hazards: tuple[str, ...] = ()
    succession_days: tuple[int, int] | None = None
    bulb_rest_days: int = 42
    seeds_per_g: float | None = None
    sources: Mapping[str, str] = field(default_factory=dict)

    def source(self, key: str) -> str:
        """The source of a figure by dotted key, else its section's, else the crop's own."""
        section = key.partition(".")[0]
        for name in (key, section, "default"):
            if name in self.sources:
                return self.sources[name]
        return COMMON_PRACTICE

    @property
    def edible(self) -> bool:
        """Whether it is raised to be eaten."""
        return self.plant_class in (PlantClass.VEGETABLE, PlantClass.HERB)


COMMON_PRACTICE = "common practice, no source"

HAZARDS = (
    "poison",  # harmful if eaten
    "deadly",  # a little can kill
    "skin",  # sap or hairs irritate
    "phototoxic",  # sap burns skin in sun
    "pets",
    "food-like seed",  # seed or bulb that can be taken for food
    "allergen",
    "invasive",  # on lists in some countries: look at the grower's own
    "cucurbit",  # home-saved seed may be bitter and poisonous
)
