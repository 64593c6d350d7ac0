"""The sheet of a crop's figure: which one, and what it is this season."""

from __future__ import annotations

from collections.abc import Sequence

from benchround.core.crop.keys import SECTIONS
from benchround.core.crop.page import CropFigure, crop_figures, key_of, typed_figure
from benchround.core.crop.schema import Form, Key
from benchround.core.errors import BenchroundError, InputError
from benchround.core.record import Draft, Kind
from benchround.core.sky.weather import COLDEST_C, HOTTEST_C
from benchround.core.typed.figures import read_note
from benchround.core.units import MM_A_CM, Rain, Units, units_of
from benchround.screens.crop import fault
from benchround.screens.keys import FIGURE, bindings
from benchround.screens.sheet_base import Sheet, SheetFault
from benchround.screens.text import Line, Role, paragraph
from benchround.screens.widgets.field import Choice, Field, among
from benchround.shell.crop_rules import CropRules, rules_of

LONGEST_VALUE = 400

DEGREES_C = "degrees C"
MOST_MM = 100_000.0
SINGLE = (Form.NUMBER, Form.WHOLE)


class FigureSheet(Sheet, inherit_bindings=False):
    """Set one figure of a crop for this season.

    Args:
        crop: the crop's key.
        name: the figure's dotted name; empty: still to be chosen.
    """

    BINDINGS = bindings(FIGURE)
    KEYS_OF = FIGURE

    def __init__(self, crop: str, name: str) -> None:
        super().__init__()
        self.crop_key = crop
        self.figure_name = name

    @property
    def kept_as(self) -> str:
        """One sheet for each figure."""
        return f"figure {self.crop_key} {self.figure_name}"

    @property
    def rules(self) -> CropRules:
        """The season's own figures of the crop."""
        return rules_of(self.desk, self.crop_key)

    def _figures(self) -> dict[str, CropFigure]:
        crop, rules = self.desk.season.crop(self.crop_key), self.rules
        return {one.name: one for one in crop_figures(crop, rules.library, rules.changed)}

    def make_fields(self) -> Sequence[Field]:
        """The figure, its value, and a note."""
        known = self._figures()
        names = [*known, *(name for name in _every_name() if name not in known)]
        choices = [Choice(name, name, _meaning(name)) for name in names]
        figure = Field("figure", "figure", self.figure_name, among(choices), only=True)
        now = known.get(self.figure_name)
        value = Field("value", "this season", self._in_units(now.unit, now.written) if now else "")
        note = Field("note", "note", hint="why, or where you have it from")
        return [value, note, figure] if self.figure_name else [figure, value, note]

    @property
    def chosen(self) -> str:
        """The figure's dotted name; empty while none is chosen."""
        field = self.form.field("figure")
        return field.value if field.choice or not field.touched else ""

    def title_lines(self, width: int) -> Sequence[Line]:
        """The crop."""
        name = self.desk.season.crop(self.crop_key).name
        return paragraph(f"{name}: a figure of your own for this season", width, Role.HEADING)

    def note_lines(self, width: int) -> Sequence[Line]:
        """What the figure means, what may stand there, and what it is now."""
        name = self.chosen
        key = key_of(name) if name else None
        if key is None:
            return paragraph("Type letters of the figure's name, such as days.", width, Role.QUIET)
        lines = paragraph(f"{name}: {key.meaning}", width, Role.STRONG)
        lines += paragraph(f"allowed: {key.allowed}", width, Role.INK, "  ")
        now = self._figures().get(name)
        if now is None:
            return [*lines, *paragraph("now: the crop has none", width, Role.QUIET, "  ")]
        whose = "your own" if now.own else "the library's"
        said = f"{now.written} {now.unit}".rstrip()
        lines += paragraph(f"now: {said}, {whose}", width, Role.QUIET, "  ")
        return [*lines, *paragraph(f"source: {now.source}", width, Role.QUIET, "  ")]

    def retell(self) -> None:
        """Say beside the value what it is counted in."""
        key = key_of(self.chosen) if self.chosen else None
        self.form.field("value").hint = self._unit_said(key) if key else ""

    @property
    def _units(self) -> Units:
        return units_of(self.desk.season.settings)

    def _unit_said(self, key: Key) -> str:
        if key.unit == DEGREES_C:
            return f"degrees {self._units.degrees}"
        turned = key.unit == "mm" or (key.form in SINGLE and self._in_inches(key.unit))
        return self._units.length_unit if turned else _unit(key)

    def _in_inches(self, unit: str) -> bool:
        """Whether a figure kept in cm is read and typed in inches."""
        return unit == "cm" and self._units.rain is Rain.INCH

    def _in_units(self, unit: str, written: str) -> str:
        """A figure as the grower reads it."""
        try:
            number = float(written)
        except ValueError:
            return written
        if unit == "mm":
            return self._units.length(number)
        if self._in_inches(unit):
            return self._units.length(number * MM_A_CM)
        return self._units.figure(number) if unit == DEGREES_C else written

    def _typed(self, name: str, text: str) -> str:
        """A figure as it was typed in the grower's units, in C or mm."""
        key, now = key_of(name), self._figures().get(name)
        if key is None or not text[:1].isascii():
            return text
        in_inches = key.form in SINGLE and self._in_inches(key.unit)
        if key.unit not in (DEGREES_C, "mm") and not in_inches:
            return text
        if now is not None and text == self._in_units(now.unit, now.written):
            return now.written
        if not any(sign.isdigit() for sign in text):
            return text
        units = self._units
        number = (
            units.read_length_mm(text, MOST_MM)
            if key.unit in ("mm", "cm")
            else units.read_temp_c(text, COLDEST_C, HOTTEST_C)
        )
        if number is None:
            return text
        number = number / MM_A_CM if in_inches else number
        return f"{round(number) if key.form is Form.WHOLE else number:g}"

    def save(self) -> str:
        """Record the figure; the crop's table says whether it may stand there."""
        name, values = self.chosen, self.form.values()
        if not name or key_of(name) is None:
            raise SheetFault({"figure": "type letters of the figure's name"})
        try:
            text = read_note(values["value"], LONGEST_VALUE)
            note = read_note(values["note"])
        except InputError as error:
            raise SheetFault({"value": str(error)}) from None
        if not text:
            raise SheetFault({"value": "type what it is, or 'none' to take it away"})
        try:
            value = typed_figure(name, self._typed(name, text))
            self.rules.with_more({name: value})
        except BenchroundError as error:
            raise SheetFault({"value": fault(error)}) from None
        draft = Draft(Kind.CROP_RULE, self.crop_key, {name: value}, note)
        crop = self.desk.season.crop(self.crop_key).name
        words = f"{crop}, your own {name}: {text}"
        return self.bench.doings.record((draft,), self.desk.today, words=words)


def _every_name() -> Sequence[str]:
    """The dotted names of all figures that are no member of a list."""
    return [
        section.dotted(key.name) for section in SECTIONS if not section.many for key in section.keys
    ]


def _meaning(name: str) -> str:
    key = key_of(name)
    return key.meaning if key else ""


def _unit(key: Key) -> str:
    return key.unit or (f"one of {', '.join(key.choices)}" if key.choices else str(key.form))
