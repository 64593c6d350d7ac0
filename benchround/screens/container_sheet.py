"""The container sheet: a tray or pot of one's own, its cells and its size."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from benchround.core.containers import USUAL_CONTAINERS, Container
from benchround.core.errors import BenchroundError, InputError, OutOfRangeError
from benchround.core.record import Draft, Figure, Kind
from benchround.core.typed.figures import read_note, read_number, read_whole
from benchround.screens.keys import CONTAINER, bindings
from benchround.screens.sheet_base import Reading, Sheet, SheetFault
from benchround.screens.text import Line, Role, paragraph
from benchround.screens.widgets.field import Field

LONGEST_NAME = 60
CM = 100.0
HOW = (
    "Fill one cell with water from a measuring jug to know what it holds. Length and width are of "
    "the surface that dries."
)
SHOWN_TIMES = {"cells": 1.0, "cell_ml": 1.0, "length_m": CM, "width_m": CM}
NEEDED = ("cell_ml", "length_m", "width_m")


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

    def make_fields(self) -> Sequence[Field]:
        """Name, cells, sizes."""
        record = self.desk.season.containers.get(self.called)
        words = {
            name: f"{number * factor:g}"
            for name, factor in SHOWN_TIMES.items()
            if record is not None and (number := record.number(name)) is not None
        }
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
            Field("length_m", "length", words.get("length_m", ""), hint="cm, inside", figure=True),
            Field("width_m", "width", words.get("width_m", ""), hint="cm, inside", figure=True),
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
            words = f"{made.volume_l:.1f} l of compost in all, {made.area_m2 * 1e4:.0f} cm2"
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
        for one, (least, most, unit) in _LIMITS.items():
            text = values[one]
            reader = partial(read_number, text, least, most, unit)
            sizes[one] = reading.read(one, reader, None)
        if not name and "name" not in reading.faults:
            reading.faults["name"] = "a container needs a name"
        for one in NEEDED:
            if sizes[one] is None:
                reading.faults.setdefault(one, "needed here")
        reading.finish()
        ml, length, width = (sizes[one] or 0.0 for one in NEEDED)
        try:
            return Container(name, cells or 1, ml, length / CM, width / CM)
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


_LIMITS: dict[str, tuple[float, float, str]] = {
    "cell_ml": (0.5, 50_000.0, "ml"),
    "length_m": (2.0, 200.0, "cm"),
    "width_m": (2.0, 200.0, "cm"),
}
