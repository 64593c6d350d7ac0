"""The container sheet: a tray or pot of one's own, its cells and its size."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from benchround.core.containers import USUAL_CONTAINERS, Container
from benchround.core.errors import BenchroundError, InputError, OutOfRangeError
from benchround.core.record import Draft, Figure, Kind
from benchround.core.typed.figures import read_note, read_number, read_whole
from benchround.core.units import INCH_MM, Rain, units_of
from benchround.screens.keys import CONTAINER, bindings
from benchround.screens.sheet_base import Reading, Sheet, SheetFault
from benchround.screens.text import Line, Role, paragraph
from benchround.screens.widgets.field import Field

LONGEST_NAME = 60
CM_A_M = 100.0
INCHES_A_M = 1000.0 / INCH_MM
HOW = (
    "Fill one cell with water from a measuring jug to know what it holds. Length and width are of "
    "the surface that dries."
)
SIDES = ("length_m", "width_m")
NEEDED = ("cell_ml", *SIDES)


class ContainerSheet(Sheet, inherit_bindings=False):
    """A tray or pot, new or changed.

    Args:
        name: the container; empty for a new one.
    """

    BINDINGS = bindings(CONTAINER)
    KEYS_OF = CONTAINER

    def __init__(self, name: str) -> None:
        super().__init__()
        self.called = name

    @property
    def kept_as(self) -> str:
        """One sheet for each container, and one for a new one."""
        return f"{CONTAINER} {self.called}"

    @property
    def _unit(self) -> str:
        return "in" if units_of(self.desk.season.settings).rain is Rain.INCH else "cm"

    @property
    def _per_m(self) -> float:
        return INCHES_A_M if self._unit == "in" else CM_A_M

    def _kept(self) -> dict[str, float]:
        """The container's figures as they are kept; none for a new one."""
        record = self.desk.season.containers.get(self.called)
        found = {name: record.number(name) for name in ("cells", *NEEDED)} if record else {}
        return {name: number for name, number in found.items() if number is not None}

    def _said(self, name: str, number: float | None) -> str:
        """A figure as it stands in the sheet."""
        if number is None:
            return ""
        return f"{round(number * self._per_m, 2) if name in SIDES else number:g}"

    def _kept_words(self) -> dict[str, str]:
        return {name: self._said(name, number) for name, number in self._kept().items()}

    def make_fields(self) -> Sequence[Field]:
        """Name, cells, sizes."""
        words, inside = self._kept_words(), f"{self._unit}, inside"
        return [
            Field("name", "name", self.called, hint="as you call it"),
            Field(
                "cells",
                "cells",
                words.get("cells", "1"),
                hint="1 for a seed tray or a pot",
                figure=True,
            ),
            Field("cell_ml", "one cell holds", words.get("cell_ml", ""), hint="ml", figure=True),
            Field("length_m", "length", words.get("length_m", ""), hint=inside, figure=True),
            Field("width_m", "width", words.get("width_m", ""), hint=inside, figure=True),
        ]

    def title_lines(self, width: int) -> Sequence[Line]:
        """Which container."""
        words = f"Container: {self.called}" if self.called else "A tray or pot of your own"
        return paragraph(words, width, Role.HEADING)

    def note_lines(self, width: int) -> Sequence[Line]:
        """How it is measured, and what it comes to."""
        return list(self._notes(width))

    def _notes(self, width: int) -> Iterator[Line]:
        try:
            made = self._container(Reading())
        except InputError:
            made = None
        if made is not None:
            area = f"{made.area_m2 * self._per_m**2:.0f} {self._unit}2"
            words = f"{made.volume_l:.1f} l of compost in all, {area}"
            yield from paragraph(words, width, Role.STRONG)
            if made.name in USUAL_CONTAINERS:
                yield from paragraph("It goes before the usual one of that name.", width)
        yield from paragraph(HOW, width, Role.QUIET)

    def _container(self, reading: Reading) -> Container:
        """The container the sheet describes.

        Raises:
            SheetFault: fields that cannot be understood, or figures no tray has.
        """
        values = self.form.values()
        name = reading.read("name", lambda: read_note(values["name"], LONGEST_NAME), "")
        cells = reading.read("cells", lambda: read_whole(values["cells"], 1000, 1), None)
        sizes: dict[str, float | None] = {}
        kept, limits = self._kept(), _LIMITS[self._unit]
        for one in NEEDED:
            text = values[one]
            if text and text == self._said(one, kept.get(one)):
                sizes[one] = kept[one]  # untouched it stays exact
                continue
            size = reading.read(one, partial(read_number, text, *limits[one]), None)
            sizes[one] = size / self._per_m if one in SIDES and size is not None else size
        if not name and "name" not in reading.faults:
            reading.faults["name"] = "a container needs a name"
        for one in NEEDED:
            if sizes[one] is None:
                reading.faults.setdefault(one, "needed here")
        reading.finish()
        ml, length, width = (sizes[one] or 0.0 for one in NEEDED)
        try:
            return Container(name, cells or 1, ml, length, width)
        except OutOfRangeError as error:
            raise SheetFault({}, str(error)) from None

    def save(self) -> str:
        """Record the container; under another name it is another one."""
        made = self._container(Reading())
        figures: dict[str, Figure] = {
            "cells": made.cells,
            "cell_ml": made.cell_ml,
            "length_m": made.length_m,
            "width_m": made.width_m,
        }
        draft, words = Draft(Kind.CONTAINER, made.name, figures), f"container '{made.name}'"
        try:
            return self.bench.doings.record((draft,), self.desk.today, words=words)
        except BenchroundError as error:
            raise SheetFault({}, str(error)) from None


_ML = (0.5, 50_000.0, "ml")
_LIMITS: dict[str, dict[str, tuple[float, float, str]]] = {
    unit: {"cell_ml": _ML, "length_m": side, "width_m": side}
    for unit, side in (("cm", (2.0, 200.0, "cm")), ("in", (0.8, 78.0, "in")))
}
