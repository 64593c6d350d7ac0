"""The record book: all records, folded into a season, and folded again only where one was added.

Records fall into chapters: one for each batch and place, and one each for weather, settings,
putting off, ticking off and crop rules. Adding a record folds its own chapter again and leaves the
others as the very same objects, so whoever keeps results by object knows what did not change.
"""

from __future__ import annotations

from bisect import insort
from collections import defaultdict
from collections.abc import Callable, Collection, Iterable, Mapping
from datetime import date
from operator import attrgetter
from typing import TypeVar

from benchround.core.batch.batch import Batch, fold_batch
from benchround.core.crop.crop import Crop
from benchround.core.fitting import STORY_ORDER, require_after, require_among
from benchround.core.keeping import Keeping
from benchround.core.lifecycle import TABLE
from benchround.core.odd_figures import is_plain, without_odd
from benchround.core.record import Kind, Record, withdrawn_by
from benchround.core.season import PutOff, Season
from benchround.core.site import Place, place_from, site_from
from benchround.core.sky.weather import Weather, weather_from

SETTING_KINDS = frozenset(
    {Kind.SITE, Kind.PLACE, Kind.CONTAINER, Kind.PACKET, Kind.SETTING, Kind.CAUTION_READ}
)

_id, _day = attrgetter("id"), attrgetter("day")

Chapter = tuple[str, str]
CropRules = Callable[[tuple[Record, ...]], Mapping[str, Crop]]


SHARED: dict[Kind, Chapter] = {
    Kind.READING: ("weather", ""),
    Kind.OUTLOOK: ("weather", ""),
    Kind.PUT_OFF: ("put off", ""),
    Kind.DONE: ("done", ""),
    Kind.CROP_RULE: ("crop rules", ""),
    **dict.fromkeys(SETTING_KINDS, ("settings", "")),
}
"""Kinds that share one chapter, whatever they are about."""
NOT_OF_BATCHES = frozenset(kind for kind in Kind if kind is Kind.LID or kind not in TABLE)
"""Kinds a batch cannot be told."""
APART = NOT_OF_BATCHES | SHARED.keys()


def chapter_of(record: Record) -> Chapter:
    """The chapter a record belongs to: its name and what it is about."""
    kind = record.kind
    shared = SHARED.get(kind)
    if shared is not None:
        return shared
    if kind in NOT_OF_BATCHES or record.figures.get("of_place") is True:
        return "place", record.about
    return "batch", record.about


