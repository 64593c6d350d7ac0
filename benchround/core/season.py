"""A season: everything the records amount to, ready to be asked."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import field
from datetime import date
from functools import cached_property

from benchround.core.batch.batch import Batch, Part
from benchround.core.census import (
    AT,
    FROM_PACKET,
    HARDENING_AT,
    NAMELESS,
    SOWN,
    UNCLEARED_AT,
    UNKNOWN,
    UNSOWN,
    Census,
    Group,
    by_id,
    crop_keys,
    last_id,
    oldest_first,
)
from benchround.core.crop.crop import Crop, Hardiness, PlantClass, Raising
from benchround.core.frozen import dataclass
from benchround.core.hardening_places import place_to_harden
from benchround.core.keeping import Keeping, Shelf
from benchround.core.learning.learned import Learned, learn
from benchround.core.learning.lesson import Lesson, lesson_of
from benchround.core.lifecycle import BEFORE, SEEDLING, YOUNG, Stage
from benchround.core.record import Record
from benchround.core.seed.packet import Packet, packets_of
from benchround.core.site import Place, Site
from benchround.core.sky.warmth import DaysOf, Warmth
from benchround.core.sky.weather import Weather
from benchround.core.unit_words import UnitWords
from benchround.core.units import units_of
from benchround.core.water.tray_kept import TrayKept

__all__ = ["UNKNOWN_CROP", "Packet", "PutOff", "Season"]

UNKNOWN_CROP = Crop(
    key=UNKNOWN,
    name="Unknown",
    latin="",
    plant_class=PlantClass.UNKNOWN,
    hardiness=Hardiness.TENDER,
    raising=Raising.CELLS,
)
"""Rules for a tray nobody can name: nothing is proposed that could harm a tender plant."""


@dataclass(frozen=True, slots=True)
class PutOff:
    """A task moved to a later day, and the grower's reason.

    Attributes:
        said: when it was put off: the `order` of its record.
    """

    until: date
    reason: str
    said: tuple[date, str]


@dataclass(frozen=True)
class Season:
    """Everything the live records say.

    Attributes:
        crops: crop rules by key, the season's own overrides applied.
        place_log: records about a place or the site that are no settings, by what they are about.
        done: (family, about, part) -> last day it was ticked off without another trace.
        cautions_read: caution id (with `:crop` where it is told once per crop) -> last day read.
        doubts: sentences about records that do not fit or cannot be.
        keeping: results handed on from season to season; it changes no answer.
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
    keeping: Keeping = field(default_factory=Keeping, repr=False, compare=False)

    def crop(self, key: str) -> Crop:
        """A crop's rules; the unknown crop's where the key is not in the library."""
        found = self._crops_found.get(key)
        if found is None:
            found = self._crops_found[key] = self.crops.get(key) or UNKNOWN_CROP
        return found

    @cached_property
    def _crops_found(self) -> dict[str, Crop]:
        return {}

    @cached_property
    def _by_code(self) -> Mapping[str, Place]:
        return {place.code: place for place in self.places}

    def place(self, code: str) -> Place | None:
        """A place by its code."""
        return self._by_code.get(code)

    @property
    def _census(self) -> Census:
        return self.keeping.census.brought_to(self.batches)

    @cached_property
    def nameless(self) -> tuple[tuple[Batch, Part], ...]:
        """Trays that stand without a name."""
        return tuple(
            (batch, part)
            for batch in self._census.of(NAMELESS, "", by_id)
            for part in batch.parts
            if part.stage in SEEDLING | YOUNG
        )

    @cached_property
    def hardening_place(self) -> str:
        """The place to harden at; empty where none is fit for it."""
        census = self._census
        codes = [
            code
            for code in census.names(HARDENING_AT)
            for batch in census.of(HARDENING_AT, code, by_id)
            for part in batch.parts
            if code and part.place == code and part.stage is Stage.HARDENING
        ]
        return place_to_harden(self.places, Counter(codes))

    @cached_property
    def uncleared(self) -> Mapping[str, str]:
        """Places where something is over but not cleared yet, and the batch that stands there."""
        census = self._census
        codes = (code for code in census.names(UNCLEARED_AT) if code)
        return {code: census.of(UNCLEARED_AT, code, last_id) for code in codes}

    def standing_at(self, code: str) -> tuple[Batch, ...]:
        """The batches of which something lives at a place, the very same tuple while all do."""
        return self._census.of(AT, code, by_id)

    def crops_at(self, code: str) -> tuple[str, ...]:
        """The keys of the crops of which something lives at a place."""
        return self._census.of(AT, code, crop_keys)

    def crops_beside(self, code: str, crop: Crop | None) -> tuple[Crop, ...]:
        """A crop and all that live at the place where it stands or is to stand."""
        own = (crop,) if crop is not None else ()
        return (*own, *(self.crop(key) for key in (self.crops_at(code) if code else ())))

    @cached_property
    def packets(self) -> Mapping[str, Packet]:
        """Seed packets, with what was sown from each taken off."""
        census, kept = self._census, self.keeping.packets
        for record in self.packet_records:
            sown = census.of(FROM_PACKET, record.about, oldest_first)
            found = kept.get(record.about)
            if found is None or found[0] is not record or found[1] is not sown:
                (packet,) = packets_of((record,), sown).values()
                kept[record.about] = (record, sown, packet)
        return {record.about: kept[record.about][2] for record in self.packet_records}

    @cached_property
    def _packet_records(self) -> Mapping[str, Record]:
        return {record.about: record for record in reversed(self.packet_records)}

    def packet_record(self, name: str) -> Record | None:
        """The record a packet was put on the books with."""
        return self._packet_records.get(name)

    @cached_property
    def _packets_of_crop(self) -> Mapping[str, tuple[Packet, ...]]:
        found: dict[str, tuple[Packet, ...]] = {}
        for packet in self.packets.values():
            found[packet.crop] = (*found.get(packet.crop, ()), packet)
        return found

    def packets_of_crop(self, crop_key: str) -> tuple[Packet, ...]:
        """The packets of one crop."""
        return self._packets_of_crop.get(crop_key, ())

    @cached_property
    def unit_words(self) -> UnitWords:
        """Turns sentences made in C and mm into what the grower reads; own names stay."""
        return UnitWords(units_of(self.settings), self._own_words())

    def _own_words(self) -> Iterator[str]:
        """What the grower wrote that may stand within a sentence."""
        yield from (place.name for place in self.places)
        yield from self.containers
        for batch in self.batches.values():
            yield batch.variety
            yield from (part.container for part in batch.parts)
        for packet in self.packets.values():
            yield from (packet.id, packet.variety)

    @cached_property
    def trays(self) -> TrayKept:
        """What was reckoned of trays and places, to be found again."""
        return TrayKept()

    @cached_property
    def cautions_found(self) -> dict[tuple[object, ...], tuple[str, ...]]:
        """The cautions of tasks, by what they rest on, to be found again."""
        return {}

    @cached_property
    def lids_found(self) -> dict[tuple[str, date], tuple[int, tuple[str, ...]]]:
        """How far hardening wants the lid of a place on a day, and for which, to be found again."""
        return {}

    @cached_property
    def _shelf(self) -> Shelf:
        return self.keeping.shelf((self.weather, self.site, self.places))

    def warmth_at(self, code: str, day: date) -> Warmth:
        """The warmth of a place, by its code, on a day; of the open air where none has the code."""
        return self.warmth_of(code)[day.toordinal()]

    def warmth_of(self, code: str) -> Mapping[int, Warmth]:
        """The warmth of a place, by its code, by the number of the day (`date.toordinal`)."""
        found = self._shelf.warmth.get(code)
        if found is None:
            found = DaysOf(self.place(code), self.weather, self.site)
            self._shelf.warmth[code] = found
        return found

    @cached_property
    def last_sown(self) -> Mapping[str, str]:
        """Crops that are sown again and again -> the batch sown last; none where one is planned."""
        census, found = self._census, {}
        for crop in census.names(SOWN):
            if self.crop(crop).succession_days is None or census.of(UNSOWN, crop, _any_planned):
                continue
            last = census.of(SOWN, crop, _last_sown)
            if last:
                found[crop] = last
        return found

    def lesson(self, batch: Batch) -> Lesson | None:
        """What a batch teaches of its crop; None where nothing was sown or nothing is known yet."""
        crop, shelf = self.crop(batch.crop), self._shelf
        kept = shelf.lessons
        found = kept.get(batch.id)
        if found is None or found[0] is not batch or found[1] is not crop:
            found = (batch, crop, lesson_of(batch, crop, self.warmth_of, shelf.times))
            kept[batch.id] = found
        return found[2]

    def learned(self, crop_key: str) -> Learned:
        """What own sowings taught of a crop, beside the library's figures."""
        return self._learn((SOWN, crop_key), self.crop(crop_key), None)

    def learned_of_packet(self, packet_id: str) -> Learned:
        """What own sowings taught of a packet, beside its own or the library's figures."""
        packet = self.packets.get(packet_id)
        crop = self.crop(packet.crop if packet else "")
        return self._learn((FROM_PACKET, packet_id), crop, packet)

    def _learn(self, group: Group, crop: Crop, packet: Packet | None) -> Learned:
        ground = (self._census.of(*group, oldest_first), crop, packet)
        found = self._shelf.learned.get(group)
        if found is None or any(a is not b for a, b in zip(found[0], ground, strict=True)):
            lessons = (lesson for batch in ground[0] if (lesson := self.lesson(batch)) is not None)
            found = (ground, learn(group[1], crop.germination, lessons, packet))
            self._shelf.learned[group] = found
        return found[1]


def _any_planned(batches: Mapping[str, Batch]) -> bool:
    return any(batch.main.stage in BEFORE for batch in batches.values())


def _last_sown(batches: Mapping[str, Batch]) -> str:
    days = [
        (batch.sowing.again_on or batch.sowing.day, batch.id)
        for batch in batches.values()
        if batch.sowing is not None and batch.main.stage is not Stage.CANCELLED
    ]
    return max(days)[1] if days else ""
