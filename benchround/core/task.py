"""Tasks: one thing to do today, with its window, its harm if left, and its why. Never stored."""

from __future__ import annotations

from dataclasses import field
from datetime import date, time
from enum import IntEnum, StrEnum

from benchround.core.frozen import dataclass
from benchround.core.record import Draft


class Family(StrEnum):
    """What kind of thing is to be done."""

    THERMOMETER = "read thermometer"
    LIDS = "lids"
    SHUT = "shut lids"
    SHADE = "shade"
    STRAP = "strap"
    FLEECE = "fleece"
    LOOK = "look"
    UNCOVER = "uncover"
    WATER = "water"
    COUNT = "count"
    RESOW = "re-sow"
    THIN = "thin"
    PRICK_OUT = "prick out"
    POT_ON = "pot on"
    PINCH = "pinch"
    MEASURE = "measure"
    TURN = "turn"
    FEED = "feed"
    SOAK = "soak"
    CHILL = "chill"
    SOW = "sow"
    SOW_AGAIN = "sow again"
    WEED = "weed"
    HARDEN = "harden off"
    PLANT_OUT = "plant out"
    SPARES = "spares"
    SUPPORT = "support"
    DEADHEAD = "deadhead"
    PICK = "pick"
    MARK_SEED = "mark for seed"
    SAVE_SEED = "save seed"
    PACK_SEED = "pack seed"
    CLEAR = "clear"
    BULBS = "bulbs"
    RELABEL = "relabel"
    LOCATE = "locate"
    PESTS = "pests"
    WASH = "wash"
    AIR = "air"
    OVERWINTER = "overwinter"
    STANDS = "how it stands"


ASKED_ANEW = frozenset(
    (Family.THERMOMETER, Family.LIDS, Family.SHUT, Family.SHADE, Family.STRAP, Family.FLEECE)
)
"""What each day's weather asks for by itself: it can be left out of a day, not moved to another."""


class Standing(StrEnum):
    """How a task stands today. Held is not overdue: weather or room forbids it."""

    EARLY = "early"
    DUE = "due"
    LATE = "late"  # seed that should have come up
    OVERDUE = "overdue"
    HELD = "held"


class Harm(IntEnum):
    """What leaving it costs, worst first."""

    DIES_TODAY = 0
    SPOILS_THIS_WEEK = 1
    GETS_LATE = 2


class Slot(IntEnum):
    """The part of the day it belongs to."""

    FIRST = 0
    MORNING = 1
    MIDDAY = 2
    AFTERNOON = 3
    EVENING = 4


SLOT_WORDS = {
    Slot.FIRST: "first thing",
    Slot.MORNING: "morning",
    Slot.MIDDAY: "midday",
    Slot.AFTERNOON: "late afternoon",
    Slot.EVENING: "evening",
}
HARM_WORDS = {
    Harm.DIES_TODAY: "dies today",
    Harm.SPOILS_THIS_WEEK: "spoils this week",
    Harm.GETS_LATE: "only gets late",
}


@dataclass(frozen=True, slots=True)
class Window:
    """The earliest sensible day, the day it falls due, and the last day it is not overdue."""

    earliest: date
    best: date
    latest: date


@dataclass(frozen=True, slots=True)
class Why:
    """The rule behind a task, the figures it used, and where the rule comes from."""

    rule: str
    figures: tuple[str, ...] = ()
    source: str = "common practice, no source"

    def __str__(self) -> str:
        figures = "; ".join(self.figures)
        return f"{self.rule}{': ' if figures else ''}{figures} [{self.source}]"


@dataclass(frozen=True, slots=True)
class Hold:
    """A veto: why it is forbidden today, and the day to look again."""

    because: str
    look_again: date | None = None


@dataclass(frozen=True, slots=True)
class Ask:
    """A figure a tick can take. `needed` means the tick cannot be written without it.

    `into` is the figure's name in the record; `choices` limits what may be typed. `opens` means
    that it is put before the grower even where a default stands in it.
    """

    into: str
    label: str
    default: str = ""
    needed: bool = False
    whole: bool = True
    choices: tuple[str, ...] = ()
    most: int | None = None
    opens: bool = False
    hint: str = ""

    @property
    def to_be_answered(self) -> bool:
        """Whether a tick with one key would skip something the grower has to say."""
        return self.opens or (self.needed and not self.default)


@dataclass(frozen=True, slots=True)
class Task:
    """One thing to do.

    Attributes:
        about: batch id, place code, or empty for the site.
        part: the part of the batch, empty for the main one.
        window: earliest, best and latest day.
        ticks: the records that ticking writes, in order; `asks` fill figures of the first.
        caution: ids of cautions to show before the work, worst first.
    """

    family: Family
    about: str
    part: str
    crop: str
    variety: str
    place: str
    window: Window
    standing: Standing
    overdue_days: int
    harm: Harm
    slot: Slot
    instruction: str
    why: Why
    ticks: tuple[Draft, ...]
    asks: tuple[Ask, ...] = ()
    hold: Hold | None = None
    cautions: tuple[str, ...] = ()
    at: time | None = None
    put_off: str = ""

    @property
    def key(self) -> str:
        """What makes it the same task tomorrow: family, batch or place, and part."""
        return f"{self.family}:{self.about}:{self.part}"


@dataclass(frozen=True, slots=True)
class Round:
    """A day's tasks in walking order, and what was assumed in making them."""

    day: date
    tasks: tuple[Task, ...]
    assumed: tuple[str, ...] = ()
    doubts: tuple[str, ...] = field(default=())

    @property
    def today(self) -> tuple[Task, ...]:
        """What is to be done today."""
        doing = (Standing.DUE, Standing.LATE, Standing.OVERDUE)
        return tuple(task for task in self.tasks if task.standing in doing)

    @property
    def held(self) -> tuple[Task, ...]:
        """What weather or room forbids."""
        return tuple(task for task in self.tasks if task.standing is Standing.HELD)

    @property
    def early(self) -> tuple[Task, ...]:
        """What may be done but is not due yet."""
        return tuple(task for task in self.tasks if task.standing is Standing.EARLY)

    @property
    def overdue(self) -> tuple[Task, ...]:
        """What is overdue, worst harm first, then longest."""
        late = (task for task in self.tasks if task.standing is Standing.OVERDUE)
        return tuple(sorted(late, key=lambda t: (t.harm, -t.overdue_days, t.about, t.family)))

    def find(self, key: str) -> Task | None:
        """A task by its key."""
        return next((task for task in self.tasks if task.key == key), None)