class RecordBook:
    """Records in, season out.

    Args:
        records: all records, in any order, withdrawals included.
        crop_rules: gives the crop library with the overrides of the records handed to it.
    """

    def __init__(self, records: Iterable[Record], crop_rules: CropRules) -> None:
        self._crop_rules = crop_rules
        self._by_id: dict[str, Record] = {}
        self._chapters: dict[Chapter, list[Record]] = {}
        self._withdrawals: list[Record] = []
        self._withdrawn: frozenset[str] = frozenset()
        self._batches: dict[str, Batch] = {}
        self._doubts: dict[str, tuple[str, ...]] = {}
        self._odd: dict[str, tuple[str, ...]] = {}
        self._place_log: dict[str, tuple[Record, ...]] = {}
        self._put_offs: dict[str, PutOff] = {}
        self._done: dict[tuple[str, str, str], date] = {}
        self._weather = Weather()
        self._site = site_from(None)
        self._places: tuple[Place, ...] = ()
        self._settings: dict[Kind, dict[str, Record]] = {kind: {} for kind in SETTING_KINDS}
        self._values: dict[str, str] = {}
        self._cautions_read: dict[str, date] = {}
        self._crops: Mapping[str, Crop] = {}
        self._keeping = Keeping()
        self._rules_read = False
        self.season = Season(crops={})
        self._read(tuple(records))

    def __contains__(self, name: str) -> bool:
        return name in self._by_id

    def __len__(self) -> int:
        return len(self._by_id)

    def record(self, name: str) -> Record | None:
        """A record by its id, withdrawn or not."""
        return self._by_id.get(name)

    def stands(self, name: str) -> bool:
        """Whether a record is there and not withdrawn."""
        return name in self._by_id and name not in self._withdrawn

    def add(self, records: Iterable[Record]) -> Season:
        """Take more records in and give the season that follows."""
        self._take(records)
        return self.season

    def check(self, records: Iterable[Record]) -> None:
        """Look whether the records of one act fit the season, without taking them in.

        Raises:
            IllegalRecordError: one does not fit its batch as it would stand with all of them.
        """
        told: defaultdict[str, list[Record]] = defaultdict(list)
        for record in records:
            name, about = chapter_of(record)
            if name == "batch":
                told[about].append(record)
        for about, new in told.items():
            new.sort(key=STORY_ORDER)
            batch = self._batches.get(about)
            if batch is not None and new[0].day < batch.records[-1].day:
                strict = not self._doubts.get(about)
                require_among(self._live(("batch", about)), new, about, strict)
            else:
                require_after(batch, new, about)

    def _read(self, records: tuple[Record, ...]) -> None:
        """Take in all records of a season at once.

        They are sorted once, by id and then by day, which leaves every chapter in story order.
        """
        last_first = records[::-1]  # so that the first of two stands
        self._by_id = dict(zip(map(_id, last_first), last_first, strict=True))
        told = sorted(self._by_id.values(), key=_id)
        told.sort(key=_day)
        stories: defaultdict[str, list[Record]] = defaultdict(list)
        for record in told:
            figures = record.figures
            if record.kind in APART or "of_place" in figures:
                self._put(self._fit(record), stories)
            elif not figures or is_plain(record):  # as nearly all of them
                stories[record.about].append(record)
            else:
                stories[record.about].append(self._fit(record))
        self._chapters.update({("batch", about): lines for about, lines in stories.items()})
        self._withdraw()
        self._fold(self._chapters)

    def _fit(self, record: Record) -> Record:
        """A record as it can be told: figures that cannot be are left out and doubted."""
        fitting, doubts = without_odd(record)
        if doubts:
            self._odd[record.id] = doubts
        return fitting

    def _put(self, record: Record, stories: defaultdict[str, list[Record]]) -> None:
        """Put a record that may be of no batch where it belongs."""
        if record.kind is Kind.WITHDRAWN:
            self._withdrawals.append(record)
            return
        name, about = chapter = chapter_of(record)
        lines = stories[about] if name == "batch" else self._chapters.setdefault(chapter, [])
        lines.append(record)

    def _take(self, records: Iterable[Record]) -> None:
        changed: set[Chapter] = set()
        withdrawals = len(self._withdrawals)
        for record in records:
            if record.id in self._by_id:
                continue
            self._by_id[record.id] = record
            if record.kind is Kind.WITHDRAWN:
                self._withdrawals.append(record)
                continue
            chapter = chapter_of(record)
            changed.add(chapter)
            insort(self._chapters.setdefault(chapter, []), self._fit(record), key=STORY_ORDER)
        if len(self._withdrawals) > withdrawals:
            changed |= self._withdraw()
        self._fold(changed)

    def _withdraw(self) -> set[Chapter]:
        """Find anew what is withdrawn; the chapters in which that changed."""
        now = frozenset(withdrawn_by(self._withdrawals))
        touched = {
            chapter_of(self._by_id[name])
            for name in now ^ self._withdrawn
            if name in self._by_id and self._by_id[name].kind is not Kind.WITHDRAWN
        }
        self._withdrawn = now
        return touched

    def _live(self, chapter: Chapter) -> list[Record]:
        lines = self._chapters.get(chapter, [])
        if not self._withdrawn:
            return lines
        return [record for record in lines if record.id not in self._withdrawn]

    def _fold(self, changed: Collection[Chapter]) -> None:
        batches = dict(self._batches)
        for name, about in changed:
            if name == "batch":
                self._fold_batch(about, batches)
            elif name == "place":
                self._place_log = {**self._place_log, about: tuple(self._live((name, about)))}
        if batches.keys() != self._batches.keys():
            batches = dict(sorted(batches.items()))  # the same order, whatever came first
        if any(name == "batch" for name, _ in changed):
            self._batches = batches
        if ("weather", "") in changed:
            self._weather = weather_from(self._live(("weather", "")))
        if ("settings", "") in changed:
            self._fold_settings()
        if ("put off", "") in changed:
            self._put_offs = _put_offs(self._live(("put off", "")))
        if ("done", "") in changed:
            self._done = _done(self._live(("done", "")))
        if ("crop rules", "") in changed or not self._rules_read:
            self._crops = self._crop_rules(tuple(self._live(("crop rules", ""))))
            self._rules_read = True
        self.season = self._assemble()

    def _fold_batch(self, about: str, batches: dict[str, Batch]) -> None:
        batch, doubts = fold_batch(about, self._live(("batch", about)))
        if batch is None:
            batches.pop(about, None)
        else:
            batches[about] = batch
        if doubts:
            self._doubts[about] = doubts
        else:
            self._doubts.pop(about, None)

    def _fold_settings(self) -> None:
        latest: dict[Kind, dict[str, Record]] = {kind: {} for kind in SETTING_KINDS}
        for record in self._live(("settings", "")):
            latest[record.kind][record.about] = record
        latest[Kind.CONTAINER] = _same_if_equal(
            self._settings[Kind.CONTAINER], latest[Kind.CONTAINER]
        )
        self._settings = latest
        values = {
            about: str(record.figures.get("value", ""))
            for about, record in latest[Kind.SETTING].items()
        }
        self._values = _same_if_equal(self._values, values)
        self._cautions_read = {
            about: record.day for about, record in latest[Kind.CAUTION_READ].items()
        }
        self._site = _same_if_equal(self._site, site_from(latest[Kind.SITE].get("")))
        places = (
            place_from(record)
            for record in latest[Kind.PLACE].values()
            if not record.flag("removed")
        )
        walked = tuple(sorted(places, key=lambda place: (place.order, place.code)))
        self._places = _same_if_equal(self._places, walked)

    def _odd_told(self) -> tuple[str, ...]:
        standing = (name for name in sorted(self._odd) if name not in self._withdrawn)
        return tuple(text for name in standing for text in self._odd[name])

    def _assemble(self) -> Season:
        said = self._settings
        doubts = tuple(text for about in sorted(self._doubts) for text in self._doubts[about])
        return Season(
            crops=self._crops,
            site=self._site,
            places=self._places,
            batches=self._batches,
            weather=self._weather,
            place_log=self._place_log,
            put_offs=self._put_offs,
            done=self._done,
            packet_records=tuple(said[Kind.PACKET].values()),
            containers=said[Kind.CONTAINER],
            settings=self._values,
            cautions_read=self._cautions_read,
            doubts=(*doubts, *self._odd_told(), *self._weather.doubts),
            keeping=self._keeping,
        )


Said = TypeVar("Said")


def _same_if_equal(old: Said, new: Said) -> Said:
    """The old object where nothing changed, so that what was reckoned from it still holds."""
    return old if old == new else new


def _put_offs(records: Iterable[Record]) -> dict[str, PutOff]:
    found: dict[str, PutOff] = {}
    for record in records:
        try:
            until = date.fromisoformat(record.text("until"))
        except ValueError:
            continue
        key = f"{record.text('family')}:{record.about}:{record.text('part')}"
        found[key] = PutOff(until, record.text("reason"), record.order)
    return found


def _done(records: Iterable[Record]) -> dict[tuple[str, str, str], date]:
    return {
        (record.text("family"), record.about, record.text("part")): record.day for record in records
    }
