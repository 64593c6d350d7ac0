"""Which figures each kind of record may be given when it is typed, and what they may be.

One list for every way of recording by hand. What a task's tick asks for comes with the task.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from types import MappingProxyType

from benchround.core.crop.crop import Covering, Raising
from benchround.core.frame.place import SAID_POSITIONS
from benchround.core.frozen import dataclass
from benchround.core.record import Cause, Kind
from benchround.core.sky.known_day import MOST_GUST_KMH, MOST_RAIN_HOUR_MM, MOST_RAIN_MM
from benchround.core.sky.weather import COLDEST_C, HOTTEST_C
from benchround.core.water.fit import Moisture


class Form(StrEnum):
    """How a figure is typed."""

    WHOLE = "a whole number"
    NUMBER = "a number"
    TEXT = "text"
    YES_NO = "yes or no"
    DAY = "a day"
    CLOCK = "a time such as 17:30"
    CHOICE = "one of"
    PLACE = "a place"
    CROP = "a crop"
    BATCH = "a batch"


@dataclass(frozen=True, slots=True)
class FigureRule:
    """What one figure may be.

    Attributes:
        low, high: least and greatest number; for text `high` is the most letters.
    """

    name: str
    form: Form
    low: float = 0
    high: float = 1_000_000
    unit: str = ""
    choices: tuple[str, ...] = ()

    @property
    def allowed(self) -> str:
        """What may be typed, in words."""
        if self.form is Form.CHOICE:
            return f"one of {', '.join(self.choices)}"
        if self.form in (Form.WHOLE, Form.NUMBER):
            return f"{self.form} from {self.low:g} to {self.high:.10g} {self.unit}".rstrip()
        return f"text of at most {self.high:g} letters" if self.form is Form.TEXT else self.form


@dataclass(frozen=True, slots=True)
class KindRule:
    """What a kind of record may be given.

    Attributes:
        figures: names of figures, in the order they are told.
        needed: those without which it says nothing.
    """

    figures: tuple[str, ...]
    needed: frozenset[str]


def _whole(name: str, low: float = 0, high: float = 1_000_000, unit: str = "") -> FigureRule:
    return FigureRule(name, Form.WHOLE, low, high, unit)


def _number(name: str, low: float, high: float, unit: str = "") -> FigureRule:
    return FigureRule(name, Form.NUMBER, low, high, unit)


def _choice(name: str, *choices: str) -> FigureRule:
    return FigureRule(name, Form.CHOICE, choices=choices)


_COUNTS = ("count", "seeds", "wanted", "cells")
_FLAGS = (
    "chipped",
    "covered",
    "final",
    "off_heat",
    "cover_off",
    "back",
    "wilted",
    "saved",
    "treated",
)
_RULES = (
    *(_whole(name) for name in _COUNTS),
    *(FigureRule(name, Form.YES_NO) for name in _FLAGS),
    *(FigureRule(name, Form.PLACE) for name in ("place", "for_place", "sow_place")),
    *(FigureRule(name, Form.DAY) for name in ("sow_on", "sow_by")),
    *(FigureRule(name, Form.TEXT, high=80) for name in ("variety", "container", "packet")),
    *(FigureRule(name, Form.TEXT, high=200) for name in ("plan", "cover", "storage")),
    FigureRule("crop", Form.CROP),
    FigureRule("batch", Form.BATCH),
    FigureRule("storm_from", Form.CLOCK),
    _whole("per_cell", 1, 30, "seeds"),
    _whole("trays", 0, 1000),
    _whole("pairs", 0, 99, "pairs"),
    _whole("step", 1, 60),
    _whole("every_days", 1, 60, "days"),
    _whole("year", 1990, 2200),
    _whole("tested", 1, 10_000, "seeds"),
    _number("mean_per_clump", 0, 100),
    _number("depth_mm", 0, 200, "mm"),
    _number("heat_c", 0, 50, "C"),
    _number("temp_c", COLDEST_C, HOTTEST_C, "C"),
    _number("min_c", COLDEST_C, HOTTEST_C, "C"),
    _number("max_c", COLDEST_C, HOTTEST_C, "C"),
    _number("rain_mm", 0, MOST_RAIN_MM, "mm"),
    _number("rain_hour_mm", 0, MOST_RAIN_HOUR_MM, "mm"),
    _number("gust_kmh", 0, MOST_GUST_KMH, "km/h"),
    _number("sun_h", 0, 24, "h"),
    _number("days", 0, 400, "days"),
    _number("row_m", 0, 10_000, "m"),
    _number("length_m", 0.02, 20, "m"),
    _number("width_m", 0.02, 20, "m"),
    _number("cell_ml", 0.5, 50_000, "ml"),
    _number("pot_cm", 0, 100, "cm"),
    _number("stem_mm", 0, 500, "mm"),
    _number("height_cm", 0, 1000, "cm"),
    _number("spacing_mm", 0, 5000, "mm"),
    _number("spacing_cm", 1, 500, "cm"),
    _number("grams", 0, 1_000_000, "g"),
    _number("germination", 0, 1),
    _choice("raising", *Raising),
    _choice("covering", *Covering, "perlite"),
    _choice("water", "mains", "butt", "boiled"),
    _choice("rest", "kept", "composted"),
    _choice("how", "above", "below"),
    _choice("said", *Moisture),
    _choice("position", *SAID_POSITIONS, "latched"),
    _choice("cause", *Cause),
)
RULES: Mapping[str, FigureRule] = MappingProxyType({rule.name: rule for rule in _RULES})
"""Every figure by its name."""

_OWN = {(Kind.STALLED, "cause"): _choice("cause", "heat", "cold")}
"""Figures that mean something else with one kind."""

_SEED = "crop! variety wanted seeds cells container place for_place packet"
_SKY = "min_c max_c rain_mm rain_hour_mm gust_kmh sun_h"
_KINDS: dict[Kind, str] = {
    Kind.PLANNED: f"{_SEED} sow_on sow_by",
    Kind.SOAKED: "seeds chipped",
    Kind.CHILLED: "crop variety wanted seeds days temp_c place sow_place packet",
    Kind.BROUGHT_OUT: "place",
    Kind.CHITTED: "crop variety wanted seeds place packet",
    Kind.SOWN: f"{_SEED.replace('!', '')} per_cell raising covering depth_mm heat_c row_m trays "
    "water covered",
    Kind.RESOWN: "seeds cells place",
    Kind.PLANTED_BULBS: "crop variety wanted count depth_mm spacing_cm place container",
    Kind.LOOKED: "",
    Kind.FIRST_UP: "count",
    Kind.COUNTED: "count! final cells mean_per_clump",
    Kind.STALLED: "cause",
    Kind.UNCOVERED: "off_heat cover_off place",
    Kind.SEED_LEAVES: "count place",
    Kind.TRUE_LEAVES: "count",
    Kind.THINNED: "count spacing_mm",
    Kind.PRICKED_OUT: "count cells container place rest",
    Kind.TAKEN: "count",
    Kind.GROWING_ON: "place container",
    Kind.POTTED_ON: "count pot_cm container place rest",
    Kind.PINCHED: "count pairs",
    Kind.MEASURED: "stem_mm pairs height_cm",
    Kind.HARDENING_BEGUN: "count place rest",
    Kind.HARDENING_STEP: "step back wilted",
    Kind.HARDENED: "place",
    Kind.READY: "place",
    Kind.PLANTED_OUT: "count place spacing_cm rest",
    Kind.GAPPED_UP: "count",
    Kind.SUPPORTED: "",
    Kind.OVERWINTERING: "place",
    Kind.BUDS: "",
    Kind.FIRST_FLOWER: "count",
    Kind.CROPPED: "count grams",
    Kind.PICKED: "count grams",
    Kind.DEADHEADED: "",
    Kind.CUT_BACK: "",
    Kind.GOING_OVER: "",
    Kind.MARKED_FOR_SEED: "count",
    Kind.LEFT_FOR_SEED: "count rest",
    Kind.SEED_RIPE: "",
    Kind.SEED_SAVED: "packet grams",
    Kind.PACKED: "packet seeds grams",
    Kind.DORMANT: "",
    Kind.LIFTED: "count",
    Kind.WATERED: "how",
    Kind.FED: "every_days",
    Kind.TURNED: "",
    Kind.WEEDED: "",
    Kind.SPACED: "spacing_mm",
    Kind.MOVED: "place!",
    Kind.WEIGHED: "grams!",
    Kind.MOISTURE: "said!",
    Kind.SHADED: "",
    Kind.COVERED: "cover",
    Kind.PATROLLED: "",
    Kind.TRAP_SET: "",
    Kind.TRAP_SEEN: "",
    Kind.TRAP_LIFTED: "",
    Kind.LOST: "count cause",
    Kind.COMPOSTED: "count",
    Kind.WASHED: "",
    Kind.SPARES_SETTLED: "count",
    Kind.FOUND: "crop variety wanted count cells container place",
    Kind.LABEL_LOST: "",
    Kind.RELABELLED: "crop variety",
    Kind.SAME_AS: "batch!",
    Kind.SEEN: "place",
    Kind.WASHED_OUT: "rain_mm",
    Kind.NOTED: "variety wanted",
    Kind.CANCELLED: "",
    Kind.READING: _SKY,
    Kind.OUTLOOK: f"{_SKY} storm_from",
    Kind.LID: "position! plan",
    Kind.CONTAINER: "cells cell_ml! length_m! width_m!",
    Kind.PACKET: "crop! variety year seeds grams germination tested saved treated storage",
    Kind.CAUTION_READ: "",
}


def _kind_rule(words: str) -> KindRule:
    names = words.split()
    return KindRule(
        tuple(name.rstrip("!") for name in names),
        frozenset(name.rstrip("!") for name in names if name.endswith("!")),
    )


KINDS: Mapping[Kind, KindRule] = MappingProxyType(
    {kind: _kind_rule(words) for kind, words in _KINDS.items()}
)
"""The kinds that can be typed, with their figures."""

ELSEWHERE: Mapping[Kind, str] = MappingProxyType(
    {
        Kind.SITE: "settings",
        Kind.PLACE: "place set",
        Kind.SETTING: "settings",
        Kind.CROP_RULE: "crops CROP set",
        Kind.DONE: "tick",
        Kind.PUT_OFF: "put-off",
        Kind.WITHDRAWN: "undo",
    }
)
"""The kinds that have a command of their own instead."""

OF_PLACES = frozenset(
    {
        Kind.WATERED,
        Kind.MOISTURE,
        Kind.SHADED,
        Kind.COVERED,
        Kind.WEEDED,
        Kind.PATROLLED,
        Kind.TRAP_SET,
        Kind.TRAP_SEEN,
        Kind.TRAP_LIFTED,
        Kind.NOTED,
        Kind.LID,
        Kind.READING,
    }
)
"""Kinds that can be said of a whole place."""

OF_SITE = frozenset({Kind.READING, Kind.OUTLOOK, Kind.NOTED})
"""Kinds that can be said of the whole site."""

OF_NAMES = frozenset({Kind.CONTAINER, Kind.PACKET, Kind.CAUTION_READ})
"""Kinds that are about a thing with a name of its own."""

NEVER_ABOUT_A_BATCH = frozenset({Kind.READING, Kind.OUTLOOK, Kind.LID}) | OF_NAMES


def figure_rule(kind: Kind, name: str) -> FigureRule:
    """What a figure may be with a kind."""
    return _OWN.get((kind, name)) or RULES[name]
