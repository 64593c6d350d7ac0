"""The outlook sheet: the weather ahead typed in one line, said again in words while it is typed."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from benchround.core.errors import BenchroundError
from benchround.core.units import Degrees, Rain, Units, units_of
from benchround.feeds.outlook_day import OutlookLineError
from benchround.feeds.outlook_line import Outlook, read_outlook
from benchround.screens.keys import OUTLOOK, bindings
from benchround.screens.sheet_base import Sheet, SheetFault
from benchround.screens.text import BLANK, Line, Role, line, paragraph
from benchround.screens.widgets.field import Field

PARTED = (
    "A ; begins the next day; +2, fri or 2026-05-29 names another. Nothing is guessed: a word "
    "that is not known is named."
)


def example(units: Units) -> str:
    """Two days of a line, in the grower's units."""
    today, next_day = ("41 73", "46/81") if units.degrees is Degrees.F else ("5 23", "8/27")
    return f"{today} sun; {next_day} {_rain(units)} {_gust(units)} from 17"


def how(units: Units) -> tuple[str, str]:
    """How a line is written, in the grower's units."""
    temps = "41 73" if units.degrees is Degrees.F else "5 23"
    gust = _gust(units)
    depth = "0.9 in" if units.rain is Rain.INCH else "22 mm"
    return (
        f"A day: {temps} is lowest and highest; sun, cloud, rain and the like; {_rain(units)} is "
        f"{depth}; {gust} gusts of {gust[1:]} {units.speed_unit}; from 17 the hour it sets in.",
        PARTED,
    )


def _gust(units: Units) -> str:
    return "g42" if units.rain is Rain.INCH else "g68"


def _rain(units: Units) -> str:
    return "r0.9" if units.rain is Rain.INCH else "r22"


class OutlookSheet(Sheet, inherit_bindings=False):
    """The weather ahead in one line.

    Args:
        day: the day the line begins with.
    """

    BINDINGS = bindings(OUTLOOK)
    KEYS_OF = OUTLOOK

    def __init__(self, day: date) -> None:
        super().__init__()
        self.day = day

    def make_fields(self) -> Sequence[Field]:
        """The one line."""
        return [Field("line", "outlook", wide=True)]

    def title_lines(self, width: int) -> Sequence[Line]:
        """What this is."""
        return paragraph("The weather ahead, in one line", width, Role.HEADING)

    def on_mount(self) -> None:
        """Begin with the day asked for, unless something was typed before."""
        if self._beginning:
            self.form.field("line").put(self._beginning)

    @property
    def _beginning(self) -> str:
        """What the line begins with where it is for another day."""
        ahead = (self.day - self.desk.today).days
        return f"+{ahead} " if ahead > 0 else ""

    @property
    def units(self) -> Units:
        """The units the grower types."""
        return units_of(self.desk.season.settings)

    def _read(self) -> Outlook:
        season = self.desk.season
        text = self.form.field("line").text.strip()
        return read_outlook(text, self.desk.today, season.site.day_length_h, self.units)

    def put_away(self) -> None:
        """Keep what was typed, but not the bare beginning of another day."""
        if self.form.field("line").text.strip() == self._beginning.strip():
            self.form.field("line").reset()
        super().put_away()

    def retell(self) -> None:
        """Say beside the line how to begin."""
        typed = self.form.field("line").text.strip()
        self.form.field("line").hint = "" if typed else f"such as {example(self.units)}"

    def note_lines(self, width: int) -> Sequence[Line]:
        """What was understood so far, day by day; then how it is written."""
        told = [words for text in how(self.units) for words in paragraph(text, width, Role.QUIET)]
        if not self.form.field("line").text.strip():
            return told
        return [*self._echo(width), BLANK, *told]

    def _echo(self, width: int) -> Sequence[Line]:
        try:
            understood = self._read()
        except OutlookLineError as error:
            return paragraph(f"Not yet: {error}", width, Role.LATE)
        return [
            line(("Understood:", Role.HEADING)),
            *(
                words
                for one in understood.days
                for words in paragraph(one.words(self.desk.today), width, indent="  ")
            ),
        ]

    def save(self) -> str:
        """Record a day of outlook for each piece of the line."""
        try:
            outlook = self._read()
        except OutlookLineError as error:
            raise SheetFault({"line": str(error)}) from None
        drafts = outlook.drafts()
        words = "outlook for 1 day" if len(drafts) == 1 else f"outlook for {len(drafts)} days"
        try:
            return self.bench.doings.record(drafts, self.desk.today, words=words)
        except BenchroundError as error:
            raise SheetFault({}, str(error)) from None
