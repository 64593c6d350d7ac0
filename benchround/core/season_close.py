"""Closing a season: which records the next one begins with, and why each batch comes or stays.

The next season begins with records of the old one that keep their ids, so that the two folders can
be merged, or closed again, and nothing is there twice. What comes along:

* settings, site, places, containers, packets, cautions read: of each the one that counts now;
  all figures of crops that were changed;
* every batch that lives on, with its whole story;
* of every other batch all but the daily care: what was sown, looked at, counted, moved, lost and
  noted. What the seed taught rests on these, and so do packets' contents and the free batch ids;
* the weather of every day, because days to emergence are learnt as heat, as far as it still says
  something no later record of the day does; what was said of how places dry; and of other work on
  places the last weeks.

A batch that is left behind alive ends with a record of its own in the new season. The old folder
is not touched.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date, timedelta

from benchround.core.batch.batch import Batch
from benchround.core.book import chapter_of
from benchround.core.crop.crop import Crop, Hardiness, PlantClass
from benchround.core.frozen import dataclass
from benchround.core.lifecycle import BEFORE, OUT, Stage
from benchround.core.record import Draft, Figure, Kind, Record, live
from benchround.core.season import Season
from benchround.core.sky.weather import COLDEST_C, HOTTEST_C

DAILY_CARE = frozenset(
    {
        Kind.WATERED,
        Kind.FED,
        Kind.TURNED,
        Kind.WEEDED,
        Kind.SPACED,
        Kind.WEIGHED,
        Kind.MOISTURE,
        Kind.SHADED,
        Kind.COVERED,
        Kind.PATROLLED,
        Kind.TRAP_SET,
        Kind.TRAP_SEEN,
        Kind.TRAP_LIFTED,
        Kind.PINCHED,
        Kind.MEASURED,
        Kind.HARDENING_STEP,
        Kind.SUPPORTED,
        Kind.BUDS,
        Kind.PICKED,
        Kind.DEADHEADED,
    }
)
"""Daily care: of a batch that is over it changes nothing any more."""
TELLING = ("place", "container", "variety", "crop", "wanted")
"""Figures that change a batch whatever the kind of record; care that says one comes along."""
LIVES_ON = {
    PlantClass.BIENNIAL: "a biennial",
    PlantClass.HARDY_PERENNIAL: "a perennial",
    PlantClass.TENDER_PERENNIAL: "a tender perennial",
    PlantClass.BULB: "a bulb",
    PlantClass.UNKNOWN: "nobody knows what it is",
}
PLACE_DAYS = 60
"""Work on places further back is left behind; waterings count for 30 days, frames are fitted to
the readings of 30 (our proposal)."""
KEPT_OF_PLACES = frozenset({Kind.MOISTURE, Kind.NOTED})
LEFT_NOTE = "left behind when the season was closed"


@dataclass(frozen=True, slots=True)
class Fate:
    """What becomes of a batch: whether it lives on in the next season, and why."""

    batch: str
    crop: str
    variety: str
    stage: str
    carried: bool
    because: str


@dataclass(frozen=True, slots=True)
class Closing:
    """What the next season begins with.

    Attributes:
        records: records of the old season, by id, ids kept.
        ends: new records that end what is left behind alive.
        fates: every batch that has not ended, by id.
        left: how many records stay behind.
    """

    records: tuple[Record, ...]
    ends: tuple[Draft, ...]
    fates: tuple[Fate, ...]
    left: int


def close_season(
    records: tuple[Record, ...],
    season: Season,
    day: date,
    *,
    also: frozenset[str] = frozenset(),
    leave: frozenset[str] = frozenset(),
) -> Closing:
    """What the season after this one begins with.

    Args:
        records: all records, withdrawals included.
        season: what they amount to.
        day: the day it is closed.
        also: batches to carry over although they would be left.
        leave: batches to leave although they would be carried over.
    """
    fates = tuple(
        _fate(batch, season.crop(batch.crop), also, leave)
        for batch in sorted(season.batches.values(), key=lambda batch: batch.id)
        if not batch.ended
    )
    carried = frozenset(fate.batch for fate in fates if fate.carried)
    kept: list[Record] = []
    for chapter, lines in _chapters(live(records)).items():
        kept.extend(_of_chapter(chapter, lines, carried, day))
    return Closing(
        records=tuple(sorted(kept, key=lambda record: record.id)),
        ends=tuple(_ends(season, fates)),
        fates=fates,
        left=len(records) - len(kept),
    )


def _fate(batch: Batch, crop: Crop, also: frozenset[str], leave: frozenset[str]) -> Fate:
    living = [part for part in batch.parts if not part.ended]
    stage = living[0].stage
    carried, because = _lives_on(crop, [part.stage for part in living])
    if batch.id in also:
        carried, because = True, "you said so"
    if batch.id in leave:
        carried, because = False, "you said so"
    return Fate(batch.id, crop.key, batch.variety, str(stage), carried, because)


def _lives_on(crop: Crop, stages: list[Stage]) -> tuple[bool, str]:
    if crop.plant_class in LIVES_ON:
        return True, LIVES_ON[crop.plant_class]
    if any(stage not in OUT or stage is Stage.OVERWINTERING for stage in stages):
        return True, "still under way"
    edible = crop.plant_class in (PlantClass.VEGETABLE, PlantClass.HERB)
    if edible and crop.hardiness is Hardiness.HARDY:
        return True, "hardy, it may stand the winter"
    return False, f"a {crop.hardiness} {crop.plant_class}" if edible else f"a {crop.plant_class}"


def _chapters(records: Iterable[Record]) -> Mapping[tuple[str, str], list[Record]]:
    found: dict[tuple[str, str], list[Record]] = {}
    for record in records:
        found.setdefault(chapter_of(record), []).append(record)
    return found


def _of_chapter(
    chapter: tuple[str, str], lines: list[Record], carried: frozenset[str], day: date
) -> list[Record]:
    """The records of one chapter that come along; they are in story order."""
    name, about = chapter
    match name:
        case "settings":
            return list({(record.kind, record.about): record for record in lines}.values())
        case "crop rules":
            return lines
        case "weather":
            return _still_telling(lines)
        case "batch":
            return lines if about in carried else [r for r in lines if tells(r)]
        case "place":
            since = day - timedelta(days=PLACE_DAYS)
            return [r for r in lines if r.day >= since or r.kind in KEPT_OF_PLACES]
        case "put off":
            last = {(r.text("family"), r.about, r.text("part")): r for r in lines}
            return [r for r in last.values() if r.text("until") >= day.isoformat()]
        case _:
            return [r for r in lines if r.about in carried]


def tells(record: Record) -> bool:
    """Whether a record of a batch that is over still says something of it."""
    return record.kind not in DAILY_CARE or any(name in record.figures for name in TELLING)


def _still_telling(lines: list[Record]) -> list[Record]:
    """Weather records that say something no later one of the same day and place says."""
    said: set[tuple[bool, str, date, str]] = set()
    kept: list[Record] = []
    for record in sorted(lines, key=lambda r: r.id, reverse=True):
        reading = record.kind is Kind.READING
        figures = {(reading, record.about, record.day, name) for name in record.figures}
        if figures - said:
            kept.append(record)
            said |= figures if _can_be(record) else set()
    return kept


def _can_be(record: Record) -> bool:
    """Whether the temperatures can be; a record whose cannot is passed over when it is read."""
    known = [t for t in (record.number("min_c"), record.number("max_c")) if t is not None]
    return known == sorted(known) and all(COLDEST_C <= temp_c <= HOTTEST_C for temp_c in known)


def _ends(season: Season, fates: Iterable[Fate]) -> Iterable[Draft]:
    for fate in fates:
        if fate.carried:
            continue
        for part in season.batches[fate.batch].parts:
            if part.ended:
                continue
            kind = Kind.CANCELLED if part.stage in BEFORE else Kind.COMPOSTED
            figures: dict[str, Figure] = {"part": part.name} if part.name else {}
            yield Draft(kind, fate.batch, figures, LEFT_NOTE)
