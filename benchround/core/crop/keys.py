"""Every key a crop table may hold, once, with its form, range or choices, and meaning.

Checking a table, changing single figures for a season and the page in docs/ all read from here.
What a key is when it is left out is the default of the field in `core/crop/crop.py`.
"""

from __future__ import annotations

from enum import StrEnum
from functools import cache

from benchround.core.crop.crop import (
    HAZARDS,
    Covering,
    Crop,
    Cropping,
    Flowering,
    Germination,
    Growing,
    Hardening,
    Hardiness,
    Light,
    PlantClass,
    Planting,
    Raising,
    SeedSaving,
    SowingWindow,
    Treatment,
)
from benchround.core.crop.schema import Form, Key, Section


def _one_of(name: str, meaning: str, words: type[StrEnum], field: str = "") -> Key:
    choices = tuple(str(word) for word in words)
    return Key(name, Form.CHOICE, meaning, choices=choices, words=words, field=field)


def _days(name: str, meaning: str, low: float = 0, high: float = 400) -> Key:
    return Key(name, Form.WHOLE, meaning, low, high, "days")


def _span(name: str, meaning: str, low: float = 0, high: float = 730, unit: str = "days") -> Key:
    return Key(name, Form.SPAN, meaning, low, high, unit)


def _celsius(name: str, meaning: str, low: float, high: float) -> Key:
    return Key(name, Form.NUMBER, meaning, low, high, "degrees C")


WINDOW_KEYS = (
    Key("name", Form.TEXT, "short words for the window, such as 'under cover in spring'"),
    Key("opens", Form.EDGE, "the first sensible day"),
    Key("closes", Form.EDGE, "the last sensible day"),
    Key(
        "where",
        Form.CHOICE,
        "in what kind of place",
        choices=("heat", "cover", "outdoors", "shade"),
    ),
)

CROP = Section(
    "",
    Crop,
    "the crop itself",
    (
        Key("name", Form.TEXT, "common name, as it stands on the label"),
        Key("latin", Form.TEXT, "Latin name"),
        _one_of("class", "how the trade sorts it", PlantClass, "plant_class"),
        _one_of("hardiness", "what cold a young plant stands", Hardiness),
        _one_of("raising", "how it is usually started", Raising),
        Key("synonyms", Form.TEXTS, "other names it is looked for under"),
        Key("hazards", Form.TEXTS, "what cautions it calls for", choices=HAZARDS),
        _span("succession_days", "least and most days between successive sowings", 3, 90),
        _days("bulb_rest_days", "how long a bulb's leaves stay after deadheading", 0, 120),
        Key("seeds_per_g", Form.NUMBER, "seeds in a gram", 0.05, 200_000, "seeds"),
    ),
)

GERMINATION = Section(
    "germination",
    Germination,
    "what the seed needs to come up; temperatures are those of the compost",
    (
        _celsius("base_c", "below it nothing moves", -5, 20),
        _celsius("optimum_c", "quickest at this", 5, 38),
        _celsius("ceiling_c", "above it nothing comes up", 15, 48),
        Key("days_first", Form.NUMBER, "days until one batch in ten shows", 0.5, 200, "days"),
        Key("days_last", Form.NUMBER, "days until nine batches in ten show", 0.5, 365, "days"),
        _celsius("at_c", "the temperature those days belong to", 5, 35),
        Key("share", Form.NUMBER, "share of good seed that comes up", 0.05, 1),
        _one_of("light", "what the seed wants of light", Light),
        _one_of("covering", "what goes over the seed", Covering),
        Key("depth_mm", Form.NUMBER, "how deep", 0, 200, "mm"),
        _celsius("heat_c", "bottom heat to set, if any is worth it", 10, 30),
    ),
)

TREATMENTS = Section(
    "treatments",
    Treatment,
    "what is done to the seed before sowing, in order",
    (
        Key(
            "name",
            Form.CHOICE,
            "the work",
            choices=("soak", "chip", "chill", "warm", "fresh"),
        ),
        Key("days", Form.NUMBER, "how long it takes", 0, 365, "days"),
        _celsius("temp_c", "at what temperature", -5, 40),
    ),
    many=True,
)

WINDOWS = Section(
    "windows",
    SowingWindow,
    "when a sowing makes sense, by the site's own year and never by a month",
    WINDOW_KEYS,
    many=True,
)

GROWING = Section(
    "growing",
    Growing,
    "from seedling to pot",
    (
        _days("true_leaf_days", "from first up to first true leaves", 1, 120),
        Key("prick_out", Form.YES_NO, "whether seedlings from a tray are pricked out"),
        Key("prick_out_spacing_mm", Form.WHOLE, "apart in the tray", 15, 150, "mm"),
        Key("per_cell", Form.WHOLE, "seeds to a cell or pot", 1, 30, "seeds"),
        Key("keep_per_cell", Form.WHOLE, "plants left there after thinning", 1, 30, "plants"),
        Key("thin_to_mm", Form.WHOLE, "last spacing in a row", 5, 1500, "mm"),
        Key("thin_first_mm", Form.WHOLE, "spacing after the first of two thinnings", 5, 1000, "mm"),
        Key("pot_on", Form.YES_NO, "whether it is moved to a bigger pot before planting"),
        _days("pot_on_days", "from pricking out to potting on", 1, 365),
        _days("pot_on_days_from_up", "from first up to potting on, where sown in cells", 1, 365),
        Key("pot_cm", Form.NUMBER, "width of that pot", 4, 40, "cm"),
        Key("pinch_pairs", Form.WHOLE, "pairs of true leaves to pinch at", 1, 12, "pairs"),
        Key("pinch_height_cm", Form.NUMBER, "height to pinch at", 2, 100, "cm"),
        _days("pinch_days", "days to pinch at, where nobody counted leaves", 1, 200),
        Key("feed", Form.YES_NO, "whether it wants feeding in its cell or pot"),
    ),
)

