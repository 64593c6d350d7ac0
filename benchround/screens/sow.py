"""The sowing sheet: a batch in a few keys, with what it will come to shown beneath."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import date
from typing import TYPE_CHECKING, Self

from benchround.core.batch.batch import Batch, fold_batch
from benchround.core.batch_names import letter_words
from benchround.core.caution.due import (
    CAUTIONS,
    Work,
    blocks,
    cautions_for,
    mixed_with_edible,
    read_key,
    to_show,
)
from benchround.core.crop.crop import Crop, PlantClass
from benchround.core.crop.search import Named, find_crops, folded
from benchround.core.dates import say_day
from benchround.core.errors import BenchroundError, InputError
from benchround.core.planning.schedule import Expected, Step, expected_course
from benchround.core.record import Draft, Kind, Record
from benchround.core.seed.room_needed import trays_needed
from benchround.core.seed.sowing_plan import (
    SowingPlan,
    cells_of,
    label_sides,
    plan_sowing,
    too_many_words,
)
from benchround.core.task import Family
from benchround.core.typed.date import read_day
from benchround.core.typed.figures import read_whole
from benchround.core.units import units_of
from benchround.drawing.words import counted
from benchround.screens.flowers_beside import FlowersBeside
from benchround.screens.keys import SOW, bindings
from benchround.screens.sheet_base import Sheet, SheetFault
from benchround.screens.sheet_fields import echo_day, month_first, place_of
from benchround.screens.sow_form import (
    PLANNED,
    SOWN,
    packet_finder,
    read_sheet,
    set_defaults,
    sowing_fields,
)
from benchround.screens.text import Line, Role, fit, line, paragraph, width_of
from benchround.screens.turn_lines import short_turn, turn_line
from benchround.screens.widgets.field import Choice, Field

if TYPE_CHECKING:
    from benchround.screens.app import BenchroundApp

STEP_WIDE, DAYS_WIDE = 16, 25
REASON_LEAST = 24
"""A reason with less room than this goes on a line of its own, where there are lines enough."""
TALL = 34
"""Lines of the screen from which there are enough."""
SHORT_CAUTIONS = 1
AGREE = "agree"
BEGIN = (
    "Type the first letters of the crop and save: everything else has its default, and can be "
    "changed first with tab."
)

NO_PLACE = "none set up yet: may stay empty; ctrl+g, t, then n sets one up"


class SowScreen(Sheet, inherit_bindings=False):
    """A new batch, sown or planned. The crop is enough; all else has its default.

    Args:
        day: the day looked at in the round.
    """

    CSS_PATH = ["sheet.tcss", "sow.tcss"]  # noqa: RUF012 - as Textual has it
    BINDINGS = bindings(SOW)
    KEYS_OF = SOW

    def __init__(self, day: date) -> None:
        super().__init__()
        self.day = day
        self._names: tuple[Named, ...] = ()
        self._choices: dict[str, Choice] = {}
        self._agreed: set[str] = set()
        self._course: tuple[Expected, ...] = ()
        self._plan: SowingPlan | None = None
        self._number = ""
        self._batch: Batch | None = None
        self._beside: FlowersBeside | None = None

    @classmethod
    def arrive(cls, bench: BenchroundApp) -> Self:
        """A sheet for the day looked at in the round."""
        day = bench.round_screen.day
        bench.require_open(day)
        return cls(day)

    def make_fields(self) -> Sequence[Field]:
        """The fields; the crop's own figures come with the crop."""
        names = self.desk.library.names()
        known = tuple(name for name in names if name.plant_class is not PlantClass.UNKNOWN)
        self._names = known
        self._choices = {
            name.key: Choice(name.key, name.name, f"{name.latin}, {name.plant_class}")
            for name in known
        }
        self._number = self.desk.free_batch_id()
        self._beside = None
        return sowing_fields(self.desk.season, self._find, self.day, self.desk.today)

    def _find(self, letters: str) -> Sequence[Choice]:
        return [self._choice(name, letters) for name in find_crops(letters, self._names)]

    def _choice(self, name: Named, letters: str) -> Choice:
        """A crop as a choice; where another of its names was typed, that name is said."""
        choice, wanted = self._choices[name.key], folded(letters)
        if wanted in folded(name.name):
            return choice
        other = next((other for other in name.synonyms if wanted in folded(other)), "")
        return replace(choice, more=f"{other}; {choice.more}") if other else choice

    @property
    def crop(self) -> Crop | None:
        """The crop chosen; None while nothing is."""
        choice = self.form.field("crop").choice
        return self.desk.season.crop(choice.value) if choice else None

    def title_lines(self, width: int) -> Sequence[Line]:
        """The batch that is being made."""
        crop = self.crop
        if crop is None:
            return paragraph(f"Sow: new batch {self._number}", width, Role.HEADING)
        latin = f" ({crop.latin})" if crop.latin else ""
        words = f"Sow: {self._number} {crop.name}{latin}, {crop.plant_class}"
        return [line((fit(words, width), Role.HEADING))]

    def retell(self) -> None:
        """Work out defaults, the days ahead and the packets from what stands in the sheet."""
        form, season, crop = self.form, self.desk.season, self.crop
        fields = {field.id: field for field in form.fields}
        day = echo_day(fields["day"], season, self.desk.today) or self.day
        fields["what"].default = PLANNED if day > self.desk.today else SOWN
        self._plan = self._make_plan(crop, day) if crop else None
        place = season.place(self._plan.place) if self._plan else None
        units = units_of(season.settings)
        set_defaults(fields, self._plan, place.name if place else "", units)
        fields["container"].hint = self._containers()
        fields["place"].hint = "" if season.places else NO_PLACE
        fields["crop"].hint = "" if crop else "type its first letters"
        if crop is None:
            self._course = ()
            return
        fields["packet"].find_with(packet_finder(season, crop.key))
        self._take_packet(fields)
        self._course = self._expect(crop, day)

    def _make_plan(self, crop: Crop, day: date) -> SowingPlan:
        fields = self.form
        wanted, container = fields.field("wanted"), fields.field("container")
        try:
            number = read_whole(wanted.text, most=100_000) if wanted.touched else None
        except InputError:
            number = None
        holds = container.value if container.touched else ""
        packet = fields.field("packet").value
        return plan_sowing(self.desk.season, crop, day, number, holds, packet)

    def _containers(self) -> str:
        """How many of the container it takes."""
        fields = self.form
        holds = cells_of(self.desk.season, fields.field("container").value)
        try:
            cells = read_whole(fields.field("cells").text)
        except InputError:
            return ""
        return f"{trays_needed(cells, holds)} needed" if cells and holds else ""

    def _take_packet(self, fields: dict[str, Field]) -> None:
        """A packet names its variety."""
        packet = self.desk.season.packets.get(fields["packet"].value)
        fields["variety"].default = packet.variety if packet else ""
        left = packet.holds(self.desk.season.crop(packet.crop).seeds_per_g) if packet else None
        fields["packet"].hint = "" if left is None else f"{counted(left, 'seed')} left"

    def _expect(self, crop: Crop, day: date) -> tuple[Expected, ...]:
        """What the batch will come to, from the sheet as it stands."""
        values, season = self.form.values(), self.desk.season
        figures = {
            "crop": crop.key,
            "place": place_of(values["place"], season),
            "raising": values["raising"],
        }
        kind = Kind.PLANNED if values["what"] == PLANNED else Kind.SOWN
        if kind is Kind.PLANNED:
            figures["sow_on"] = day.isoformat()
        record = Record("", day, kind, self._number, figures)
        self._batch, _ = fold_batch(self._number, (record,))
        return expected_course(season, self._batch, crop, day) if self._batch else ()

    def _cautions(self, crop: Crop) -> tuple[tuple[str, bool], ...]:
        season, values = self.desk.season, self.form.values()
        packet = season.packets.get(values["packet"])
        code = place_of(values["place"], season)
        work = Work(
            Family.SOW,
            crop,
            season.place(code),
            season.weather.on(self.day),
            season.site,
            covering=values["covering"],
            mixed_with_edible=mixed_with_edible(season.crops_beside(code, crop)),
            treated=packet.treated if packet else False,
        )
        found = cautions_for(work)
        return to_show(found, season.cautions_read, self.desk.today, crop.key)

    def _to_read(self, crop: Crop) -> tuple[str, ...]:
        """The cautions that must be read before this can be saved."""
        return tuple(
            name
            for name, in_full in self._cautions(crop)
            if in_full and blocks(name, crop) and name not in self._agreed
        )

    @property
    def foot_first(self) -> str:
        """The key that says a caution was read, while one waits."""
        crop = self.crop
        return AGREE if crop is not None and self._to_read(crop) else ""

    def note_lines(self, width: int) -> Sequence[Line]:
        """Cautions, the sowing window, the days ahead, and the label's two sides."""
        crop = self.crop
        if crop is None:
            return paragraph(BEGIN, width, Role.QUIET)
        return list(self._notes(crop, width))

    def _notes(self, crop: Crop, width: int) -> Iterator[Line]:
        to_read = self._to_read(crop)
        if to_read:
            yield from paragraph(f"READ FIRST: {CAUTIONS[to_read[0]].full}", width, Role.BAD)
            more = f"; {len(to_read) - 1} more after it" if len(to_read) > 1 else ""
            yield line(
                (self.ring.named(AGREE), Role.KEY),
                (f" says that you have read it{more}", Role.INK),
            )
        others = [name for name, _ in self._cautions(crop) if name not in to_read]
        yield from _short_cautions(others, width)
        plan = self._plan
        minds = plan.minds if plan is not None else ()
        for word in minds:
            if word.urgent:  # before what may be cut off on a small screen
                yield from paragraph(_as_sentence(word.text), width, Role.LATE)
        yield from self._label(crop, width)
        yield from self._window(crop, width)
        for word in minds:
            if not word.urgent:
                yield from paragraph(_as_sentence(word.text), width, Role.QUIET)
        tall = self.size.height >= TALL
        for step in self._course:
            if step.step is not Step.SOW:
                yield from _course_lines(self._flowering_with(step, tall), width, tall=tall)
        if tall and self._batch is not None and self._flowers:
            yield from self._flowers_beside.lines(self._batch, width)

    @property
    def _flowers(self) -> bool:
        return any(step.step is Step.FLOWER for step in self._course)

    @property
    def _flowers_beside(self) -> FlowersBeside:
        if self._beside is None:
            self._beside = FlowersBeside(self.desk.season, self.desk.today)
        return self._beside

    def _flowering_with(self, step: Expected, tall: bool) -> Expected:
        """A step; without room for what flowers with it, its names stand beside the days."""
        if tall or step.step is not Step.FLOWER or self._batch is None:
            return step
        names = self._flowers_beside.names(self._batch)
        return replace(step, because=f"with {names}") if names else step

    def _window(self, crop: Crop, width: int) -> Iterator[Line]:
        """When it is sown, and when again: in one line where there is little room."""
        plan, season = self._plan, self.desk.season
        if plan is None:
            return
        day, tall = self._day_or_none() or self.day, self.size.height >= TALL
        if plan.out_of_window:
            yield from paragraph(plan.out_of_window, width, Role.LATE)
        elif plan.window is not None:
            words = f"Sowing window {say_day(plan.window.opens)} to {say_day(plan.window.closes)}"
            again = "" if tall else short_turn(season, crop, day)
            yield from paragraph("; ".join(filter(None, (words, again))), width, Role.QUIET)
        if tall or plan.out_of_window or plan.window is None:
            yield from turn_line(season, crop, day, width)

    def _label(self, crop: Crop, width: int) -> Iterator[Line]:
        values = self.form.values()
        day = self._day_or_none() or self.day
        try:
            seeds = read_whole(values["seeds"])
        except InputError:
            seeds = None
        many = too_many_words(crop, seeds)
        if many:
            yield from paragraph(many, width, Role.LATE)
        front, back = label_sides(crop, values["variety"], day, self._number, seeds)
        yield from paragraph(f"Label front: {front}; back: {back}", width, Role.STRONG, "  ")

    def _day_or_none(self) -> date | None:
        try:
            return self._read_day()
        except InputError:
            return None

    def _read_day(self) -> date:
        text, season = self.form.field("day").text, self.desk.season
        return read_day(text, self.desk.today, month_first=month_first(season))

    def action_agree(self) -> None:
        """Say that the caution shown was read; it is recorded with the sowing."""
        crop = self.crop
        to_read = self._to_read(crop) if crop else ()
        if not to_read:
            self.say("There is no caution that waits to be read.")
            return
        self._agreed.add(to_read[0])
        left = "Read on: there is one more." if len(to_read) > 1 else ""
        self.say(left or "Read. It is written down when you save.")
        self._tell()

    def save(self) -> str:
        """Record the batch, and what was read before it."""
        crop, today = self.crop, self.desk.today
        if crop is None:
            raise SheetFault({"crop": "type the first letters of the crop"})
        try:
            day = self._read_day()
        except InputError as error:
            raise SheetFault({"day": str(error)}) from None
        says = read_sheet(self.form.values(), crop, self.desk.season, day, self._number)
        if not says.planned and day > today:
            raise SheetFault({"day": "still to come: say planned, or take a day up to today"})
        if self._to_read(crop):
            agree = self.ring.named(AGREE)
            raise BenchroundError(f"Nothing was recorded: read the caution, then press {agree}.")
        drafts = [
            Draft(Kind.CAUTION_READ, read_key(name, crop.key)) for name in sorted(self._agreed)
        ]
        lettered = letter_words(self._number, self.desk.season.batches)
        name = f"{crop.name} {self._number}{f' ({lettered})' if lettered else ''}"
        words = f"{name} planned for {say_day(day)}" if says.planned else f"{name} sown"
        on = min(day, today) if says.planned else day
        return self.bench.doings.record([*drafts, says.draft], on, words=words)


