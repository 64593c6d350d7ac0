"""The site sheet: where the garden lies, when its frosts come, who lives there."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from benchround.core.errors import BenchroundError, InputError
from benchround.core.record import Draft, Figure, Kind
from benchround.screens.keys import SITE, bindings
from benchround.screens.latest import latest_of
from benchround.screens.sheet_base import Reading, Sheet, SheetFault
from benchround.screens.sheet_fields import month_first
from benchround.screens.site_form import (
    YES,
    FrostFile,
    echo_where,
    frost_fields,
    kept_figures,
    read_altitude,
    read_frost,
    read_where,
    retell_frost,
    timezone_field,
    where_fields,
    yes_no_field,
)
from benchround.screens.text import Line, Role, paragraph
from benchround.screens.widgets.field import Field

SAME = "Nothing is different: nothing was recorded."


class SiteSheet(Sheet, inherit_bindings=False):
    """The site.

    Args:
        name: the figure to begin with.
    """

    BINDINGS = bindings(SITE)
    KEYS_OF = SITE

    def __init__(self, name: str = "") -> None:
        super().__init__()
        self.begin_at = name
        self._file = FrostFile()

    @property
    def before(self) -> Mapping[str, Figure]:
        """What was said of the site so far."""
        return latest_of(self.desk, Kind.SITE).get("", {})

    def make_fields(self) -> Sequence[Field]:
        """The site's figures as they are now."""
        said = self.before
        height = said.get("altitude_m")
        told = f"{height:g}" if isinstance(height, int | float) else ""
        return [
            *where_fields(said),
            Field("altitude_m", "altitude", told, hint="m above the sea", figure=True),
            timezone_field(said),
            *frost_fields(said),
            yes_no_field("children", "children", said, "cautions are told for them"),
            yes_no_field("pets", "pets", said, "cautions are told for them"),
        ]

    def on_mount(self) -> None:
        """Begin at the figure asked for."""
        if self.form.has(self.begin_at):
            self.form.go(self.begin_at)

    def title_lines(self, width: int) -> Sequence[Line]:
        """What this is."""
        return paragraph("The site and its household", width, Role.HEADING)

    def retell(self) -> None:
        """Say what was understood, and take the days of a weather file."""
        fields = {field.id: field for field in self.form.fields}
        echo_where(fields)
        retell_frost(fields, self._file, self.before)

    def note_lines(self, width: int) -> Sequence[Line]:
        """What is assumed while it is not said."""
        assumed = self.desk.season.site.assumed
        said = [words for text in assumed for words in paragraph(f"Assumed: {text}.", width)]
        words = "What is left empty is assumed, and the round says so."
        return [*said, *paragraph(words, width, Role.QUIET)]

    def save(self) -> str:
        """Record the site as it stands in the sheet."""
        values, reading = self.form.values(), Reading()
        said: dict[str, Figure | None] = read_where(values, reading)
        height = values["altitude_m"]
        said["altitude_m"] = reading.read("altitude_m", lambda: read_altitude(height), None)
        said["timezone"] = reading.read("timezone", self._timezone, "")
        first = month_first(self.desk.season)
        said.update(read_frost(values, reading, self._file, month_first=first))
        reading.finish()
        for name in ("children", "pets"):
            said[name] = values[name] == YES
        before = self.before
        figures = kept_figures(before, said)
        if figures == {"children": False, "pets": False, **before}:
            return SAME
        draft = Draft(Kind.SITE, "", figures)
        try:
            return self.bench.doings.record((draft,), self.desk.today, words="the site")
        except BenchroundError as error:
            raise SheetFault({}, str(error)) from None

    def _timezone(self) -> str:
        field = self.form.field("timezone")
        if field.touched and field.text.strip() and field.choice is None:
            raise InputError("no time zone goes by these letters: write it as Europe/London.")
        return field.value
