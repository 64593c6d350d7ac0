"""Water left, tray by tray, the driest first; and which trays will not last while one is away."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta

from benchround.core.batch.batch import Batch, Part
from benchround.core.dates import say_day
from benchround.core.errors import BenchroundError
from benchround.core.record import Draft, Figure, Kind
from benchround.core.typed.date import how_far
from benchround.core.water.tray_outlook import Away, tray_outlook, water_away
from benchround.drawing.water import WaterLeft, water_left
from benchround.drawing.words import counted
from benchround.screens.keys import WATER, bindings
from benchround.screens.text import Line, Role, fit, line, paragraph, width_of
from benchround.screens.water_rows import (
    ABSENCE,
    ALL_LAST,
    NO_TRAYS,
    away_row,
    head_row,
    soonest_first,
    tray_row,
    tray_told,
)
from benchround.screens.wide_card import WideCard
from benchround.screens.widgets.pick_list import Row, told

FIRST_DAYS, MOST_DAYS = 3, 21
FURTHEST_LEAVE = 14
Trays = Mapping[str, tuple[Batch, Part]]


class WaterScreen(WideCard, inherit_bindings=False):
    """The water in every tray and pot."""

    BINDINGS = bindings(WATER)
    KEYS_OF = WATER
    OF_ROWS = frozenset(("open-ahead", "still-wet", "already-dry", "away", "turn"))

    def __init__(self) -> None:
        super().__init__()
        self.away = False
        self.days = FIRST_DAYS
        self.leave_in = 1
        self._lost: Sequence[Away] = ()
        self._trays: Trays = {}
        self._left: Mapping[str, WaterLeft] = {}

    @property
    def leaving(self) -> date:
        """The morning of leaving."""
        return self.desk.today + timedelta(days=self.leave_in)

    def rows(self) -> Sequence[Row]:
        """A row for each tray, or for each that does not last."""
        season, today = self.desk.season, self.desk.today
        self._left = {tray.about: tray for tray in water_left(season, today)}
        self._trays = {
            " ".join(filter(None, (batch.id, part.name))): (batch, part)
            for batch in season.batches.values()
            for part in batch.parts
        }
        if not self._left:
            return [told(line((NO_TRAYS, Role.STRONG)))]
        if not self.away:
            return [head_row(), *(tray_row(tray) for tray in self._left.values())]
        self._lost = soonest_first(water_away(season, self.leaving, self.days))
        rows = [away_row(one, self._named(one), season, self.leaving) for one in self._lost]
        return rows or [told(line((ALL_LAST, Role.DONE)))]

    def _named(self, one: Away) -> str:
        found = self._left.get(" ".join(filter(None, (one.batch, one.part))))
        return found.title if found else one.batch

    def head_lines(self, width: int) -> Sequence[Line]:
        """How many trays there are; or for how long one is away, and how many do not last."""
        at, of = self.picks.position
        place = f"{at} of {of}" if of else ""
        room = max(0, width - width_of(place) - 1)
        title = self._away_title() if self.away else f"Water left, {say_day(self.desk.today)}"
        first = line((fit(title, room), Role.HEADING), (f" {place}", Role.QUIET))
        if not self.away:
            return [first]
        said = f"{len(self._lost)} of {len(self._left)} trays do not last. {ABSENCE}"
        return [first, *paragraph(said, width, Role.STRONG)]

    def _away_title(self) -> str:
        when = how_far(self.leaving, self.desk.today)
        return f"Away {counted(self.days, 'day')}, leaving {say_day(self.leaving)}, {when}"

    def page_lines(self, width: int) -> Sequence[Line]:
        """What is known of the tray under the cursor; then all of them in sentences."""
        return list(self._page(width))

    def _page(self, width: int) -> Iterator[Line]:
        season, today = self.desk.season, self.desk.today
        here = self._trays.get(self.picks.picked)
        found = tray_outlook(season, *here, today) if here else None
        left = self._left.get(self.picks.picked)
        every = list(self._left.values())
        yield from tray_told(found, left, every, width)

    def _tray(self) -> tuple[Batch, Part]:
        here = self._trays.get(self.picks.picked)
        if here is None:
            raise BenchroundError("There is no tray under the cursor.")
        return here

    def action_open(self) -> None:
        """Open the batch."""
        self.bench.open("batch", self._tray()[0].id)

    def action_said(self, said: str) -> None:
        """Record what the tray feels like today."""
        batch, part = self._tray()
        today = self.desk.today
        self.require_open(today)
        figures: dict[str, Figure] = {"said": said}
        if part.name:
            figures["part"] = part.name
        key = self.picks.picked
        words = self.bench.doings.record((Draft(Kind.MOISTURE, batch.id, figures),), today)
        self.write_card(key)
        self.tell()
        self.say(words)

    def action_weigh(self) -> None:
        """Open the sheet for the tray's weight."""
        batch, part = self._tray()
        self.require_open(self.desk.today)
        self.bench.open("weighing sheet", batch.id, part.name)

    def action_away(self) -> None:
        """Show what does not last an absence, or the water left today."""
        self.away = not self.away
        self._anew("left and right: days away; - and +: the day of leaving." if self.away else "")

    def action_days(self, by: int) -> None:
        """Be away longer or shorter."""
        self._require_away()
        if not 1 <= self.days + by <= MOST_DAYS:
            raise BenchroundError(f"An absence of 1 to {MOST_DAYS} days is reckoned.")
        self.days += by
        self._anew(f"Away {counted(self.days, 'day')}.")

    def action_leave(self, by: int) -> None:
        """Leave earlier or later."""
        self._require_away()
        if not 0 <= self.leave_in + by <= FURTHEST_LEAVE:
            raise BenchroundError(f"Leaving is reckoned from today to in {FURTHEST_LEAVE} days.")
        self.leave_in += by
        self._anew(f"Leaving {say_day(self.leaving)}.")

    def _require_away(self) -> None:
        if not self.away:
            raise BenchroundError("Press a first: it shows what does not last while you are away.")

    def _anew(self, words: str) -> None:
        self.write_card()
        self.tell()
        self.say(words)

    def action_back(self) -> None:
        """Go back to the water left; there already, close."""
        if self.away:
            self.action_away()
        else:
            self.dismiss(None)
