"""What a caution is: a few words on how work can hurt someone, and how often to say them."""

from __future__ import annotations

from enum import StrEnum

from benchround.core.frozen import dataclass


class Severity(StrEnum):
    """How badly it can end, from least to most."""

    LOW = "low"
    MEDIUM = "medium"
    HIGH = "high"
    VERY_HIGH = "very high"


class Repeat(StrEnum):
    """How often it is said again."""

    EVERY_TIME = "every time"
    FIRST_OF_DAY = "first of day"
    YEARLY = "first use then yearly"
    PER_CROP = "first time per crop"
    AT_SETUP = "at setup"
    CROP_PAGE = "crop page"


WORST_FIRST = (Severity.VERY_HIGH, Severity.HIGH, Severity.MEDIUM, Severity.LOW)


@dataclass(frozen=True, slots=True)
class Caution:
    """One caution.

    Attributes:
        id: "C01" to "C57"; kept for good, because what was read is recorded by it.
        group: the kind of harm in one word, such as "dust" or "glass".
        short: one line of at most 60 characters.
        full: what can happen and what to do, in one to three sentences; never a dose.
        source: where the fact is from, each with its mark (read / from memory / our own rule).
    """

    id: str
    group: str
    severity: Severity
    short: str
    full: str
    repeat: Repeat
    source: str
