"""The weather: days to come and days measured, each typed in a line; its words beneath."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from benchround.core.errors import BenchroundError
from benchround.core.sky.known_day import tonight_min_c
from benchround.core.units import Units, units_of
from benchround.screens.keys import WEATHER, bindings
from benchround.screens.text import BLANK, Line, Role, fit, line, paragraph, width_of
from benchround.screens.weather_rows import (
    AHEAD,
    NONE_AHEAD,
    NONE_BACK,
    ahead_lines,
    ahead_row,
    back_lines,
    back_row,
    day_told,
    scale_of,
)
from benchround.screens.wide_card import WideCard
from benchround.screens.widgets.pick_list import Row, heading, told
from benchround.screens.words import full_day


class WeatherScreen(WideCard, inherit_bindings=False):
    """What is known of the weather."""

    BINDINGS = bindings(WEATHER)
    KEYS_OF = WEATHER

    @property
    def units(self) -> Units:
        """The units the grower reads."""
        return units_of(self.desk.season.settings)

    def head_lines(self, width: int) -> Sequence[Line]:
        """The day, and what to reckon with tonight."""
        at, of = self.picks.position
        place = f"{at} of {of}" if of else ""
        title = f"Weather, {full_day(self.desk.today)}"
        room = max(0, width - width_of(place) - 1)
        lines = [line((fit(title, room), Role.HEADING), (f" {place}", Role.QUIET))]
        return [*lines, *paragraph(self._tonight(), width, Role.STRONG)]

    def _tonight(self) -> str:
        low_c, how = tonight_min_c(self.desk.season.weather, self.desk.today)
        if low_c is None:
            return "Tonight's lowest is not known."
        return f"Tonight {self.units.temp(low_c)}: {how.partition(': ')[2]}"

    def rows(self) -> Sequence[Row]:
        """The days to come, then what was measured."""
        season, day, units = self.desk.season, self.desk.today, self.units
        ahead, back = ahead_lines(season, day), back_lines(season, day)
        scale = scale_of(ahead)
        return [
            heading(f"To come, gusts in {units.speed_unit}", "o types it"),
            *(ahead_row(one, scale, units) for one in ahead),
            *([] if ahead else [told(line((NONE_AHEAD, Role.STRONG)))]),
            heading("Measured, newest first", "m types it"),
            *(back_row(seen, units) for seen in back),
            *([] if back else [told(line((NONE_BACK, Role.STRONG)))]),
        ]

    def page_lines(self, width: int) -> Sequence[Line]:
        """The day under the cursor, then every day to come, in sentences."""
        return list(self._page(width))

    def _page(self, width: int) -> Iterator[Line]:
        season, today, units = self.desk.season, self.desk.today, self.units
        every = {
            f"{AHEAD}\n{one.day.isoformat()}": day_told(one.day, "", one.weather, units, today)
            for one in ahead_lines(season, today)
            if one.weather is not None
        }
        seen = {
            one.key: day_told(one.day, one.where, one.known, units, today)
            for one in back_lines(season, today)
        }
        mine = (every | seen).get(self.picks.picked, "")
        yield from paragraph(mine or NONE_AHEAD, width, Role.STRONG)
        for words in season.weather.doubts:
            yield from paragraph(f"Left out: {words}", width, Role.CAUTION, "  ")
        if every:
            yield BLANK
            yield from paragraph("All days to come", width, Role.HEADING)
        for words in every.values():
            yield from paragraph(words, width, Role.INK, "  ")

    @property
    def _picked(self) -> tuple[str, date]:
        """The place and the day under the cursor; outside and today where there is none."""
        code, _, day = self.picks.picked.partition("\n")
        return code, date.fromisoformat(day) if day else self.desk.today

    def action_outlook(self) -> None:
        """Open the line for the outlook."""
        self.require_open(self.desk.today)
        self.bench.open("outlook sheet", self.desk.today)

    def action_reading(self) -> None:
        """Open the sheet for what was measured today."""
        self.require_open(self.desk.today)
        self.bench.open("reading sheet", "", self.desk.today)

    def action_type_day(self) -> None:
        """Type for the day under the cursor."""
        code, day = self._picked
        if not self.picks.picked:
            raise BenchroundError("No day is known yet: o types the outlook, m a reading.")
        self.require_open(self.desk.today)
        if code == AHEAD:
            self.bench.open("outlook sheet", day)
        else:
            self.bench.open("reading sheet", code, day)

    def action_lids(self) -> None:
        """Open the frames' day."""
        self.bench.open("lids")

    def action_water(self) -> None:
        """Open the water left."""
        self.bench.open("water")
