"""The round kept between two actions: only what a record could have changed is asked again.

A batch's tasks rest on the batch itself and on what it stands in: site, places, weather, crops,
the records of its place, what was put off or ticked off, what own sowings taught of its crop, the
crop's packets, and three facts about the other batches.
Each of these is an object that is replaced when it changes (see `core.book`), so sameness of the
objects means sameness of the tasks. That the kept round equals the fresh one is a property test.
"""

from __future__ import annotations

from datetime import date

from benchround.core.batch import Batch
from benchround.core.lifecycle import BEFORE, ENDED, OUT, SEEDLING, WAITING
from benchround.core.season import UNKNOWN_CROP, Season
from benchround.core.task import Round, Task
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

    def round(self, season: Season, day: date) -> Round:
        """The round of a day, equal to `build_round(season, day)`."""
        ground = _common_ground(season)
        if day != self._day or not _same(ground, self._ground):
            self._tasks.clear()
            self._day, self._ground = day, ground
        tasks: list[Task] = []
        for name, batch in season.batches.items():
            own = _own_ground(season, batch)
            kept = self._tasks.get(name)
            if kept is None or kept[0] is not batch or not _same(kept[1], own):
                kept = (batch, own, batch_tasks(season, batch, day))
                self._tasks[name] = kept
            tasks.extend(kept[2])
        tasks.extend(common_tasks(season, day))
        return compose(season, tasks, day)


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


def _own_ground(season: Season, batch: Batch) -> Ground:
    logs = tuple(season.place_log.get(part.place, ()) for part in batch.parts)
    if batch.crop == UNKNOWN_CROP.key:
        return (*logs, season.batches)  # a nameless tray is compared with every batch on the books
    return (*logs, _seed_ground(season, batch))


def _seed_ground(season: Season, batch: Batch) -> Ground:
    """What is known of its seed, by value, while a task may ask for it."""
    stages = {part.stage for part in batch.parts}
    written = season.packet_records if stages & SEED_TO_COME else ()
    if not stages & SEED_IN_USE:
        return (written,)
    packets = season.packets_of_crop(batch.crop)
    named = tuple(season.packets.get(name) for name in _packets_named(batch))
    taught = tuple(season.learned_of_packet(p.id) for p in (*packets, *named) if p is not None)
    return (written, season.learned(batch.crop), packets, named, taught)


def _packets_named(batch: Batch) -> tuple[str, ...]:
    records = (part.last.get(kind) for part in batch.parts for kind in NAMED_IN)
    return tuple(record.text("packet") for record in records if record is not None)


def _same(one: Ground, other: Ground) -> bool:
    return len(one) == len(other) and all(
        a is b or (isinstance(a, tuple | str) and a == b) for a, b in zip(one, other, strict=True)
    )
