"""The first season: the few things it needs, each of which can be skipped, or the sample."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from datetime import date
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, cast

from benchround.core.caution.due import CAUTIONS, Page, setup_cautions
from benchround.core.errors import BenchroundError
from benchround.core.frozen import dataclass
from benchround.core.record import Draft, Figure, Kind
from benchround.core.typed.figures import read_note
from benchround.core.typed.places import place_drafts, read_places
from benchround.screens.keys import FIRST_RUN, bindings
from benchround.screens.sheet_base import Reading, Sheet, SheetFault
from benchround.screens.site_form import (
    FrostFile,
    echo_where,
    frost_fields,
    path_finder,
    read_frost,
    read_where,
    retell_frost,
    typed_path,
    where_fields,
)
from benchround.screens.text import BLANK, Line, Role, line, paragraph
from benchround.screens.widgets.field import Field

if TYPE_CHECKING:
    from benchround.screens.first_run_app import FirstRunApp

LONGEST_NAME = 200
TITLE = "No season yet. Fill in what you know; every line may be skipped."
PLACES_HINT = "such as Bench 1; Shed: bench"
ASSUMED = (
    "What is skipped is assumed, and the round says so: 52 N, last frost 10 May. All of it can "
    "be changed later: g, then t."
)


class Outcome(StrEnum):
    """What became of the first run."""

    BEGUN = "begun"
    SAMPLE = "sample"
    LEFT = "left"


@dataclass(frozen=True, slots=True)
class FirstSeason:
    """What the grower said.

    Attributes:
        drafts: the site and the places.
    """

    folder: Path
    name: str
    drafts: tuple[Draft, ...]

    @property
    def begun(self) -> str:
        """What is said once it is there."""
        return f"{self.name} is begun, in {self.folder}."


Begin = Callable[[FirstSeason], None]
"""Writes the season; raises `BenchroundError` where it cannot, and leaves nothing behind."""


class FirstRunScreen(Sheet, inherit_bindings=False):
    """Asks for place, frost and places, and begins a season only when it is told to.

    Args:
        begin: writes the season.
        folder: where it is kept unless another folder is typed.
        today: the grower's day.
    """

    BINDINGS = bindings(FIRST_RUN)
    KEYS_OF = FIRST_RUN

    def __init__(self, begin: Begin, folder: Path, today: date) -> None:
        super().__init__()
        self._begin = begin
        self._folder = folder
        self._today = today
        self._file = FrostFile()
        self._asked = False

    @property
    def first(self) -> FirstRunApp:
        """The program this screen belongs to."""
        return cast("FirstRunApp", self.app)

    def _what_stays(self) -> str:
        return "nothing is begun and nothing is written"

    def make_fields(self) -> Sequence[Field]:
        """Where it lies, its frosts, its places; name and folder have their defaults."""
        return [
            *where_fields({}),
            Field("places", "places", wide=True, hint=PLACES_HINT),
            *frost_fields({}),
            Field("name", "season", f"Season {self._today.year}"),
            Field("folder", "kept in", str(self._folder), path_finder, wide=True),
        ]

    def title_lines(self, width: int) -> Sequence[Line]:
        """What this is."""
        return paragraph(TITLE, width, Role.HEADING)

    def retell(self) -> None:
        """Say what was understood."""
        fields = {field.id: field for field in self.form.fields}
        echo_where(fields)
        retell_frost(fields, self._file, {})
        self._retell_places(fields["places"])

    def _retell_places(self, field: Field) -> None:
        """Say what was understood; once another field is stood in, what was not is an error."""
        field.hint = self._places_said(field.text)
        if self.form.now is not field:
            try:
                read_places(field.text)
            except BenchroundError as error:
                field.error = str(error)

    def _places_said(self, text: str) -> str:
        try:
            places = read_places(text)
        except BenchroundError as error:
            return str(error)  # what is half typed may still become a place
        said = "; ".join(f"{place.name}, {place.kind}" for place in places)
        return f"{len(places)}: {said}" if places else PLACES_HINT

    def note_lines(self, width: int) -> Sequence[Line]:
        """What happens when it is saved, and the cautions for whoever begins."""
        return list(self._notes(width))

    def _notes(self, width: int) -> Iterator[Line]:
        begin, sample = (self.ring.named(name) for name in ("begin", "to-sample"))
        words = f"Nothing is written before you press {begin}. {sample} opens the sample instead."
        yield from paragraph(words, width, Role.STRONG)
        yield from paragraph(ASSUMED, width)
        yield BLANK
        yield line(("Before you begin", Role.HEADING))
        for name in setup_cautions(Page.FIRST_RUN):
            yield from paragraph(CAUTIONS[name].short, width, Role.CAUTION, "  ")

    def action_field(self, by: int) -> None:
        """Go to another field; places that were not understood are said at once."""
        super().action_field(by)
        self._retell_places(self.form.field("places"))
        self.form.redraw()

    def save(self) -> str:
        """Begin the season."""
        season = self._read()
        self._write(season)
        return season.begun

    def action_save(self) -> None:
        """Begin the season and leave; with faults, show them and stay."""
        self.saved()
        self.first.exit(Outcome.BEGUN)

    def _write(self, said: FirstSeason) -> None:
        try:
            self._begin(said)
        except BenchroundError as error:
            raise SheetFault({"folder": str(error)}, f"Nothing was begun: {error}") from None

    def _read(self) -> FirstSeason:
        values, reading = self.form.values(), Reading()
        none: tuple[Draft, ...] = ()
        said: dict[str, Figure | None] = read_where(values, reading)
        said.update(read_frost(values, reading, self._file, month_first=False))
        drafts = reading.read("places", lambda: self._places(values["places"]), none)
        name = reading.read("name", lambda: read_note(values["name"], LONGEST_NAME), "")
        folder = reading.read("folder", lambda: self._path(values["folder"]), self._folder)
        reading.finish()
        figures = {name: one for name, one in said.items() if one is not None and one != ""}
        site = (Draft(Kind.SITE, "", figures),) if figures else ()
        return FirstSeason(folder, name or folder.name, (*site, *drafts))

    def _places(self, text: str) -> tuple[Draft, ...]:
        return place_drafts(read_places(text))

    def _path(self, text: str) -> Path:
        return typed_path(text) if text else self._folder

    def action_sample(self) -> None:
        """Open the sample instead."""
        self.first.exit(Outcome.SAMPLE)

    def action_leave(self) -> None:
        """Leave; what was typed is asked about once."""
        if self.form.typed() and not self._asked:
            self._asked = True
            self.say("Nothing is begun yet: press it again to leave without what you typed.")
            return
        self.first.exit(Outcome.LEFT)

    def on_form_changed(self) -> None:
        """Typing on means staying."""
        self._asked = False

    def action_change_look(self) -> None:
        """Change between light and dark."""
        self.first.change_look()
