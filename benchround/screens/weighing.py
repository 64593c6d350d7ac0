"""The weighing sheet: what a tray weighs; two weighings tell how fast it dries."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from benchround.core.errors import BenchroundError
from benchround.core.record import Draft, Figure, Kind, Record
from benchround.core.typed.date import read_day, say_full
from benchround.core.typed.figures import read_number
from benchround.core.water.tray_holder import compost_of, holder_of
from benchround.screens.keys import WEIGHING, bindings
from benchround.screens.sheet_base import Reading, Sheet, SheetFault
from benchround.screens.sheet_fields import day_field, echo_day, month_first
from benchround.screens.text import Line, Role, paragraph
from benchround.screens.widgets.field import Field

MOST_G = 100_000.0
HOW = (
    "Weigh one {0} after watering, when it has drained, and the same {0} again days later "
    "before the next watering. Rain between the two, or water given, spoils the pair."
)
SHOWN = 4


class WeighingSheet(Sheet, inherit_bindings=False):
    """What a tray weighs.

    Args:
        about: the batch.
        part: its part, empty for the main one.
    """

    BINDINGS = bindings(WEIGHING)
    KEYS_OF = WEIGHING

    def __init__(self, about: str, part: str) -> None:
        super().__init__()
        self.about = about
        self.part_name = part

    @property
    def kept_as(self) -> str:
        """One sheet for each tray."""
        return f"{WEIGHING} {self.about} {self.part_name}"

    @property
    def _what(self) -> str:
        """What is put on the scales: a pot or a tray."""
        season = self.desk.season
        batch = season.batches[self.about]
        part = next((one for one in batch.parts if one.name == self.part_name), batch.main)
        crop, compost = season.crop(batch.crop), compost_of(season)
        return holder_of(batch, part, crop, season.containers, compost).each.split()[-1]

    def make_fields(self) -> Sequence[Field]:
        """The weight and the day."""
        today = self.desk.today
        grams = Field("grams", "weighs", hint=f"g, one {self._what}", figure=True)
        return [grams, day_field(today, today)]

    def title_lines(self, width: int) -> Sequence[Line]:
        """Which tray."""
        batch = self.desk.season.batches[self.about]
        name = " ".join(filter(None, (self.about, self.part_name)))
        words = f"Weigh: {name} {self.desk.season.crop(batch.crop).name}"
        return paragraph(words, width, Role.HEADING)

    def note_lines(self, width: int) -> Sequence[Line]:
        """The weighings before it, and how it is done."""
        lines = []
        for record in reversed(self._before()[-SHOWN:]):
            grams = record.number("grams")
            said = f"{say_full(record.day, self.desk.today)}: {grams:g} g" if grams else ""
            lines += paragraph(said, width)
        return [*lines, *paragraph(HOW.format(self._what), width, Role.QUIET)]

    def _before(self) -> list[Record]:
        batch = self.desk.season.batches[self.about]
        return [
            record
            for record in batch.records
            if record.kind is Kind.WEIGHED and record.text("part") == self.part_name
        ]

    def retell(self) -> None:
        """Say again which day is meant."""
        echo_day(self.form.field("day"), self.desk.season, self.desk.today)

    def save(self) -> str:
        """Record the weight."""
        values, reading = self.form.values(), Reading()
        grams = reading.read("grams", lambda: read_number(values["grams"], 1.0, MOST_G, "g"), None)
        day = reading.read("day", lambda: self._day(values["day"]), self.desk.today)
        if grams is None and "grams" not in reading.faults:
            reading.faults["grams"] = "needed here"
        reading.finish()
        figures: dict[str, Figure] = {"grams": grams or 0.0}
        if self.part_name:
            figures["part"] = self.part_name
        try:
            return self.bench.doings.record((Draft(Kind.WEIGHED, self.about, figures),), day)
        except BenchroundError as error:
            raise SheetFault({}, str(error)) from None

    def _day(self, text: str) -> date:
        day = read_day(text, self.desk.today, month_first=month_first(self.desk.season))
        self.bench.doings.require_past(day)
        return day
