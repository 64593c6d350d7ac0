"""The round kept between two actions: only what a record could have changed is asked again.

A batch's tasks rest on the batch itself, on what all tasks rest on, and on the things its `footing`
names: the records of its place, what own sowings taught of its crop, and so on. Each is an object
that is replaced when it changes (see `core.book`), so sameness of the objects means sameness of the
tasks. That the kept round equals the fresh one is a property test.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from typing import TypeVar

from benchround.core.batch.batch import Batch
from benchround.core.season import Season
from benchround.core.task import Round
from benchround.rounds import sowing_in_turn
from benchround.rounds.build import (
    BY_LOG,
    NOT_BY_LOG,
    assumed,
    place_tasks,
    site_tasks,
    tasks_of,
)
from benchround.rounds.footing import Sort, Thing, common_ground, footing, value_of
from benchround.rounds.in_order import BATCH, BATCH_BY_LOG, PLACE, SITE, InOrder

Ground = tuple[object, ...]
Key = TypeVar("Key")


class KeptRound:
    """The tasks of a day, with what they rest on."""

    def __init__(self) -> None:
        self._made: tuple[Season, Round] | None = None
        self._day = date.min
        self._begin(Season(crops={}))

    def round(self, season: Season, day: date) -> Round:
        """The round of a day, equal to `build_round(season, day)`."""
        if self._made is not None and self._made[0] is season and self._made[1].day == day:
            return self._made[1]
        if day != self._day or not _same(common_ground(season), self._ground):
            self._begin(season)
        self._day = date.min  # what fails half-way is begun again
        told = self._told_otherwise(season)
        self._ask_batches(season, day, told)
        self._ask_places(season, day, told)
        self._tasks.put((SITE, ""), site_tasks(season, day))
        made = Round(day, self._tasks.tasks(), assumed(season, day), season.doubts)
        self._day, self._made = day, (season, made)
        return made

    def _begin(self, season: Season) -> None:
        """Forget everything: it is another day, or what all tasks rest on has changed."""
        self._ground = common_ground(season)
        self._tasks = InOrder({place.code: place.order for place in season.places})
        self._batches: Mapping[str, Batch] = {}
        self._resting: dict[Thing, set[str]] = {}
        self._values: dict[Thing, object] = {}
        self._turns: dict[str, Ground] = {}
        self._places: dict[str, Ground] = {}
        self._put_offs, self._done = season.put_offs, season.done

    def _ask_batches(self, season: Season, day: date, told: set[str]) -> None:
        touched = self._changed(season) | told & season.batches.keys() | self._turned(season)
        by_log: set[str] = set()
        for thing, names in self._resting.items():
            value = value_of(season, thing)
            if not _equal(value, self._values.get(thing)):
                self._values[thing] = value
                (by_log if thing[0] is Sort.LOG else touched).update(names)
        for lot, names, families in (
            (BATCH, touched, NOT_BY_LOG),
            (BATCH_BY_LOG, touched | by_log, BY_LOG),
        ):
            batches = [season.batches[name] for name in names if name in season.batches]
            tasks = tasks_of(season, batches, day, families)
            for name in names:
                self._tasks.put((lot, name), tasks.get(name, ()))

    def _changed(self, season: Season) -> set[str]:
        """Batches that changed, came or went; what they rest on is noted anew."""
        before, now = self._batches, season.batches
        if now is before:
            return set()
        changed = {name for name, batch in now.items() if before.get(name) is not batch}
        changed |= before.keys() - now.keys()
        for name in changed:
            if name in before:
                self._leave(name, footing(before[name]))
            if name in now:
                self._stand(name, footing(now[name]))
        for thing in [thing for thing, names in self._resting.items() if not names]:
            del self._resting[thing]
            self._values.pop(thing, None)
        self._batches = now
        return changed

    def _stand(self, name: str, on: Iterable[Thing]) -> None:
        """Note what a batch rests on."""
        resting = self._resting
        for thing in on:
            if thing in resting:
                resting[thing].add(name)
            else:
                resting[thing] = {name}

    def _leave(self, name: str, on: Iterable[Thing]) -> None:
        """Take back what a batch rested on."""
        for thing in on:
            self._resting[thing].discard(name)

    def _turned(self, season: Season) -> set[str]:
        """Batches whose next sowing is offered otherwise than before, or not any more."""
        lasts = (season.batches[name] for name in season.last_sown.values())
        before, now = self._turns, {last.id: sowing_in_turn.ground(season, last) for last in lasts}
        self._turns = now
        return {name for name in before.keys() | now.keys() if before.get(name) != now.get(name)}

    def _told_otherwise(self, season: Season) -> set[str]:
        """What a task was put off or ticked off of since."""
        told = {
            key.partition(":")[2].rpartition(":")[0]
            for key in _differing(self._put_offs, season.put_offs)
        }
        told.update(about for _, about, _ in _differing(self._done, season.done))
        self._put_offs, self._done = season.put_offs, season.done
        return told

    def _ask_places(self, season: Season, day: date, told: set[str]) -> None:
        for place in season.places:
            code = place.code
            if not place.lidded:
                continue
            ground = (season.place_log.get(code), season.standing_at(code))
            kept = self._places.get(code)
            if kept is None or code in told or not _same(kept, ground):
                self._places[code] = ground
                self._tasks.put((PLACE, code), place_tasks(season, place, day))


def _differing(one: Mapping[Key, object], other: Mapping[Key, object]) -> Iterator[Key]:
    """Keys under which two mappings hold different things."""
    if one is not other:
        yield from (key for key in one.keys() | other.keys() if one.get(key) != other.get(key))


def _same(one: Ground, other: Ground) -> bool:
    return len(one) == len(other) and all(a is b for a, b in zip(one, other, strict=True))


def _equal(one: object, other: object) -> bool:
    return one is other or (isinstance(one, tuple | str) and one == other)