HARDENING = Section(
    "hardening",
    Hardening,
    "the move from cover to open air; without the table there is none",
    (
        _days("days", "the whole course", 1, 60),
        _days("least_days", "the shortest course that is still one", 1, 60),
        _days("after_potting_days", "rest after potting on before it starts", 0, 60),
        _celsius("limit_c", "forecast night at or below which a step goes back", -15, 20),
        Key("starts", Form.EDGE, "the day before which it does not begin"),
    ),
)

PLANTING = Section(
    "planting",
    Planting,
    "into its flowering or cropping place",
    (
        Key("spacing_cm", Form.WHOLE, "between plants", 1, 500, "cm"),
        Key("row_cm", Form.WHOLE, "between rows", 1, 500, "cm"),
        Key("depth", Form.TEXT, "how deep, in words"),
        _celsius("least_night_c", "five nights above this are wanted", -10, 20),
        Key("size_stem_mm", Form.NUMBER, "stem to plant at", 1, 50, "mm"),
        _span("from_sowing_days", "least and most days from sowing to planting"),
        Key("support", Form.YES_NO, "whether it wants canes, sticks or netting"),
    ),
)

PLANTING_WINDOW = Section(
    "planting.window",
    SowingWindow,
    "the time biennials and autumn-sown stock wait for",
    WINDOW_KEYS,
)

FLOWERING = Section(
    "flowering",
    Flowering,
    "flower, and the work it makes",
    (
        Key("colours", Form.TEXTS, "colours seen in the trade", high=30),
        _span("height_cm", "least and greatest height", 1, 600, "cm"),
        _span("from_planting_days", "least and most days from planting to flower"),
        _span("from_sowing_days", "least and most days from sowing to flower"),
        _days("lasts_days", "how long it flowers", 3, 300),
        Key(
            "deadhead",
            Form.CHOICE,
            "what is taken off",
            choices=("none", "heads", "spikes", "pick"),
        ),
        _days("deadhead_every_days", "from one round to the next", 1, 60),
        _days("deadhead_first_days", "from first flower to the first round", 0, 90),
        Key("shear", Form.YES_NO, "whether cutting back brings a second flush"),
    ),
)

FLOWERING_WINDOW = Section(
    "flowering.window",
    SowingWindow,
    "the time of flower where the site's year sets it, not the sowing",
    WINDOW_KEYS,
)

CROPPING = Section(
    "cropping",
    Cropping,
    "a vegetable's harvest",
    (
        _span("from_planting_days", "least and most days from planting to the first picking"),
        _span("from_sowing_days", "least and most days from sowing to the first picking", 0, 1200),
        _days("lasts_days", "how long it crops", 1, 300),
    ),
)

SEED = Section(
    "seed",
    SeedSaving,
    "whether and when home-saved seed is worth having",
    (
        Key("worth", Form.YES_NO, "whether it is worth saving"),
        _days("ripe_days", "from the middle of flowering to ripe", 5, 200),
        _days("sheds_within_days", "from ripe to lost", 0, 120),
        Key("keeps_years", Form.WHOLE, "how long it keeps, dry and cool", 0, 12, "years"),
        Key("bag", Form.YES_NO, "whether heads burst or shed at once and want a bag"),
        Key("fresh_only", Form.YES_NO, "whether only fresh seed is any good"),
    ),
)

SECTIONS = (
    CROP,
    GERMINATION,
    TREATMENTS,
    WINDOWS,
    GROWING,
    HARDENING,
    PLANTING,
    PLANTING_WINDOW,
    FLOWERING,
    FLOWERING_WINDOW,
    CROPPING,
    SEED,
)

SOURCE = Key("source", Form.TEXT, "where the figure comes from", high=300)
"""What a value in a crop's `sources` table may be."""


@cache
def sections_by_name() -> dict[str, Section]:
    """The sections by their dotted name."""
    return {section.name: section for section in SECTIONS}


@cache
def children(section: Section) -> tuple[Section, ...]:
    """The sections that lie directly inside this one."""
    inside = (other for other in SECTIONS if other.name)
    return tuple(other for other in inside if other.name.rpartition(".")[0] == section.name)


@cache
def by_short_name(section: Section) -> dict[str, Section]:
    """The sections directly inside this one by the last part of their names."""
    return {child.short: child for child in children(section)}


@cache
def source_names() -> frozenset[str]:
    """The names an entry of `sources` may have: `default`, a section, or a dotted key."""
    names = {"default", "sowing"}
    for section in SECTIONS:
        names.add(section.name or "default")
        names.update(section.dotted(key.name) for key in section.keys)
    return frozenset(names)
