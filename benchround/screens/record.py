"""The record sheet: anything that happened to a batch, as far as its stage allows it."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from functools import partial

from benchround.core.batch.batch import Batch, Part
from benchround.core.batch.part_telling import TAKES_ALL
from benchround.core.errors import BenchroundError, InputError
from benchround.core.lifecycle import NEXT
from benchround.core.record import Draft, Figure, Kind
from benchround.core.typed.date import read_day
from benchround.core.typed.figures import read_note, read_number, read_whole
from benchround.core.typed.words import read_place
from benchround.core.unit_words import own
from benchround.core.units import MM_A_CM, Rain, Units, units_of
from benchround.screens.batch_lines import full_day
from benchround.screens.keys import RECORD, bindings
from benchround.screens.record_fields import (
    ASKED,
    NEEDS,
    NUMBER,
    PLACE,
    STALLED_BY,
    WANTED,
    WHOLE,
    Wanted,
    kinds_for,
)
from benchround.screens.record_words import kind_finder
from benchround.screens.sheet_base import Reading, Sheet, SheetFault
from benchround.screens.sheet_fields import (
    day_field,
    echo_day,
    month_first,
    note_cautions,
    place_field,
)
from benchround.screens.text import Line, Role, line, paragraph
from benchround.screens.widgets.field import Choice, Field, plain_choices
from benchround.screens.words import figure_words

LAST_RECORDS = 6

MM = "mm"
HEIGHT = "height_cm"


class RecordSheet(Sheet, inherit_bindings=False):
    """Record one thing about a batch, or about a part of it.

    Args:
        about: the batch.
        part: the part, empty for the main one.
        key: the task the cursor goes back to.
        day: the day looked at in the round.
    """

    BINDINGS = bindings(RECORD)
    KEYS_OF = RECORD

    def __init__(self, about: str, part: str, key: str, day: date) -> None:
        super().__init__()
        self.about = about
        self.part_name = part
        self.task_key = key
        self.day = day
        self._asked_of: dict[str, str] = {}

    @property
    def kept_as(self) -> str:
        """One sheet for each part of a batch."""
        return f"record {self.about} {self.part_name}"

    @property
    def sown_batch(self) -> Batch:
        """The batch as it stands."""
        return self.desk.season.batches[self.about]

    @property
    def part(self) -> Part:
        """The part as it stands."""
        return self.sown_batch.part(self.part_name)

    def make_fields(self) -> Sequence[Field]:
        """What happened, its figures, a note, and the day."""
        stage = self.part.stage
        kinds = [Choice(kind, kind, self._leads_to(kind)) for kind in kinds_for(stage)]
        what = Field("kind", "what happened", finder=kind_finder(kinds), only=True)
        figures = [self._field(wanted) for wanted in WANTED.values()]
        return [what, *figures, Field("note", "note"), day_field(self.day, self.desk.today)]

    @property
    def _units(self) -> Units:
        return units_of(self.desk.season.settings)

    def _in_inches(self, wanted: Wanted) -> bool:
        """Whether a figure kept in cm is typed in inches; a pot is known by its cm."""
        return wanted.name == HEIGHT and self._units.rain is Rain.INCH

    def _leads_to(self, kind: Kind) -> str:
        to = NEXT[(self.part.stage, kind)]
        return "" if to is self.part.stage else f"then {to}"

    def _field(self, wanted: Wanted) -> Field:
        if wanted.sort == PLACE:
            field = place_field(self.desk.season, "", label=wanted.label)
        else:
            finder = plain_choices(wanted.choices) if wanted.choices else None
            field = Field(wanted.name, wanted.label, finder=finder, only=bool(wanted.choices))
        turned = wanted.unit == MM or self._in_inches(wanted)
        field.hint = self._units.length_unit if turned else wanted.unit
        field.hidden = True
        field.figure = wanted.sort in (NUMBER, WHOLE)
        return field

    @property
    def kind(self) -> Kind | None:
        """The kind of thing chosen; None while nothing is."""
        choice = self.form.field("kind").choice
        return Kind(choice.value) if choice else None

    def title_lines(self, width: int) -> Sequence[Line]:
        """The batch and where it is in its life."""
        batch, part = self.sown_batch, self.part
        crop = self.desk.season.crop(batch.crop).name
        variety = f" '{batch.variety}'" if batch.variety else ""
        alive = f", {part.alive} alive" if part.alive is not None else ""
        place = self.desk.season.place(part.place)
        where = f", {place.name}" if place else ""
        name = f" {self.part_name}" if self.part_name else ""
        since = full_day(part.since, self.desk.today)
        return [
            *paragraph(f"Record: {self.about}{name} {crop}{variety}", width, Role.HEADING),
            *paragraph(f"{part.stage} since {since}{alive}{where}", width),
        ]

    def note_lines(self, width: int) -> Sequence[Line]:
        """Cautions for what is typed, and what was recorded last."""
        cause = self.form.field("cause")
        said = "" if cause.hidden else cause.value
        lines = note_cautions(self.form.field("note").text, said, width)
        lines.append(line(("Recorded last", Role.HEADING)))
        for record in reversed(self.sown_batch.records[-LAST_RECORDS:]):
            figures = figure_words(record.figures, self.desk.season)
            said = ", ".join(words for words in (figures, own(record.note)) if words)
            day = full_day(record.day, self.desk.today)
            words = f"{day} {record.kind}{f': {said}' if said else ''}"
            lines += paragraph(words, width, Role.QUIET, "  ")
        return lines

    def retell(self) -> None:
        """Ask for the figures of the kind chosen, and say which day is meant."""
        kind = self.kind
        self.form.field("kind").hint = "" if kind else "type its first letters"
        asked = ASKED.get(kind, ()) if kind else ()
        for wanted in WANTED.values():
            self.form.field(wanted.name).hidden = wanted.name not in asked
        cause = self.form.field("cause")
        causes = STALLED_BY if kind is Kind.STALLED else WANTED["cause"].choices
        cause.find_with(plain_choices(causes))
        echo_day(self.form.field("day"), self.desk.season, self.desk.today)

    def action_onward(self) -> None:
        """From what happened to its figures, where it has any; from anywhere else, save."""
        kind = self.kind
        if self.form.now.id == "kind" and kind is not None and ASKED.get(kind):
            self.retell()
            self.form.step(1)
        else:
            self.action_save()

    def save(self) -> str:
        """Record it; what takes every plant is asked about first."""
        kind = self.kind
        if kind is None:
            raise SheetFault({"kind": "type the first letters of what happened"})
        values, reading = self.form.values(), Reading()
        day = reading.read("day", lambda: self._day(values["day"]), self.day)
        note = reading.read("note", lambda: read_note(values["note"]), "")
        figures: dict[str, Figure] = {"part": self.part_name} if self.part_name else {}
        for name in ASKED.get(kind, ()):
            value = reading.read(name, partial(self._figure, WANTED[name], values), None)
            if value is not None and value != "":
                figures[name] = value
        said = {**figures, **({"note": note} if note else {})}
        for name in NEEDS.get(kind, ()):
            if name not in said:
                reading.faults.setdefault(name, "needed here")
        reading.finish()
        if kind in TAKES_ALL and "count" not in said:
            self._ask_for_all(values)
        draft = Draft(kind, self.about, figures, note)
        try:
            return self.bench.doings.record((draft,), day, self.task_key)
        except BenchroundError as error:
            count = {"count": str(error)} if self._about_count(error) else {}
            raise SheetFault(count, str(error)) from None

    def _ask_for_all(self, values: dict[str, str]) -> None:
        """Ask once before every plant is taken; the same sheet saved again says yes.

        Raises:
            SheetFault: it was not asked yet.
        """
        alive = self._alive()
        if alive == 0 or values == self._asked_of:
            return
        self._asked_of = values
        every = "all of them?" if alive is None else f"all {alive}?"
        key = self.ring.named("record-on")
        raise SheetFault(
            {"count": f"{every} {key} once more says yes; else type how many"},
            f"Nothing is recorded yet: {every}",
        )

    def _alive(self) -> int | None:
        batch = self.desk.season.batches.get(self.about)
        parts = batch.parts if batch is not None else ()
        return next((part.alive for part in parts if part.name == self.part_name), None)

    def _day(self, text: str) -> date:
        day = read_day(text, self.desk.today, month_first=month_first(self.desk.season))
        self.bench.doings.require_past(day)
        return day

    def _figure(self, wanted: Wanted, values: dict[str, str]) -> Figure | None:
        text = values.get(wanted.name, "")
        if wanted.sort == PLACE:
            return read_place(text, self.desk.season.places)
        if wanted.sort == WHOLE:
            return read_whole(text, int(wanted.most))
        if wanted.unit == MM:
            return self._units.read_length_mm(text, wanted.most)
        if self._in_inches(wanted):
            length_mm = self._units.read_length_mm(text, wanted.most * MM_A_CM)
            return None if length_mm is None else round(length_mm / MM_A_CM, 1)
        if wanted.sort == NUMBER:
            return read_number(text, 0, wanted.most, wanted.unit)
        if wanted.choices and text and text not in wanted.choices and wanted.name != "cause":
            raise InputError(f"choose one of {', '.join(wanted.choices)}.")
        return read_note(text)

    def _about_count(self, error: BenchroundError) -> bool:
        count = self.form.field("count")
        return not count.hidden and bool(count.value) and str(error).startswith(count.value)
