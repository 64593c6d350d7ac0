"""Records: everything that happens, one thing each, never edited, only withdrawn.

A record's `about` names a batch, a place, a packet, a crop or nothing (the site). What it says in
numbers and words is in `figures`, a small flat mapping that goes to disk as it is.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import field
from datetime import date, time
from enum import StrEnum
from types import MappingProxyType

from benchround.core.frozen import dataclass

Figure = str | int | float | bool
NO_FIGURES: Mapping[str, Figure] = MappingProxyType({})


class Kind(StrEnum):
    """What can happen. The word on disk is the word on the screen."""

    # seed
    PLANNED = "planned"
    SOAKED = "soaked"
    CHILLED = "chilled"
    BROUGHT_OUT = "brought out"
    CHITTED = "chitted"
    SOWN = "sown"
    RESOWN = "resown"
    PLANTED_BULBS = "bulbs planted"
    # seedling
    LOOKED = "looked"
    FIRST_UP = "first up"
    COUNTED = "counted"
    STALLED = "stalled"
    UNCOVERED = "uncovered"
    SEED_LEAVES = "seed leaves"
    TRUE_LEAVES = "true leaves"
    THINNED = "thinned"
    PRICKED_OUT = "pricked out"
    TAKEN = "taken"
    GROWING_ON = "growing on"
    POTTED_ON = "potted on"
    PINCHED = "pinched"
    MEASURED = "measured"
    # outward
    HARDENING_BEGUN = "hardening begun"
    HARDENING_STEP = "hardening step"
    HARDENED = "hardened"
    READY = "ready"
    PLANTED_OUT = "planted out"
    GAPPED_UP = "gapped up"
    SUPPORTED = "supported"
    OVERWINTERING = "overwintering"
    # flower, crop and seed
    BUDS = "buds"
    FIRST_FLOWER = "first flower"
    CROPPED = "cropped"
    PICKED = "picked"
    DEADHEADED = "deadheaded"
    CUT_BACK = "cut back"
    GOING_OVER = "going over"
    MARKED_FOR_SEED = "marked for seed"
    LEFT_FOR_SEED = "left for seed"
    SEED_RIPE = "seed ripe"
    SEED_SAVED = "seed saved"
    PACKED = "packed"
    DORMANT = "dormant"
    LIFTED = "lifted"
    # care
    WATERED = "watered"
    FED = "fed"
    TURNED = "turned"
    WEEDED = "weeded"
    SPACED = "spaced"
    MOVED = "moved"
    WEIGHED = "weighed"
    MOISTURE = "moisture"  # still wet, already dry
    SHADED = "shaded"
    COVERED = "covered"
    PATROLLED = "patrolled"
    TRAP_SET = "trap set"
    TRAP_SEEN = "trap seen"
    TRAP_LIFTED = "trap lifted"
    # ends and mishaps
    LOST = "lost"
    COMPOSTED = "composted"
    WASHED = "washed"
    SPARES_SETTLED = "spares settled"
    FOUND = "found"  # a tray nobody can name comes on the books
    LABEL_LOST = "label lost"
    RELABELLED = "relabelled"
    SAME_AS = "same as"  # an unlabelled tray turned out to be a batch already on the books
    SEEN = "seen"
    WASHED_OUT = "washed out"
    NOTED = "noted"
    CANCELLED = "cancelled"
    # the place and the site
    SITE = "site"
    PLACE = "place"
    CONTAINER = "container"
    CROP_RULE = "crop rule"
    PACKET = "packet"
    SETTING = "setting"
    READING = "reading"
    OUTLOOK = "outlook"
    LID = "lid"
    DONE = "done"  # a task ticked that leaves no other trace
    PUT_OFF = "put off"
    CAUTION_READ = "caution read"
    WITHDRAWN = "withdrawn"


class Cause(StrEnum):
    """Why plants were lost: a closed list, because "died" teaches nothing."""

    DAMPING_OFF = "damping off"
    DRIED_OUT = "dried out"
    COOKED = "cooked"
    FROSTED = "frosted"
    DROWNED = "drowned"
    WASHED_OUT = "washed out"
    SLUG = "slug"
    MOUSE = "mouse"
    BIRD = "bird"
    DRAWN = "drawn"
    WIND = "wind"
    WRONG_LABEL = "wrong label"
    OLD_SEED = "old seed"
    FORGOTTEN = "forgotten"
    DISEASE = "disease"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class Draft:
    """A record not yet taken: what ticking a task or filling a sheet would write."""

    kind: Kind
    about: str = ""
    figures: Mapping[str, Figure] = field(default_factory=lambda: NO_FIGURES)
    note: str = ""
    at: time | None = None
    day: date | None = None  # None: the day of the round it is recorded in


@dataclass(frozen=True, slots=True)
class Record:
    """One thing that happened.

    Attributes:
        id: sortable and unique; later records of one machine sort after earlier ones.
        day: the grower's local day it happened on, which may lie before the day it was written.
        at: local time, where it matters.
        machine: short name of the computer that wrote it.
    """

    id: str
    day: date
    kind: Kind
    about: str = ""
    figures: Mapping[str, Figure] = field(default_factory=lambda: NO_FIGURES)
    note: str = ""
    at: time | None = None
    machine: str = ""

    def __hash__(self) -> int:
        return hash(self.id)

    @property
    def order(self) -> tuple[date, str]:
        """Where it stands in the story: by day, then by when it was written."""
        return (self.day, self.id)

    def number(self, name: str) -> float | None:
        """A figure as a number, or None where it is missing or not a number."""
        value = self.figures.get(name)
        if value is None or isinstance(value, (bool, str)):
            return None
        return float(value)

    def count(self, name: str = "count") -> int | None:
        """A figure as a whole number, or None."""
        value = self.figures.get(name)
        if type(value) is int or value is None:  # as nearly all
            return value
        number = self.number(name)
        return None if number is None else int(number)

    def text(self, name: str) -> str:
        """A figure as text, empty where it is missing."""
        value = self.figures.get(name, "")
        return value if isinstance(value, str) else ""

    def flag(self, name: str) -> bool:
        """Whether a figure is set and true."""
        return self.figures.get(name) is True


def withdrawn_by(records: Iterable[Record]) -> dict[str, str]:
    """Ids of withdrawn records, each with the id of the withdrawal that stands.

    A withdrawal may itself be withdrawn, which brings the record back; so the youngest is asked
    first, and what it takes back no longer takes anything back.
    """
    gone: dict[str, str] = {}
    withdrawals = [record for record in records if record.kind is Kind.WITHDRAWN]
    for record in sorted(withdrawals, key=lambda r: r.id, reverse=True):
        if record.id not in gone:
            gone[record.text("record")] = record.id
    return gone


def live(records: Sequence[Record]) -> tuple[Record, ...]:
    """The records that stand, without the withdrawals, in story order."""
    gone = withdrawn_by(records)
    standing = (r for r in records if r.kind is not Kind.WITHDRAWN and r.id not in gone)
    return tuple(sorted(standing, key=lambda r: r.order))
