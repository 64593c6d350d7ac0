"""A season: everything the records amount to, ready to be asked."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from functools import cached_property

from benchround.core.batch import Batch, Part
from benchround.core.crop import Crop, Hardiness, PlantClass, Raising
from benchround.core.lifecycle import SEEDLING, YOUNG, Stage
from benchround.core.record import Record
from benchround.core.site import Place, Site
from benchround.core.weather import Weather

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
    packet_records: tuple[Record, ...] = ()
    containers: Mapping[str, Record] = field(default_factory=dict)
    settings: Mapping[str, str] = field(default_factory=dict)
    cautions_read: Mapping[str, date] = field(default_factory=dict)
    doubts: tuple[str, ...] = ()

    def crop(self, key: str) -> Crop:
        """A crop's rules; the unknown crop's where the key is not in the library."""
        return self.crops.get(key) or UNKNOWN_CROP

    @cached_property
    def _by_code(self) -> Mapping[str, Place]:
        return {place.code: place for place in self.places}

    def place(self, code: str) -> Place | None:
        """A place by its code."""
        return self._by_code.get(code)

    @cached_property
    def nameless(self) -> tuple[tuple[Batch, Part], ...]:
        """Trays that stand without a name."""
        return tuple(
            (batch, part)
            for batch in self.batches.values()
            if batch.crop == UNKNOWN_CROP.key
            for part in batch.parts
            if part.stage in SEEDLING | YOUNG
        )

    @cached_property
    def hardening_place(self) -> str:
        """Where most of what is hardening stands; empty where nothing is."""
        codes = [
            part.place
            for batch in self.batches.values()
            for part in batch.parts
            if part.stage is Stage.HARDENING and part.place
        ]
        return max(set(codes), key=lambda code: (codes.count(code), code), default="")

    @cached_property
    def uncleared(self) -> Mapping[str, str]:
        """Places where something is over but not cleared yet, and the batch that stands there."""
        return {
            part.place: batch.id
            for batch in self.batches.values()
            for part in batch.parts
            if part.place and part.stage in (Stage.GOING_OVER, Stage.SEED_SAVED)
        }

    @cached_property
    def packets(self) -> Mapping[str, Packet]:
        """Seed packets, with what was sown from each taken off."""
        return _packets(self.packet_records, self.batches)


def _packets(records: tuple[Record, ...], batches: Mapping[str, Batch]) -> dict[str, Packet]:
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