def _as_sentence(text: str) -> str:
    return f"{text[0].upper()}{text[1:]}"


def _short_cautions(names: Sequence[str], width: int) -> Iterator[Line]:
    for name in names[:SHORT_CAUTIONS]:
        yield line((fit(f"Caution: {CAUTIONS[name].short}", width), Role.CAUTION))
    left = len(names) - SHORT_CAUTIONS
    if left > 0:
        also = "; ".join(CAUTIONS[name].short for name in names[SHORT_CAUTIONS:])
        yield line((fit(f"and {left} more: {also}", width), Role.CAUTION))


def _course_lines(step: Expected, width: int, *, tall: bool) -> Iterator[Line]:
    to = f" to {say_day(step.until)}" if step.until and step.until != step.day else ""
    room = width - STEP_WIDE - DAYS_WIDE
    beside = not tall or room >= max(REASON_LEAST, width_of(step.because))
    yield line(
        (fit(str(step.step), STEP_WIDE), Role.INK),
        (fit(f"{say_day(step.day)}{to}", DAYS_WIDE), Role.STRONG),
        (fit(step.because, max(0, room)) if beside else "", Role.QUIET),
    )
    if not beside:
        yield from (line("  ", *words) for words in paragraph(step.because, width - 2, Role.QUIET))
