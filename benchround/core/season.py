"""A season: everything the records amount to, ready to be asked."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date

from benchround.core.batch import Batch, fold_batch
from benchround.core.crop import Crop, Hardiness, PlantClass, Raising
from benchround.core.lifecycle import TABLE
from benchround.core.record import Kind, Record, live
from benchround.core.site import Place, Site, place_from, site_from
from benchround.core.weather import Weather, weather_from

UNKNOWN_CROP = Crop(
    key="unknown",
    name="Unknown",
    latin="",
    plant_class=PlantClass.UNKNOWN,
    hardiness=Hardiness.TENDER,
    raising=Raising.CELLS,
)
"""Rules for a tray nobody can name: nothing is proposed that could harm a tender plant."""


@dataclass(frozen=True, slots=True)
class PutOff:
    """A task moved to a later day, and the grower's reason."""

    until: date
    reason: str


@dataclass(frozen=True, slots=True)
class Packet:
    """Bought or saved seed; None where the packet does not say."""

    id: str
    crop: str
    variety: str
    year: int | None = None
    seeds: int | None = None
    grams: float | None = None
    germination: float | None = None
    saved: bool = False
    treated: bool = False
    storage: str = ""
    used: int = 0

    @property
    def left(self) -> int | None:
        """Seeds left; None where the number was never said."""
        return None if self.seeds is None else max(0, self.seeds - self.used)


@dataclass(frozen=True)
class Season:
    """Everything the live records say.

    Attributes:
        crops: crop rules by key, the season's own overrides applied.
        place_log: records about a place or the site that are no settings, by what they are about.
        done: (family, about, part) -> last day it was ticked off without another trace.
        cautions_read: caution id (with `:crop` where it is told once per crop) -> last day read.
        doubts: sentences about records that do not fit or cannot be.
    """

    crops: Mapping[str, Crop]
    site: Site = field(default_factory=Site)
    places: tuple[Place, ...] = ()
    batches: Mapping[str, Batch] = field(default_factory=dict)
    weather: Weather = field(default_factory=Weather)
    place_log: Mapping[str, tuple[Record, ...]] = field(default_factory=dict)
    put_offs: Mapping[str, PutOff] = field(default_factory=dict)
    done: Mapping[tuple[str, str, str], date] = field(default_factory=dict)
    packets: Mapping[str, Packet] = field(default_factory=dict)
    containers: Mapping[str, Record] = field(default_factory=dict)
    settings: Mapping[str, str] = field(default_factory=dict)
    cautions_read: Mapping[str, date] = field(default_factory=dict)
    doubts: tuple[str, ...] = ()

    def crop(self, key: str) -> Crop:
        """A crop's rules; the unknown crop's where the key is not in the library."""
        return self.crops.get(key) or UNKNOWN_CROP

    def place(self, code: str) -> Place | None:
        """A place by its code."""
        return next((place for place in self.places if place.code == code), None)

    def place_order(self, code: str) -> int:
        """Where a place lies on the morning walk; unknown places come last."""
        place = self.place(code)
        return place.order if place else 999


class SeasonSorter:
    """Sorts live records by what they are about, the first half of folding a season."""

    def __init__(self, records: Iterable[Record]) -> None:
        self.by_batch: dict[str, list[Record]] = {}
        self.by_place: dict[str, list[Record]] = {}
        self.weather: list[Record] = []
        self.latest: dict[tuple[Kind, str], Record] = {}
        self.put_offs: list[Record] = []
        self.done: list[Record] = []
        self.crop_rules: list[Record] = []
        for record in records:
            self._take(record)

    def _take(self, record: Record) -> None:
        kind = record.kind
        if kind is Kind.PUT_OFF:
            self.put_offs.append(record)
        elif kind is Kind.DONE:
            self.done.append(record)
        elif kind in (Kind.READING, Kind.OUTLOOK):
            self.weather.append(record)
        elif kind is Kind.CROP_RULE:
            self.crop_rules.append(record)
        elif kind in SETTINGS:
            self.latest[(kind, record.about)] = record
        elif kind in TABLE and not (kind in PLACE_TOO and record.flag("of_place")):
            self.by_batch.setdefault(record.about, []).append(record)
            return
        if kind not in SETTINGS:
            self.by_place.setdefault(record.about, []).append(record)

    def of(self, kind: Kind) -> list[Record]:
        """The latest record of a settings kind for each thing it is about."""
        return [record for (k, _), record in self.latest.items() if k is kind]


