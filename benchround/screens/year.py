"""The year: every batch and bulb as a strip, what flowers together, and the room on the benches."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from enum import StrEnum
from typing import TYPE_CHECKING, Self

from benchround.core.dates import Span as Days
from benchround.core.errors import BenchroundError
from benchround.core.season import Season
from benchround.drawing.flowering import Flowering, flowering_lines, flowerings
from benchround.drawing.room import PlaceRoom, bench_room, room_lines
from benchround.drawing.scale import growing_year, span_label
from benchround.drawing.year import axis_lines
from benchround.drawing.year_strips import Order
from benchround.screens.keys import YEAR, bindings
from benchround.screens.pictures import glyphs, shown
from benchround.screens.text import Line, Role, fit, line, paragraph, width_of
from benchround.screens.turn_lines import batch_turn
from benchround.screens.wide_card import WideCard
from benchround.screens.widgets.pick_list import LEAD_WIDE, Row
from benchround.screens.year_rows import (
    ROOM_HEAD,
    PartOf,
    Strips,
    flower_key,
    flower_rows,
    nothing,
    room_rows,
    strip_row,
)
from benchround.screens.year_told import flowering_told, room_told, strip_told

if TYPE_CHECKING:
    from benchround.screens.app import BenchroundApp

NO_BATCH = "No batch yet. Press g, then s to sow your first one."
NO_FLOWER = "Nothing is in flower or expected to be in these months."
NO_ROOM = "No place that holds trays is set up: g, then t does it."
MOST_YEARS = 10
"""How far the year can be turned back or on; strips lie nearer than that."""


class View(StrEnum):
    """What the list shows."""

    STRIPS = "strips"
    FLOWERING = "flowering"
    ROOM = "room"


class YearScreen(WideCard, inherit_bindings=False):
    """The year.

    Args:
        about: the batch to stand on; empty: the first.
    """

    BINDINGS = bindings(YEAR)
    KEYS_OF = YEAR
    OF_ROWS = frozenset(("open-ahead", "order", "turn"))

    def __init__(self, about: str = "") -> None:
        super().__init__()
        self.about = about
        self.view = View.STRIPS
        self.order = Order.PLACE
        self.years = 0
        self._strips: Strips | None = None
        self._parts: dict[str, PartOf] = {}
        self._flowerings: dict[str, Flowering] = {}
        self._rooms: dict[str, PlaceRoom] = {}

    @classmethod
    def arrive(cls, bench: BenchroundApp) -> Self:
        """The year, standing on the batch of the round's task or the one looked at last."""
        task = bench.round_screen.tasks.current
        about = task.about if task is not None else ""
        return cls(about if about in bench.desk.season.batches else bench.last_batch)

    @property
    def foot_idle(self) -> frozenset[str]:
        """Only the strips can be sorted."""
        return super().foot_idle | (
            frozenset(("order",)) if self.view is not View.STRIPS else set()
        )

    @property
    def season(self) -> Season:
        """The open season."""
        return self.desk.season

    @property
    def strips(self) -> Strips:
        """The strips of the season as it is now."""
        if self._strips is None or self._strips.season is not self.season:
            self._strips = Strips(self.season, self.desk.today)
        return self._strips

    @property
    def days(self) -> Days:
        """The year shown."""
        year = growing_year(self.season.site, self.desk.today)
        return Days(_shifted(year.opens, self.years), _shifted(year.closes, self.years))

    def on_mount(self) -> None:
        """Write the list and stand on the batch."""
        self.write_card("")
        self._stand_on(self.about)

    def rows(self) -> Sequence[Row]:
        """The rows of the view."""
        if self.view is View.FLOWERING:
            return self._flower_rows()
        return self._room_rows() if self.view is View.ROOM else self._strip_rows()

    def _strip_rows(self) -> Sequence[Row]:
        strips, days = self.strips, self.days
        self._parts = {one.key: one for one in strips.parts(self.order)}
        rows = [strip_row(strips, one, days, self.order) for one in self._parts.values()]
        return rows or nothing(NO_BATCH)

    def _flower_rows(self) -> Sequence[Row]:
        days, day = self.days, self.desk.today
        found = sorted(
            flowerings(self.strips.all(), days, self.about),
            key=lambda one: (one.days.opens, one.title),
        )
        self._flowerings = {flower_key(one): one for one in found}
        rows = [row for one in found for row in flower_rows(one, days, day, self.about)]
        return rows or nothing(NO_FLOWER if self.desk.season.batches else NO_BATCH)

    def _room_rows(self) -> Sequence[Row]:
        day = self.desk.today
        self._rooms = {room.code: room for room in bench_room(self.season, day)}
        rows = [row for room in self._rooms.values() for row in room_rows(room, day)]
        return rows or nothing(NO_ROOM)

    def head_lines(self, width: int) -> Sequence[Line]:
        """What is shown, which row of how many, and the months."""
        at, of = self.picks.position
        place = f"{at} of {of}" if of else ""
        room = max(0, width - width_of(place) - 1)
        title = line((fit(self._title(), room), Role.HEADING), (f" {place}", Role.QUIET))
        return [title, *(((" " * LEAD_WIDE, Role.QUIET), *axis) for axis in self._axis(width))]

    def _title(self) -> str:
        year = span_label(self.days)
        if self.view is View.ROOM:
            return "Bench room: trays in use, by the week"
        if self.view is View.FLOWERING:
            return f"In flower {year}" + (f", held against {self.about}" if self.about else "")
        return f"The year {year}, sorted by {self.order}"

    def _axis(self, width: int) -> Sequence[Line]:
        wide, day = max(0, width - LEAD_WIDE), self.desk.today
        if self.view is View.ROOM:
            rooms = list(self._rooms.values())[:1]
            return shown(room_lines(rooms, day, wide, glyphs()))[:ROOM_HEAD] if rooms else ()
        if self.view is View.FLOWERING:
            some = list(self._flowerings.values())[:1]
            drawn = flowering_lines(some, self.days, day, wide, glyphs())
            return shown(drawn)[:ROOM_HEAD] if some else ()
        return shown(axis_lines(self.days, day, wide, glyphs(), self.order)) if self._parts else ()

    def page_lines(self, width: int) -> Sequence[Line]:
        """The row under the cursor in words."""
        key, day = self.picks.picked, self.desk.today
        if self.view is View.STRIPS and key in self._parts:
            one = self._parts[key]
            told = strip_told(self.strips.of(one), day, width)
            return [*told, *batch_turn(self.season, one.batch, day, width)]
        if self.view is View.FLOWERING and key in self._flowerings:
            every = list(self._flowerings.values())
            mine = [one for one in every if one.batch == self.about]
            others = [one for one in every if one.batch != self.about]
            return list(flowering_told(mine, others, self.days, day, width))
        if self.view is View.ROOM and key in self._rooms:
            return list(self._room_told(self._rooms[key], width))
        return paragraph("Nothing to tell of.", width, Role.QUIET)

    def _room_told(self, room: PlaceRoom, width: int) -> Sequence[Line]:
        here = [
            " ".join(filter(None, (batch.id, part.name, self.season.crop(batch.crop).name)))
            for batch in self.season.batches.values()
            for part in batch.parts
            if part.place == room.code and not part.ended
        ]
        signs = glyphs()
        how = (
            f"Height: share of the room in use, {signs.levels[-1]} all of it, {signs.over} more "
            f"than there is; right of {signs.pointer} expected."
        )
        return list(room_told(room, here, how, self.desk.today, width))

    def on_pick_list_moved(self) -> None:
        """Keep to the batch under the cursor; in flowering the others are held against it."""
        self._follow()

    def _follow(self) -> None:
        key = self.picks.picked
        if self.view is View.STRIPS and key in self._parts:
            self.about = self._parts[key].batch.id
        elif self.view is View.FLOWERING and key in self._flowerings:
            self.about = self._flowerings[key].batch
            self.picks.show(self.rows())

    def write_card(self, key: str | None = None) -> None:
        """Write everything anew, the page from its top."""
        super().write_card(key)
        self.tell()

    def _show(self, view: View) -> None:
        self.view = view
        about = self.about
        self.write_card("")
        self._stand_on(about)

    def _stand_on(self, about: str) -> None:
        """Put the cursor on a batch's row, where it has one."""
        found = {key: one.batch.id for key, one in self._parts.items()}
        if self.view is View.FLOWERING:
            found = {key: one.batch for key, one in self._flowerings.items()}
        mine = next((key for key, batch in found.items() if batch == about), "")
        if self.view is not View.ROOM:
            self.picks.show(self.rows(), mine)
            self._follow()
            self.tell()

    def action_flowering(self) -> None:
        """Show only what flowers, or all strips again."""
        self._show(View.STRIPS if self.view is View.FLOWERING else View.FLOWERING)
        self.say("")

    def action_room(self) -> None:
        """Show the bench room, or all strips again."""
        self._show(View.STRIPS if self.view is View.ROOM else View.ROOM)
        self.say("")

    def action_order(self) -> None:
        """Sort by the next thing there is to sort by."""
        if self.view is not View.STRIPS:
            back = f"{self.ring.named('flowering')} or {self.ring.named('room')}"
            raise BenchroundError(
                f"Only the strips can be sorted: press {back} to go back to them."
            )
        every = tuple(Order)
        self.order = every[(every.index(self.order) + 1) % len(every)]
        self._show(View.STRIPS)
        self.say(f"Sorted by {self.order}.")

    def action_other_year(self, by: int) -> None:
        """Show the year before or after."""
        if self.view is View.ROOM:
            raise BenchroundError("The bench room is known from four weeks back to 22 weeks ahead.")
        if abs(self.years + by) > MOST_YEARS:
            raise BenchroundError(f"No strip lies more than {MOST_YEARS} years off.")
        self.years += by
        self._show(self.view)
        self.say(f"Showing {span_label(self.days)}.")

    def action_open(self) -> None:
        """Open the batch under the cursor, or the place."""
        key = self.picks.picked
        if not key:
            raise BenchroundError("There is nothing here to open.")
        if self.view is View.ROOM:
            self.bench.open("place", key)
        else:
            self.bench.open("batch", self.about)

    def action_back(self) -> None:
        """Go back to all strips; there already, close."""
        if self.view is View.STRIPS:
            self.dismiss(None)
        else:
            self._show(View.STRIPS)


def _shifted(day: date, years: int) -> date:
    """The same day of another year; a growing year begins and ends with a month, never February."""
    return day.replace(year=day.year + years)
