"""Results kept from one season to the next, as long as what they rest on is the same object.

A record folded in makes a new season that shares with the old one whatever it did not change. What
is dear to reckon (warmth by place and day, what a sowing teaches) is handed on with it. Nothing
here changes an answer: it is only found sooner.
"""

from __future__ import annotations

from benchround.core.batch.batch import Batch
from benchround.core.census import Census, Group
from benchround.core.crop.crop import Crop
from benchround.core.learning.learned import Learned
from benchround.core.learning.lesson import Lesson
from benchround.core.learning.lesson_time import Times
from benchround.core.record import Record
from benchround.core.seed.packet import Packet
from benchround.core.sky.warmth import DaysOf

Sky = tuple[object, ...]
"""Weather, site and places: what the warmth of a place rests on."""
Batches = tuple[Batch, ...]


class Shelf:
    """What was reckoned under one sky.

    Attributes:
        warmth: of each place by its code, by the number of the day.
        lessons: by batch id, with the batch and the crop rules it was drawn from.
        times: what sowings took to come up, for those that were sown and stood together.
        learned: by crop or packet, with the sowings, the crop rules and the packet behind it.
    """

    __slots__ = ("learned", "lessons", "sky", "times", "warmth")

    def __init__(self, sky: Sky) -> None:
        self.sky = sky
        self.warmth: dict[str, DaysOf] = {}
        self.lessons: dict[str, tuple[Batch, Crop, Lesson | None]] = {}
        self.times: Times = {}
        self.learned: dict[Group, tuple[tuple[Batches, Crop, Packet | None], Learned]] = {}


class Keeping:
    """The shelf of the latest sky, cleared when weather, site or places change, and the rest.

    Attributes:
        census: the batches by what is asked of several together.
        packets: by id, with the record and the sowings each was reckoned from.
    """

    __slots__ = ("_shelf", "census", "packets")

    def __init__(self) -> None:
        self._shelf = Shelf(())
        self.census = Census()
        self.packets: dict[str, tuple[Record, Batches, Packet]] = {}

    def shelf(self, sky: Sky) -> Shelf:
        """The shelf for this very sky, a new one where another was kept."""
        kept = self._shelf.sky
        if len(kept) != len(sky) or any(a is not b for a, b in zip(kept, sky, strict=True)):
            self._shelf = Shelf(sky)
        return self._shelf
