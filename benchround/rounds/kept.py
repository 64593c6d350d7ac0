"""The round kept between two actions: only what a record could have changed is asked again.

A batch's tasks rest on the batch itself and on what it stands in: site, places, weather, crops,
the records of its place, what was put off or ticked off, what own sowings taught of its crop, the
crop's packets, whether its crop was sown again since, and three facts about the other batches.
Each of these is an object that is replaced when it changes (see `core.book`), so sameness of the
objects means sameness of the tasks. That the kept round equals the fresh one is a property test.
"""

from __future__ import annotations

from datetime import date

from benchround.core.batch.batch import Batch
from benchround.core.lifecycle import BEFORE, ENDED, OUT, SEEDLING, WAITING
from benchround.core.season import UNKNOWN_CROP, Season
from benchround.core.task import Round, Task
from benchround.rounds import sowing_in_turn
from benchround.rounds.build import batch_tasks, common_tasks, compose
from benchround.rounds.seed_packet import NAMED_IN

Ground = tuple[object, ...]

SEED_IN_USE = BEFORE | WAITING | SEEDLING
"""Stages with tasks that ask what was learned of the crop and what its packets hold."""
SEED_TO_COME = OUT | ENDED
"""Stages with tasks that write the packet of saved seed."""


class KeptRound:
    """Tasks by batch, with what they rest on."""

    def __init__(self) -> None:
        self._day: date | None = None
        self._ground: Ground = ()
        self._tasks: dict[str, tuple[Batch, Ground, tuple[Task, ...]]] = {}
        self._common: tuple[Ground, tuple[Task, ...]] | None = None
        self._made: tuple[Season, Round] | None = None
        self._seed: dict[tuple[str, str], Ground] = {}

    def round(self, season: Season, day: date) -> Round:
        """The round of a day, equal to `build_round(season, day)`."""
        if self._made is not None and self._made[0] is season and self._made[1].day == day:
            return self._made[1]
        made = self._make(season, day)
        self._made = (season, made)
        return made

    def _make(self, season: Season, day: date) -> Round:
        ground = _common_ground(season)
        if day != self._day or not _same(ground, self._ground):
            self._tasks.clear()
            self._common = None
            self._day, self._ground = day, ground
        tasks: list[Task] = []
        seeds = _Seeds(season, self._seed)
        self._seed = seeds.now
        for name, batch in season.batches.items():
            own = _own_ground(season, batch, seeds)
            kept = self._tasks.get(name)
            if kept is None or kept[0] is not batch or not _same(kept[1], own):
                kept = (batch, own, batch_tasks(season, batch, day))
                self._tasks[name] = kept
            tasks.extend(kept[2])
        tasks.extend(self._common_tasks(season, day))
        return compose(season, tasks, day)

    def _common_tasks(self, season: Season, day: date) -> tuple[Task, ...]:
        own = _lidded_ground(season)
        if self._common is None or not _same(self._common[0], own):
            self._common = (own, common_tasks(season, day))
        return self._common[1]


def _lidded_ground(season: Season) -> Ground:
    """What the tasks of places rest on besides: the places with lids, and what stands in them."""
    lidded = {place.code for place in season.places if place.lidded}
    logs = (season.place_log.get(place.code) for place in season.places if place.lidded)
    standing = (
        batch
        for batch in season.batches.values()
        if any(part.place in lidded for part in batch.parts)
    )
    return (*logs, *standing)


def _common_ground(season: Season) -> Ground:
    others = (
        season.hardening_place,
        tuple(sorted(season.uncleared.items())),
        tuple((batch.id, batch.begun, part) for batch, part in season.nameless),
    )
    return (
        season.site,
        season.places,
        season.weather,
        season.crops,
        season.settings,
        season.containers,
        season.put_offs,
        season.done,
        others,
    )


class _Seeds:
    """What is known of the seed of crops and packets, compared by value with what was known before.

    What did not change is handed out as the very object it was.
    """

    def __init__(self, season: Season, before: dict[tuple[str, str], Ground]) -> None:
        self.season, self.before = season, before
        self.now: dict[tuple[str, str], Ground] = {}

    def of_crop(self, crop: str) -> Ground:
        """What own sowings taught of a crop, and its packets."""
        found = self.now.get(("crop", crop))
        if found is None:
            packets = self.season.packets_of_crop(crop)
            taught = (self.season.learned_of_packet(packet.id) for packet in packets)
            found = self._kept("crop", crop, (self.season.learned(crop), packets, *taught))
        return found

    def of_packet(self, name: str) -> Ground:
        """A packet and what own sowings taught of it."""
        found = self.now.get(("packet", name))
        if found is None:
            packet = self.season.packets.get(name)
            taught = self.season.learned_of_packet(packet.id) if packet is not None else None
            found = self._kept("packet", name, (packet, taught))
        return found

    def _kept(self, what: str, name: str, new: Ground) -> Ground:
        old = self.before.get((what, name))
        found = old if old is not None and old == new else new
        self.now[(what, name)] = found
        return found


def _own_ground(season: Season, batch: Batch, seeds: _Seeds) -> Ground:
    logs = tuple(season.place_log.get(part.place, ()) for part in batch.parts)
    if batch.crop == UNKNOWN_CROP.key:
        return (*logs, season.batches)  # a nameless tray is compared with every batch on the books
    return (*logs, *sowing_in_turn.ground(season, batch), *_seed_ground(season, batch, seeds))


def _seed_ground(season: Season, batch: Batch, seeds: _Seeds) -> Ground:
    """What is known of its seed, by value, while a task may ask for it."""
    stages = {part.stage for part in batch.parts}
    written = season.packet_records if stages & SEED_TO_COME else ()
    if not stages & SEED_IN_USE:
        return (written,)
    return (written, seeds.of_crop(batch.crop), *map(seeds.of_packet, _packets_named(batch)))


def _packets_named(batch: Batch) -> tuple[str, ...]:
    records = (part.last.get(kind) for part in batch.parts for kind in NAMED_IN)
    return tuple(record.text("packet") for record in records if record is not None)


def _same(one: Ground, other: Ground) -> bool:
    return len(one) == len(other) and all(
        a is b or (isinstance(a, tuple | str) and a == b) for a, b in zip(one, other, strict=True)
    )
