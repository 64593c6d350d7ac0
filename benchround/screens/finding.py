"""Finding batches, crops, places and packets by letters: what goes by them, the likeliest first.

Pure: no drawing, no day.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from enum import StrEnum

from benchround.core.crop.search import Named, find_crops, folded
from benchround.core.frozen import dataclass
from benchround.core.season import Season

ALSO = 3
"""Rank of what is found by another name or by where it stands."""


class Sort(StrEnum):
    """What was found."""

    BATCH = "batch"
    CROP = "crop"
    PLACE = "place"
    PACKET = "packet"


@dataclass(frozen=True, slots=True)
class Found:
    """One thing found.

    Attributes:
        name: id, key or code.
        title: its name in words.
        more: what else to say of it.
        names: what it is called itself, folded.
        also: what else it is found by, such as where it stands, folded.
    """

    sort: Sort
    name: str
    title: str
    more: str
    names: tuple[str, ...] = ()
    also: tuple[str, ...] = ()

    @property
    def key(self) -> str:
        """Sort and name in one."""
        return f"{self.sort}:{self.name}"


def everything(season: Season) -> tuple[Found, ...]:
    """Every batch, place and packet; crops are found among their own names."""
    return (*_batches(season), *_places(season), *_packets(season))


def find(letters: str, things: Sequence[Found], crops: Iterable[Named]) -> tuple[Found, ...]:
    """What goes by the letters.

    Several words must all be there, single letters among them as words by themselves; without
    letters it is everything but the crops.

    Args:
        letters: what was typed.
        things: what `everything` gave.
        crops: the names of all crops.
    """
    words = folded(letters).split()
    if not words:
        return tuple(things)
    ranked = [(rank, thing) for thing in things if (rank := _rank(words, thing)) is not None]
    ranked.sort(key=lambda pair: pair[0])
    names = [_crop(name) for name in find_crops(letters, crops)]
    start = " ".join(words)
    named = [name for name in names if folded(name.title).startswith(start)]
    rest = [name for name in names if name not in named]
    own = [thing for rank, thing in ranked if rank < ALSO]
    also = [thing for rank, thing in ranked if rank >= ALSO]
    return (*own, *named, *also, *rest)


def _rank(words: Sequence[str], thing: Found) -> int | None:
    """How well a thing goes by the words, 0 best; None if one of them is nowhere in it."""
    several = len(words) > 1
    ranks = [_rank_of(word, thing, whole=several and len(word) == 1) for word in words]
    known = [rank for rank in ranks if rank is not None]
    return max(known) if len(known) == len(ranks) else None


def _rank_of(word: str, thing: Found, *, whole: bool) -> int | None:
    """Its own names before what else it is found by; at each the whole, a beginning, an inside.

    Args:
        word: one of the words typed.
        thing: what may go by it.
        whole: it must be a word by itself, as the 3 of "bed 3".
    """
    for least, keywords in ((0, thing.names), (ALSO, thing.also)):
        if word in keywords or (whole and any(word in one.split() for one in keywords)):
            return least
        if whole:
            continue
        if any(f" {word}" in f" {keyword}" for keyword in keywords):
            return least + 1
        if any(word in keyword for keyword in keywords):
            return least + 2
    return None


def _batches(season: Season) -> Iterator[Found]:
    for name in sorted(season.batches, key=lambda name: (len(name), name)):
        batch = season.batches[name]
        crop, main = season.crop(batch.crop), batch.main
        place = season.place(main.place)
        where = place.name if place else main.place
        variety = f" '{batch.variety}'" if batch.variety else ""
        alive = f", {main.alive} alive" if main.alive is not None and not main.ended else ""
        more = f"{main.stage}{alive}{f', {where}' if where else ''}"
        names = _folded((name, crop.name, batch.variety))
        others = (crop.latin, *crop.synonyms)
        title = f"{name} {crop.name}{variety}"
        yield Found(Sort.BATCH, name, title, more, names, _folded((*others, where, main.stage)))


def _places(season: Season) -> Iterator[Found]:
    standing: dict[str, int] = {}
    for batch in season.batches.values():
        for part in batch.parts:
            if part.place and not part.ended:
                standing[part.place] = standing.get(part.place, 0) + 1
    for place in season.places:
        number = standing.get(place.code, 0)
        holds = "nothing stands there" if not number else f"{number} standing there"
        names = _folded((place.code, place.name))
        more = f"{place.kind}, {holds}"
        yield Found(Sort.PLACE, place.code, place.name, more, names, _folded((place.kind,)))


def _packets(season: Season) -> Iterator[Found]:
    for packet in season.packets.values():
        crop = season.crop(packet.crop)
        variety = f" '{packet.variety}'" if packet.variety else ""
        left = "" if packet.left is None else f"{packet.left} left"
        more = ", ".join(words for words in (str(packet.year or ""), left, packet.storage) if words)
        names = _folded((packet.id, crop.name, packet.variety))
        others = _folded((crop.latin, *crop.synonyms, packet.storage))
        title = f"{packet.id} {crop.name}{variety}"
        yield Found(Sort.PACKET, packet.id, title, more, names, others)


def _crop(name: Named) -> Found:
    more = ", ".join((name.latin, *name.synonyms))
    return Found(Sort.CROP, name.key, name.name, more)


def _folded(words: Iterable[str]) -> tuple[str, ...]:
    return tuple(folded(word) for word in words if word)
