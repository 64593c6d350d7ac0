"""The rows of the year: strips made when their line is drawn, flowerings, and rooms."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from benchround.core.batch.batch import Batch, Part
from benchround.core.dates import Span as Days
from benchround.core.frozen import dataclass
from benchround.core.season import Season
from benchround.drawing.flowering import Flowering, flowering_rows
from benchround.drawing.room import PlaceRoom, over_words, room_lines
from benchround.drawing.year import rows as strip_rows
from benchround.drawing.year_strips import (
    NOWHERE,
    Order,
    YearStrip,
    batch_strips,
    in_order,
)
from benchround.screens.pictures import glyphs, shown
from benchround.screens.text import BLANK, Line, Role, fit, in_units, line
from benchround.screens.widgets.pick_list import Row, told

INDENT = "  "
ROOM_HEAD = 2
"""Lines of the room's picture before its first place: months and axis."""


@dataclass(frozen=True, slots=True)
class PartOf:
    """One strip's batch and part."""

    batch: Batch
    part: Part

    @property
    def key(self) -> str:
        """What its row is picked by."""
        return f"{self.batch.id}\n{self.part.name}"


class Strips:
    """The strips of a season's parts, each reckoned when it is first asked for.

    Args:
        season: the season.
        day: today.
    """

    def __init__(self, season: Season, day: date) -> None:
        self.season = season
        self.day = day
        self._made: dict[str, dict[str, YearStrip]] = {}

    def of(self, one: PartOf) -> YearStrip:
        """The strip of a part."""
        made = self._made.get(one.batch.id)
        if made is None:
            strips = batch_strips(self.season, one.batch, self.day)
            made = self._made[one.batch.id] = {strip.part: strip for strip in strips}
        return made[one.part.name]

    def parts(self, order: Order) -> list[PartOf]:
        """Every part in an order; only sorting by flower needs the strips for it."""
        found = [
            PartOf(batch, part) for batch in self.season.batches.values() for part in batch.parts
        ]
        if order is Order.FLOWERING:
            by_strip = {(one.batch.id, one.part.name): one for one in found}
            strips = in_order((self.of(one) for one in found), order)
            return [by_strip[strip.batch, strip.part] for strip in strips]
        return sorted(found, key=lambda one: self._place_and_day(one, order))

    def _place_and_day(self, one: PartOf, order: Order) -> tuple[int, date, int, str, str]:
        place = self.season.place(one.part.place) if order is Order.PLACE else None
        rank = (place.order if place else NOWHERE) if order is Order.PLACE else 0
        name = one.batch.id
        return rank, one.batch.begun, len(name), name, one.part.name

    def all(self) -> list[YearStrip]:
        """Every strip."""
        return [self.of(one) for one in self.parts(Order.PLACE)]


def strip_row(strips: Strips, one: PartOf, days: Days, order: Order) -> Row:
    """One part's row; its strip is reckoned when the row comes in sight."""

    def words(width: int) -> Line:
        drawn = strip_rows([strips.of(one)], days, strips.day, width, glyphs(), order)
        return shown(drawn)[0]

    return Row(words, one.key)


def flower_key(found: Flowering) -> str:
    """What a flowering's row is picked by."""
    return f"{found.batch}\n{found.title}\n{found.days.opens.isoformat()}"


def flower_rows(found: Flowering, days: Days, day: date, chosen: str) -> tuple[Row, Row]:
    """One flowering: its strip, and under it what flowers with it, height and colours."""

    def drawn(width: int) -> Sequence[Line]:
        rows = flowering_rows([found], days, day, width, glyphs(), chosen, in_units)
        return shown(next(iter(rows)))

    def under(width: int) -> Line:
        lines = drawn(width)
        said = " ".join("".join(text for text, _ in words).strip() for words in lines[1:])
        return line((INDENT * 2 + said, Role.INK)) if said else BLANK

    return Row(lambda width: drawn(width)[0], flower_key(found)), Row(under)


def room_rows(room: PlaceRoom, day: date) -> list[Row]:
    """One place's weeks, and under them when it will be too full."""

    def words(width: int) -> Line:
        return shown(room_lines((room,), day, width, glyphs()))[ROOM_HEAD]

    over = over_words(room, day).partition(": ")[2]

    def too_full(width: int) -> Line:
        return line((fit(INDENT * 2 + over, width), Role.BAD))

    return [Row(words, room.code), *([Row(too_full)] if over else [])]


def nothing(words: str) -> list[Row]:
    """One line in place of rows."""
    return [told(line((words, Role.STRONG)))]