SETTINGS = frozenset(
    {Kind.SITE, Kind.PLACE, Kind.CONTAINER, Kind.PACKET, Kind.SETTING, Kind.CAUTION_READ}
)
PLACE_TOO = frozenset(
    {
        Kind.WATERED,
        Kind.COVERED,
        Kind.SHADED,
        Kind.NOTED,
        Kind.MOISTURE,
        Kind.PATROLLED,
        Kind.WEEDED,
        Kind.WASHED,
        Kind.TRAP_SET,
        Kind.TRAP_SEEN,
        Kind.TRAP_LIFTED,
    }
)
"""Kinds that may be about a place as a whole; such records carry the figure `of_place`."""


def fold_season(records: Iterable[Record], crops: Mapping[str, Crop]) -> Season:
    """The season its records amount to. Pure: the same records give the same season.

    Args:
        records: all records, in any order, withdrawals included.
        crops: the crop library, any overrides already applied.
    """
    sorter = SeasonSorter(live(tuple(records)))
    batches: dict[str, Batch] = {}
    doubts: list[str] = []
    for name, story in sorter.by_batch.items():
        batch, faults = fold_batch(name, story)
        doubts.extend(faults)
        if batch is not None:
            batches[name] = batch
    weather = weather_from(sorter.weather)
    site = site_from(sorter.latest.get((Kind.SITE, "")))
    places = sorted(map(place_from, sorter.of(Kind.PLACE)), key=lambda p: (p.order, p.code))
    return Season(
        crops=crops,
        site=site,
        places=tuple(places),
        batches=batches,
        weather=weather,
        place_log={about: tuple(log) for about, log in sorter.by_place.items()},
        put_offs=_put_offs(sorter.put_offs),
        done={
            (record.text("family"), record.about, record.text("part")): record.day
            for record in sorter.done
        },
        packets=_packets(sorter.of(Kind.PACKET), batches),
        containers={record.about: record for record in sorter.of(Kind.CONTAINER)},
        settings={
            record.about: str(record.figures.get("value", "")) for record in sorter.of(Kind.SETTING)
        },
        cautions_read={record.about: record.day for record in sorter.of(Kind.CAUTION_READ)},
        doubts=(*doubts, *weather.doubts),
    )


def crop_rule_records(records: Iterable[Record]) -> tuple[Record, ...]:
    """The live records that override a crop's rules, in story order."""
    return tuple(record for record in live(tuple(records)) if record.kind is Kind.CROP_RULE)


def _put_offs(records: Iterable[Record]) -> dict[str, PutOff]:
    found: dict[str, PutOff] = {}
    for record in records:
        try:
            until = date.fromisoformat(record.text("until"))
        except ValueError:
            continue
        key = f"{record.text('family')}:{record.about}:{record.text('part')}"
        found[key] = PutOff(until, record.text("reason"))
    return found


def _packets(records: Iterable[Record], batches: Mapping[str, Batch]) -> dict[str, Packet]:
    used: dict[str, int] = {}
    for batch in batches.values():
        sowing = batch.sowing
        if sowing and sowing.packet:
            sown = (sowing.seeds or 0) + sowing.again_seeds
            used[sowing.packet] = used.get(sowing.packet, 0) + sown
    return {
        record.about: Packet(
            id=record.about,
            crop=record.text("crop"),
            variety=record.text("variety"),
            year=record.count("year"),
            seeds=record.count("seeds"),
            grams=record.number("grams"),
            germination=record.number("germination"),
            saved=record.flag("saved"),
            treated=record.flag("treated"),
            storage=record.text("storage"),
            used=used.get(record.about, 0),
        )
        for record in records
    }
