"""What the tasks of a batch rest on besides the batch itself, and what all tasks rest on alike.

Each thing has a name and, in a season, a value. As long as the values of what a batch rests on are
what they were, so are its tasks.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from enum import StrEnum, auto

from benchround.core.batch.batch import SPARES, Batch, Part
from benchround.core.lifecycle import BEFORE, ENDED, OUT, SEEDLING, WAITING, YOUNG, Stage
from benchround.core.record import Kind
from benchround.core.season import UNKNOWN_CROP, Season
from benchround.core.water.tray_filled import stays
from benchround.core.water.tray_holder import WATERED_STAGES
from benchround.rounds.planting_out import meant_for
from benchround.rounds.relabelling import TRAY_STAGES
from benchround.rounds.seed_packet import NAMED_IN
from benchround.rounds.seed_saving import own_packet

SEED_IN_USE = BEFORE | WAITING | SEEDLING
"""Stages with tasks that ask what was learned of the crop and what its packets hold."""
SEED_TO_COME = OUT | ENDED
"""Stages with tasks that write the packet of saved seed."""
PLANNED_BY = (Kind.PLANNED, Kind.CHILLED)
"""Records that may say where it is to be sown."""
TO_HARDEN = SEEDLING | YOUNG | {Stage.OVERWINTERING}
"""Stages with a task that says where to harden."""


class Sort(StrEnum):
    """Sorts of things tasks rest on."""

    LOG = auto()  # the records of a place
    CROP_SEED = auto()  # what own sowings taught of a crop, and its packets
    PACKET = auto()  # a packet, and what own sowings taught of it
    PACKET_RECORD = auto()  # what a packet of own seed was put on the books with
    UNCLEARED = auto()  # what has yet to be cleared from a place
    CROPS_AT = auto()  # the crops that stand at a place, for what is said before work there
    BESIDE = auto()  # what stands at a place
    HARDENING_PLACE = auto()  # where to harden
    NAMELESS = auto()  # trays without a name
    BATCHES = auto()  # every batch on the books


Thing = tuple[Sort, str]


def common_ground(season: Season) -> tuple[object, ...]:
    """What every task may rest on."""
    return (
        season.site,
        season.places,
        season.weather,
        season.crops,
        season.settings,
        season.containers,
    )


def footing(batch: Batch) -> Iterator[Thing]:
    """What the tasks of a batch rest on; a thing may come more than once."""
    for part in batch.parts:
        yield from _footing_of_part(batch, part)
    if batch.crop == UNKNOWN_CROP.key:
        yield (Sort.BATCHES, "")  # a nameless tray is compared with every batch on the books


def _footing_of_part(batch: Batch, part: Part) -> Iterator[Thing]:
    stage = part.stage
    if stage not in ENDED:
        yield (Sort.CROPS_AT, part.place)
    sown = part.first.get(Kind.SOWN)
    if sown is not None:
        yield (Sort.CROPS_AT, sown.text("place"))  # where it is sown again
    for record in map(part.last.get, PLANNED_BY):
        if record is not None:
            yield (Sort.CROPS_AT, record.text("place"))
            yield (Sort.CROPS_AT, record.text("sow_place"))
    if stage in WATERED_STAGES:
        for _, place in stays(batch, part):  # it was watered, or dried, where it stood before
            yield (Sort.LOG, place)
    if stage in SEED_IN_USE:
        yield (Sort.CROP_SEED, batch.crop)
        for record in map(part.last.get, NAMED_IN):
            if record is not None and record.text("packet"):
                yield (Sort.PACKET, record.text("packet"))
    if stage in SEED_TO_COME:
        name = own_packet(batch, part)
        yield (Sort.PACKET, name)
        yield (Sort.PACKET_RECORD, name)
    if stage is Stage.HARDENING:
        yield (Sort.BESIDE, part.place)
    if stage in TO_HARDEN:
        yield (Sort.HARDENING_PLACE, "")
    if stage in TRAY_STAGES and not part.name.startswith(SPARES):
        yield (Sort.NAMELESS, "")
    if meant_for(part):
        yield (Sort.UNCLEARED, meant_for(part))


def value_of(season: Season, thing: Thing) -> object:
    """What a thing is in a season: the very same object, or an equal tuple, while it is the same.

    A tuple is compared by what is in it, and that again by being the same or equal.
    """
    sort, name = thing
    return _VALUES[sort](season, name)


def _log(season: Season, place: str) -> object:
    return season.place_log.get(place)


def _crop_seed(season: Season, crop: str) -> object:
    packets = season.packets_of_crop(crop)
    taught = (season.learned_of_packet(packet.id) for packet in packets)
    return (season.learned(crop), *packets, *taught)


def _packet(season: Season, name: str) -> object:
    packet = season.packets.get(name)
    return None if packet is None else (packet, season.learned_of_packet(name))


def _nameless(season: Season, _: str) -> object:
    """As far as a tray that was not seen may be one of them."""
    return tuple(
        (
            batch.id,
            part.last_day(Kind.LABEL_LOST) or batch.begun,
            part.place,
            part.stage,
            part.alive,
        )
        for batch, part in season.nameless
    )


_VALUES: Mapping[Sort, Callable[[Season, str], object]] = {
    Sort.LOG: _log,
    Sort.CROP_SEED: _crop_seed,
    Sort.PACKET: _packet,
    Sort.PACKET_RECORD: Season.packet_record,
    Sort.UNCLEARED: lambda season, place: season.uncleared.get(place),
    Sort.CROPS_AT: Season.crops_at,
    Sort.BESIDE: Season.standing_at,
    Sort.HARDENING_PLACE: lambda season, _: season.hardening_place,
    Sort.NAMELESS: _nameless,
    Sort.BATCHES: lambda season, _: season.batches,
}
