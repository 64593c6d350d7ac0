"""The reading sheet: what the thermometer and the rain gauge say, outside or in a place."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from functools import partial

from benchround.core.errors import BenchroundError, InputError
from benchround.core.record import Draft, Figure, Kind
from benchround.core.sky.known_day import MOST_RAIN_MM
from benchround.core.sky.weather import COLDEST_C, HOTTEST_C, DayWeather
from benchround.core.typed.date import read_day
from benchround.core.units import Units, units_of
from benchround.screens.keys import READING, bindings
from benchround.screens.sheet_base import Reading, Sheet, SheetFault
from benchround.screens.sheet_fields import day_field, echo_day, month_first, place_choices
from benchround.screens.text import Line, Role, paragraph
from benchround.screens.weather_rows import day_told
from benchround.screens.widgets.field import Choice, Field, among

OUTSIDE = Choice("site", "outside", "the site's own thermometer and gauge")
"""No place can have this code."""
NOTHING_TYPED = "type the lowest, the highest or the rain"
HOW = (
    "The lowest and the highest since the thermometer was last reset; what is not known stays "
    "empty. A place's own thermometer teaches how warm that place gets."
)


class ReadingSheet(Sheet, inherit_bindings=False):
    """What was measured.

    Args:
        code: the place; empty for outside.
        day: the day it was read.
    """

    BINDINGS = bindings(READING)
    KEYS_OF = READING

    def __init__(self, code: str, day: date) -> None:
        super().__init__()
        self.code = code
        self.day = day

    @property
    def kept_as(self) -> str:
        """One sheet for each place and day."""
        return f"{READING} {self.code} {self.day.isoformat()}"

    @property
    def units(self) -> Units:
        """The units the grower reads."""
        return units_of(self.desk.season.settings)

    def make_fields(self) -> Sequence[Field]:
        """Where, the two temperatures, the rain, the day."""
        season, units = self.desk.season, self.units
        place = season.place(self.code)
        where = among([OUTSIDE, *place_choices(season)])
        return [
            Field("min_c", "lowest", hint=f"degrees {units.degrees}", figure=True),
            Field("max_c", "highest", hint=f"degrees {units.degrees}", figure=True),
            Field("rain_mm", "rain", hint=str(units.rain), figure=True),
            Field("place", "where", place.name if place else OUTSIDE.name, where, only=True),
            day_field(self.day, self.desk.today),
        ]

    def title_lines(self, width: int) -> Sequence[Line]:
        """What this is."""
        return paragraph("Measured", width, Role.HEADING)

    def retell(self) -> None:
        """Say again which day is meant."""
        echo_day(self.form.field("day"), self.desk.season, self.desk.today)

    def note_lines(self, width: int) -> Sequence[Line]:
        """What is known of that day there already."""
        known, where = self._known()
        how = paragraph(HOW, width, Role.QUIET)
        if known is None or known[1] is None:
            return how
        said = day_told(known[0], where, known[1], self.units, self.desk.today)
        return [*paragraph(f"Known so far: {said}", width), *how]

    def _known(self) -> tuple[tuple[date, DayWeather | None] | None, str]:
        season = self.desk.season
        try:
            day = self._day()
            code = self._code()
        except InputError:
            return None, ""
        place = season.place(code)
        known = season.weather.at(code, day) if code else season.weather.on(day)
        return (day, known), place.name if place else ""

    def _day(self) -> date:
        season, text = self.desk.season, self.form.field("day").text
        day = read_day(text, self.desk.today, month_first=month_first(season))
        self.bench.doings.require_past(day)
        return day

    def _code(self) -> str:
        said = self.form.field("place").value
        for place in self.desk.season.places:
            if said in (place.code, place.name):
                return place.code
        if said in (OUTSIDE.value, OUTSIDE.name, ""):
            return ""
        raise InputError("no place goes by these letters: take one of the list.")

    def save(self) -> str:
        """Record it."""
        values, reading, units = self.form.values(), Reading(), self.units
        day = reading.read("day", self._day, self.day)
        code = reading.read("place", self._code, "")
        said: dict[str, float | None] = {}
        for name in ("min_c", "max_c"):
            text = values[name]
            reader = partial(units.read_temp_c, text, COLDEST_C, HOTTEST_C)
            said[name] = reading.read(name, reader, None)
        said["rain_mm"] = reading.read(
            "rain_mm", lambda: units.read_fall_mm(values["rain_mm"], MOST_RAIN_MM), None
        )
        reading.finish()
        figures: dict[str, Figure] = {name: one for name, one in said.items() if one is not None}
        if not figures:
            raise SheetFault({"min_c": NOTHING_TYPED})
        low, high = said["min_c"], said["max_c"]
        if low is not None and high is not None and low > high:
            words = f"the lowest, {units.temp(low)}, is above the highest, {units.temp(high)}"
            raise SheetFault({"min_c": words, "max_c": words})
        return self._record(Draft(Kind.READING, code, figures), day)

    def _record(self, draft: Draft, day: date) -> str:
        place = self.desk.season.place(draft.about)
        low, high = draft.figures.get("min_c"), draft.figures.get("max_c")
        rain = draft.figures.get("rain_mm")
        said = []
        if isinstance(low, float) or isinstance(high, float):
            known = [one if isinstance(one, float) else None for one in (low, high)]
            said.append(self.units.span(*known))
        if isinstance(rain, float):
            said.append(f"rain {self.units.fall(rain)}")
        words = f"measured {place.name if place else 'outside'}, {', '.join(said)}"
        try:
            return self.bench.doings.record((draft,), day, words=words)
        except BenchroundError as error:
            raise SheetFault({}, str(error)) from None
