"""A crop on a card: all its figures on the front, names, learning and cautions on the back."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from benchround.core.caution.due import CAUTIONS, crop_cautions
from benchround.core.crop.crop import Crop
from benchround.core.crop.page import CropFigure, crop_figures, value_words
from benchround.core.crop.table import override
from benchround.core.errors import BenchroundError
from benchround.core.record import Draft, Kind
from benchround.screens.batch_back import caution_lines, learned_lines, pair
from benchround.screens.card import CardScreen
from benchround.screens.crops import batch_words, sort_words
from benchround.screens.keys import CROP, bindings
from benchround.screens.packet_lines import packet_row_words
from benchround.screens.text import BLANK, Line, Role, fit, line, paragraph
from benchround.screens.turn_lines import turn_lines
from benchround.screens.widgets.pick_list import Row, heading, told
from benchround.shell.crop_rules import CropRules, rules_of

LABEL_WIDE, VALUE_WIDE = 22, 22
OWN, OWN_WIDE = "OWN", 4
UNIT_ENDINGS = ("_c", "_mm", "_cm")
SHORT_UNITS = {"degrees C": "C"}


class CropScreen(CardScreen, inherit_bindings=False):
    """One crop. A figure changed here counts for this season; the library keeps its own.

    Args:
        key: the crop's key.
    """

    BINDINGS = bindings(CROP)
    KEYS_OF = CROP

    def __init__(self, key: str) -> None:
        super().__init__()
        self.crop_key = key

    @property
    def crop(self) -> Crop:
        """The crop as it counts in this season."""
        return self.desk.season.crop(self.crop_key)

    @property
    def rules(self) -> CropRules:
        """The season's own figures.

        Raises:
            BenchroundError: the library does not know the crop.
        """
        if self.crop_key not in self.desk.library:
            raise BenchroundError(f"The library has no crop '{self.crop_key}'.")
        return rules_of(self.desk, self.crop_key)

    def figures(self) -> tuple[CropFigure, ...]:
        """Every figure the crop has."""
        if self.crop_key not in self.desk.library:
            return ()
        rules = self.rules
        return crop_figures(self.crop, rules.library, rules.changed)

    @property
    def foot_idle(self) -> frozenset[str]:
        """Only a figure of one's own can be taken back to the library's."""
        return super().foot_idle | (frozenset() if self._own() else {"library-figure"})

    def _own(self) -> bool:
        """Whether the figure under the cursor is the season's own."""
        name = self.picks.picked
        return any(figure.own for figure in self.figures() if figure.name == name)

    def head_lines(self, width: int) -> Sequence[Line]:
        """Names, hazards in a word each, and the figure under the cursor in full."""
        crop = self.crop
        words = f"{crop.name} ({crop.latin}), {sort_words(crop)}"
        lines = [line((fit(words, width), Role.HEADING))]
        if crop.hazards:
            hazards = f"Hazards: {', '.join(crop.hazards)} (tab tells the rest)"
            lines += paragraph(hazards, width, Role.CAUTION)
        lines += self._fault(width)
        return [*lines, *self._told_figure(width)]

    def _fault(self, width: int) -> Sequence[Line]:
        """Own figures that do not fit and are not used."""
        if self.crop_key not in self.desk.library:
            return paragraph("The library has no such crop.", width, Role.BAD)
        found = misfits(self.rules)
        if not found:
            return ()
        words = f"Not used, because it cannot stand there: {'; '.join(found)}"
        return paragraph(words, width, Role.BAD)

    def _told_figure(self, width: int) -> Iterator[Line]:
        """Two lines on the figure under the cursor, so that the list beneath does not jump."""
        figure = next((f for f in self.figures() if f.name == self.picks.picked), None)
        if figure is None:
            return
        own = f"; library {_with_unit(figure, figure.library)}" if figure.own else ""
        meaning = f"{figure.meaning}{own}"
        yield line((fit(f"{figure.name}: {meaning}", width), Role.STRONG))
        yield line((fit(f"source: {figure.source}", width), Role.QUIET))

    def rows(self) -> Sequence[Row]:
        """Every figure under the heading of its section."""
        found: list[Row] = []
        section = None
        for figure in self.figures():
            at = figure.name.rpartition(".")[0]
            if at != section:
                section = at
                found.append(heading(_section_words(at)))
            found.append(_figure_row(figure))
        return found or [told(line(("No figures are known.", Role.QUIET)))]

    def page_lines(self, width: int) -> Sequence[Line]:
        """Names, what was learned, batches, packets, cautions in full."""
        return list(self._page(self.crop, width))

    def _page(self, crop: Crop, width: int) -> Iterator[Line]:
        season, today = self.desk.season, self.desk.today
        yield from pair("also called", ", ".join(crop.synonyms) or "nothing else", width)
        hazards = ", ".join(crop.hazards) or "none known to the library"
        yield from pair("hazards", hazards, width, Role.CAUTION if crop.hazards else Role.INK)
        short = "; ".join(CAUTIONS[name].short for name in crop_cautions(crop))
        if short:
            yield from pair("in short", short, width, Role.CAUTION)
        yield from turn_lines(season, crop, today, width)
        yield from learned_lines(season.learned(crop.key), width)
        batches = [batch for batch in season.batches.values() if batch.crop == crop.key]
        packets = season.packets_of_crop(crop.key)
        if batches or packets:
            yield BLANK
            yield from paragraph("Batches and packets", width, Role.HEADING)
        for batch in sorted(batches, key=lambda batch: batch.begun, reverse=True):
            yield line((fit(batch_words(batch), width), Role.INK))
        for packet in packets:
            words = f"packet {packet.id}: {packet_row_words(packet, season, today)}"
            yield from paragraph(words, width)
        yield from caution_lines(crop, width)

    def action_change(self) -> None:
        """Open the sheet of the figure under the cursor."""
        self.require_open(self.desk.today)
        if self.rules and self.picks.picked:
            self.bench.open("figure", self.crop_key, self.picks.picked)

    def action_other(self) -> None:
        """Open an empty sheet, for any figure."""
        self.require_open(self.desk.today)
        if self.rules:
            self.bench.open("figure", self.crop_key, "")

    def action_sow(self) -> None:
        """Open a sowing sheet for the crop."""
        day = self.bench.round_screen.day
        self.require_open(day)
        self.bench.open("sow like", day, self.crop_key)

    def action_withdraw(self) -> None:
        """Take the season's own figure back, when asked for a second time."""
        self.require_open(self.desk.today)
        name, rules = self.picks.picked, self.rules
        figure = next((f for f in self.figures() if f.name == name), None)
        if figure is None or not figure.own:
            raise BenchroundError("This figure is the library's own: enter sets another.")
        rules.without((name,))
        library = _with_unit(figure, figure.library)
        key = self.ring.named("library-figure")
        question = f"Take {name} back to the library's {library}? Press {key} again to do it."
        if not self.confirmed(name, question):
            return
        records = rules.holding((name,))
        instead = [
            Draft(Kind.CROP_RULE, rule.about, {other: value}, day=rule.day)
            for rule in records
            for other, value in rule.figures.items()
            if other != name
        ]
        words = f"{self.crop.name}, your own {name}"
        said = self.bench.doings.withdraw([rule.id for rule in records], words, instead)
        self.write_card()
        self.say(said)


