"""The place sheet: what a bench, frame or bed is like, with the cautions that come with it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from benchround.core.caution.due import CAUTIONS, Page, blocks, read_key, setup_cautions, to_show
from benchround.core.errors import BenchroundError, InputError
from benchround.core.place_words import free_code
from benchround.core.record import Draft, Figure, Kind, Record
from benchround.core.site import Place, place_from
from benchround.core.units import units_of
from benchround.core.walk import ORDER, put_in, walk_drafts
from benchround.screens.keys import PLACE, bindings
from benchround.screens.latest import latest_of
from benchround.screens.place_form import place_fields, read_place_sheet, retell_place
from benchround.screens.sheet_base import Reading, Sheet, SheetFault
from benchround.screens.text import Line, Role, line, paragraph
from benchround.screens.widgets.field import Field

AGREE = "agree-to-place"


class PlaceSheet(Sheet, inherit_bindings=False):
    """A place, new or changed.

    Args:
        code: the place; empty for a new one.
        after: the place a new one comes after on the walk; empty: the last.
    """

    BINDINGS = bindings(PLACE)
    KEYS_OF = PLACE

    def __init__(self, code: str, after: str) -> None:
        super().__init__()
        self.code = code
        self.after = after
        self._agreed: set[str] = set()

    @property
    def kept_as(self) -> str:
        """One sheet for each place, and one for a new one."""
        return f"{PLACE} {self.code}"

    @property
    def foot_first(self) -> str:
        """The key that says a caution was read, while one waits."""
        return AGREE if self._to_read() else ""

    @property
    def before(self) -> Mapping[str, Figure]:
        """What was said of the place so far."""
        return latest_of(self.desk, Kind.PLACE).get(self.code, {}) if self.code else {}

    def make_fields(self) -> Sequence[Field]:
        """What a place can be like."""
        return place_fields(self.before, units_of(self.desk.season.settings))

    def title_lines(self, width: int) -> Sequence[Line]:
        """Which place."""
        place = self.desk.season.place(self.code)
        words = f"Place: {place.name}" if place else "A new place"
        return paragraph(words, width, Role.HEADING)

    def retell(self) -> None:
        """Ask for what the kind of place has."""
        fields = {field.id: field for field in self.form.fields}
        retell_place(fields, self.before, units_of(self.desk.season.settings))

    def _place(self) -> Place | None:
        """The place as the sheet describes it, None while it cannot be understood."""
        try:
            figures = self._figures(Reading())
        except SheetFault:
            return None
        return place_from(Record("", self.desk.today, Kind.PLACE, self.code or "new", figures))

    def _figures(self, reading: Reading) -> dict[str, Figure]:
        units = units_of(self.desk.season.settings)
        said = read_place_sheet(self.form.values(), reading, units)
        reading.finish()
        order = self.before.get(ORDER, 0)
        return {**said, ORDER: order}

    def _cautions(self) -> tuple[tuple[str, bool], ...]:
        ids = setup_cautions(Page.PLACE, self._place())
        return to_show(ids, self.desk.season.cautions_read, self.desk.today)

    def _to_read(self) -> tuple[str, ...]:
        """The cautions that must be read before this can be saved."""
        return tuple(
            name
            for name, in_full in self._cautions()
            if in_full and blocks(name) and name not in self._agreed
        )

    def note_lines(self, width: int) -> Sequence[Line]:
        """The cautions that come with such a place."""
        return list(self._notes(width))

    def _notes(self, width: int) -> Iterator[Line]:
        to_read = self._to_read()
        for name in to_read:
            yield from paragraph(f"READ FIRST: {CAUTIONS[name].full}", width, Role.BAD)
        if to_read:
            yield line(
                (self.ring.named(AGREE), Role.KEY),
                (" says that you have read it", Role.INK),
            )
        for name, _ in self._cautions():
            if name not in to_read:
                yield from paragraph(f"Caution: {CAUTIONS[name].short}", width, Role.CAUTION)

    def action_agree(self) -> None:
        """Say that the cautions shown were read; it is recorded with the place."""
        to_read = self._to_read()
        if not to_read:
            self.say("There is no caution that waits to be read.")
            return
        self._agreed.update(to_read)
        self.say("Read. It is written down when you save.")
        self._tell()

    def save(self) -> str:
        """Record the place."""
        figures = self._figures(Reading())
        if self._to_read():
            agree = self.ring.named(AGREE)
            raise BenchroundError(f"Nothing was recorded: read the caution, then press {agree}.")
        name = str(figures["name"])
        self._require_own_name(name)
        drafts = [Draft(Kind.CAUTION_READ, read_key(one)) for one in sorted(self._agreed)]
        drafts += self._drafts(name, figures)
        try:
            return self.bench.doings.record(drafts, self.desk.today, words=f"place '{name}'")
        except BenchroundError as error:
            raise SheetFault({}, str(error)) from None

    def _require_own_name(self, name: str) -> None:
        for place in self.desk.season.places:
            if place.code != self.code and place.name.casefold() == name.casefold():
                raise SheetFault({"name": "another place has this name"})

    def _drafts(self, name: str, figures: Mapping[str, Figure]) -> list[Draft]:
        if self.code:
            return [Draft(Kind.PLACE, self.code, figures)]
        taken = latest_of(self.desk, Kind.PLACE)
        try:
            code = free_code(name, taken)
        except InputError as error:
            raise SheetFault({"name": str(error)}) from None
        walk = put_in([place.code for place in self.desk.season.places], code, self.after)
        new = Draft(Kind.PLACE, code, {**figures, ORDER: walk.index(code) + 1})
        return [new, *walk_drafts(walk, taken)]
