"""The sheet of choices: units, dates, feeding, compost, fetching the outlook, the look."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from benchround.core.caution.due import CAUTIONS, Page, setup_cautions, worst_first
from benchround.core.errors import BenchroundError, InputError
from benchround.core.record import Draft, Kind
from benchround.core.record_figures import Form as TypedAs
from benchround.core.settings_words import SETTINGS, Setting
from benchround.core.typed.figures import read_whole
from benchround.screens.keys import CHOICES, bindings
from benchround.screens.settings_rows import CHOICE_LABELS
from benchround.screens.sheet_base import Reading, Sheet, SheetFault
from benchround.screens.site_sheet import SAME
from benchround.screens.text import Line, Role, paragraph
from benchround.screens.widgets.field import Field, plain_choices

COMPOST = "compost"
FETCH, ADDRESS = "weather_fetch", "weather_url"
ON, LOOK = "on", "look"
OFF_WORDS = "Fetching the outlook is off: nothing goes out to the network."


class ChoicesSheet(Sheet, inherit_bindings=False):
    """How the program works for this season.

    Args:
        name: the choice to begin with.
    """

    BINDINGS = bindings(CHOICES)
    KEYS_OF = CHOICES

    def __init__(self, name: str = "") -> None:
        super().__init__()
        self.begin_at = name

    def make_fields(self) -> Sequence[Field]:
        """A field for each choice."""
        return [self._field(name, setting) for name, setting in SETTINGS.items()]

    def _field(self, name: str, setting: Setting) -> Field:
        label = CHOICE_LABELS.get(name, name.replace("_", " "))
        value = self._now(name)
        if setting.rule.form is TypedAs.CHOICE:
            finder = plain_choices(tuple(map(str, setting.rule.choices)))
            return Field(name, label, value, finder, only=True, hint=setting.meaning)
        return Field(
            name, label, value, hint=f"{setting.rule.unit}; {setting.meaning}", figure=True
        )

    def _now(self, name: str) -> str:
        if name == LOOK:
            return self.bench.look
        return self.desk.season.settings.get(SETTINGS[name].key, "") or SETTINGS[name].usual

    def on_mount(self) -> None:
        """Begin at the choice asked for."""
        if self.form.has(self.begin_at):
            self.form.go(self.begin_at)

    def title_lines(self, width: int) -> Sequence[Line]:
        """What this is."""
        return paragraph("Choices for this season", width, Role.HEADING)

    def note_lines(self, width: int) -> Sequence[Line]:
        """What fetching would send, what the units reach, and what to mind with compost."""
        return list(self._notes(width))

    def _notes(self, width: int) -> Iterator[Line]:
        if self.form.now.id == COMPOST:
            pages = (Page.COMPOST_STOCK, Page.COMPOST_MIX)
            for name in worst_first(name for page in pages for name in setup_cautions(page)):
                yield from paragraph(f"Caution: {CAUTIONS[name].short}", width, Role.CAUTION)
            return
        words = "Degrees and rain are as you read and type them; records keep one form."
        yield from paragraph(words, width, Role.QUIET)
        if self.form.field(FETCH).value != ON:
            yield from paragraph(OFF_WORDS, width, Role.QUIET)
            return
        for words in self._fetching():
            yield from paragraph(words, width)

    def _fetching(self) -> Iterator[str]:
        from benchround.feeds.fetch import address_for

        site = self.desk.season.site
        try:
            address = address_for(self._address(), site.lat_deg, site.lon_deg)
        except BenchroundError as error:
            yield str(error)
            return
        yield "'benchround weather fetch' will ask, and only when you call it:"
        yield address
        yield "The site's place to about a kilometre is all that is sent."

    def _address(self) -> str:
        from benchround.feeds.fetch import USUAL_ADDRESS

        return self.desk.season.settings.get(ADDRESS, "") or USUAL_ADDRESS

    def save(self) -> str:
        """Record what is different now."""
        values, reading = self.form.values(), Reading()
        said: dict[str, str] = {}
        for name, setting in SETTINGS.items():
            text = values[name]
            said[name] = reading.read(name, partial(_read, text, setting), self._now(name))
        reading.finish()
        changed = {name: value for name, value in said.items() if value != self._now(name)}
        if not changed:
            return SAME
        labels = {name: CHOICE_LABELS.get(name, name) for name in changed}
        words = ", ".join(f"{labels[name]} {value}" for name, value in changed.items())
        look = changed.get(LOOK, "")
        drafts = [
            Draft(Kind.SETTING, SETTINGS[name].key, {"value": value})
            for name, value in changed.items()
            if name != LOOK
        ]
        if changed.get(FETCH) == ON:
            drafts.append(Draft(Kind.SETTING, ADDRESS, {"value": self._address()}))
        if look:
            self.bench.take_look(look)
        if not drafts:
            return f"This computer's look is {look} from now on."
        try:
            return self.bench.doings.record(drafts, self.desk.today, words=words)
        except BenchroundError as error:
            raise SheetFault({}, str(error)) from None


def _read(text: str, setting: Setting) -> str:
    rule = setting.rule
    if rule.form is not TypedAs.CHOICE:
        number = read_whole(text, int(rule.high), int(rule.low))
        return setting.usual if number is None else str(number)
    if not text.strip():
        return setting.usual
    if text not in rule.choices:
        raise InputError(f"choose one of {', '.join(rule.choices)}.")
    return text
