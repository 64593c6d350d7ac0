"""The batches of a season sorted by what is asked of several together, kept from season to season.

A record changes one batch of thousands. Instead of going over all of them for every new season, the
census is brought from the batches it knows to those of the season that asks, by what differs. What
was reckoned of a group stands until one of the group changes. It changes no answer.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Any, TypeVar

from benchround.core.batch.batch import Batch
from benchround.core.lifecycle import SEEDLING, YOUNG, Stage

Reckoned = TypeVar("Reckoned")
Group = tuple[str, str]
"""What the batches of a group have in common, and the crop, packet or place in question."""

SOWN, UNSOWN, FROM_PACKET = "sown", "not sown", "from packet"
AT, HARDENING_AT, UNCLEARED_AT, NAMELESS = "at", "hardening at", "not cleared at", "nameless"
UNKNOWN = "unknown"
"""Crop key of a tray nobody can name."""
TO_CLEAR = (Stage.GOING_OVER, Stage.SEED_SAVED)


def groups_of(batch: Batch) -> Iterator[Group]:
    """The groups a batch belongs to."""
    sowing = batch.sowing
    yield (SOWN if sowing is not None else UNSOWN, batch.crop)
    if sowing is not None and sowing.packet:
        yield (FROM_PACKET, sowing.packet)
    for part in batch.parts:
        stage = part.stage
        if not part.ended:
            yield (AT, part.place)
        if stage is Stage.HARDENING:
            yield (HARDENING_AT, part.place)
        elif stage in TO_CLEAR:
            yield (UNCLEARED_AT, part.place)
        elif batch.crop == UNKNOWN and stage in SEEDLING | YOUNG:
            yield (NAMELESS, "")


def oldest_first(batches: Mapping[str, Batch]) -> tuple[Batch, ...]:
    """The batches of a group by the day they began."""
    return tuple(sorted(batches.values(), key=lambda batch: (batch.begun, batch.id)))


def last_id(batches: Mapping[str, Batch]) -> str:
    """The last of a group in the order of the season's batches."""
    return max(batches)


def by_id(batches: Mapping[str, Batch]) -> tuple[Batch, ...]:
    """The batches of a group in the order of the season's batches."""
    return tuple(batches[name] for name in sorted(batches))


def crop_keys(batches: Mapping[str, Batch]) -> tuple[str, ...]:
    """The crops of a group, each once."""
    return tuple(sorted({batch.crop for batch in batches.values()}))


class Census:
    """Groups of batches, and what was reckoned of them."""

    def __init__(self) -> None:
        self._counted: Mapping[str, Batch] = {}
        self._groups: dict[Group, dict[str, Batch]] = {}
        self._reckoned: dict[Group, dict[Callable[..., Any], Any]] = {}

    def brought_to(self, batches: Mapping[str, Batch]) -> Census:
        """The census of these batches, which are never changed in place."""
        before = self._counted
        if batches is not before:
            changed = [name for name, batch in batches.items() if before.get(name) is not batch]
            if len(before) + sum(name not in before for name in changed) > len(batches):
                changed += [name for name in before if name not in batches]
            for name in changed:
                self._recount(name, before.get(name), batches.get(name))
            self._counted = batches
        return self

    def _recount(self, name: str, old: Batch | None, new: Batch | None) -> None:
        for group in set(groups_of(old)) if old is not None else ():
            members = self._groups[group]
            members.pop(name, None)
            self._reckoned.pop(group, None)
            if not members:
                del self._groups[group]
        if new is not None:
            for group in groups_of(new):
                self._groups.setdefault(group, {})[name] = new
                self._reckoned.pop(group, None)

    def names(self, what: str) -> Iterator[str]:
        """The crops, packets or places that have a group of this sort."""
        return (name for kind, name in self._groups if kind == what)

    def of(
        self, what: str, name: str, reckon: Callable[[Mapping[str, Batch]], Reckoned]
    ) -> Reckoned:
        """What a function says of a group; it is asked again only when the group has changed."""
        group = (what, name)
        members = self._groups.get(group)
        if members is None:
            return reckon({})
        kept = self._reckoned.setdefault(group, {})
        if reckon not in kept:
            kept[reckon] = reckon(members)
        found: Reckoned = kept[reckon]
        return found