def misfits(rules: CropRules) -> tuple[str, ...]:
    """What is wrong with own figures that are passed over when the season is opened."""
    crop, found = rules.library, list[str]()
    for rule in rules.rules:
        try:
            crop = override(crop, rule.figures)
        except BenchroundError as error:
            found.append(fault(error))
    return tuple(found)


def fault(error: BenchroundError) -> str:
    """What is wrong with a figure, without the line that counts the faults."""
    first, *faults = str(error).splitlines()
    return " ".join(" ".join(faults).split()) or first


def _section_words(at: str) -> str:
    words = at.replace(".", " ").replace("_", " ")
    return f"{words[0].upper()}{words[1:]}" if words else "The crop"


def _label(figure: CropFigure) -> str:
    name = figure.name.rpartition(".")[2]
    ending = next((one for one in UNIT_ENDINGS if name.endswith(one) and figure.unit), "")
    return name.removesuffix(ending).replace("_", " ")


def _with_unit(figure: CropFigure, value: object) -> str:
    unit = SHORT_UNITS.get(figure.unit, figure.unit)
    if value is None:
        return value_words(value)
    return f"{value_words(value)} {unit.removesuffix('s') if value == 1 else unit}".rstrip()


def _figure_row(figure: CropFigure) -> Row:
    def words(width: int) -> Line:
        label = min(LABEL_WIDE, width // 3)
        room = max(0, width - label - OWN_WIDE)
        value = min(VALUE_WIDE, room)
        said = _with_unit(figure, figure.value)
        if len(said) >= value:
            value = min(room, len(said) + 1)
        source = max(0, room - value)
        return line(
            (fit(_label(figure), label), Role.INK),
            (fit(OWN if figure.own else "", OWN_WIDE), Role.DONE),
            (fit(said, value), Role.STRONG),
            (fit(figure.source, source), Role.QUIET),
        )

    return Row(words, figure.name)
