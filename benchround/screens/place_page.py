"""A place on a card: what stands there, and on the back what is to be done and was measured."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from benchround.core.batch.batch import Batch, Part
from benchround.core.dates import say_day
from benchround.core.errors import BenchroundError
from benchround.core.site import Place
from benchround.core.task import Task
from benchround.screens.batch_back import pair
from benchround.screens.batch_lines import record_text
from benchround.screens.card import CardScreen
from benchround.screens.keys import PLACE_PAGE, bindings
from benchround.screens.text import BLANK, Line, Role, fit, line, paragraph, width_of
from benchround.screens.widgets.pick_list import Row, heading, told
from benchround.screens.words import standing_words

LAST_RECORDS = 20


class PlaceScreen(CardScreen, inherit_bindings=False):
    """One place.

    Args:
        code: the place's code.
    """

    BINDINGS = bindings(PLACE_PAGE)
    KEYS_OF = PLACE_PAGE

    def __init__(self, code: str) -> None:
        super().__init__()
        self.code = code

    @property
    def known(self) -> Place | None:
        """The place; None where it was taken off the books."""
        return self.desk.season.place(self.code)

    def head_lines(self, width: int) -> Sequence[Line]:
        """Name, kind, and what is set up for it."""
        place = self.known
        if place is None:
            return paragraph(f"There is no place '{self.code}' any more.", width, Role.BAD)
        said = [str(place.kind)]
        if place.trays is not None:
            said.append(f"room for {place.trays:g} trays")
        if place.set_c is not None:
            said.append(f"kept at {place.set_c:g} C")
        if place.glazing != "none":
            said.append(f"under {place.glazing}")
        if place.shade_share:
            said.append(f"{place.shade_share:.0%} shade")
        return [
            line((fit(f"{place.name}", width), Role.HEADING)),
            *paragraph("; ".join(said), width),
        ]

    def standing(self) -> Sequence[tuple[Batch, Part]]:
        """What stands there and lives."""
        batches = self.desk.season.batches
        return [
            (batches[name], part)
            for name in sorted(batches, key=lambda name: (len(name), name))
            for part in batches[name].parts
            if part.place == self.code and not part.ended
        ]

    def rows(self) -> Sequence[Row]:
        """A row for each batch there."""
        found = self.standing()
        if not found:
            return [told(line(("Nothing stands here.", Role.QUIET)))]
        names = [self._called(*one) for one in found]
        wide = max(map(width_of, names)) + 1, max(width_of(part.stage) for _, part in found) + 1
        rows = (self._row(*one, name, wide) for one, name in zip(found, names, strict=True))
        return [heading("Standing here", str(len(found))), *rows]

    def _called(self, batch: Batch, part: Part) -> str:
        crop = self.desk.season.crop(batch.crop).name
        variety = f" '{batch.variety}'" if batch.variety else ""
        return f"{batch.id} {crop}{variety}{f', {part.name}' if part.name else ''}"

    def _row(self, batch: Batch, part: Part, name: str, columns: tuple[int, int]) -> Row:
        alive = f"{part.alive} alive" if part.alive is not None else "not counted"

        def words(width: int) -> Line:
            wide, stage = min(columns[0], width // 2), columns[1]
            rest = max(0, width - wide - stage)
            return line(
                (fit(name, wide - 1) + " ", Role.STRONG),
                (fit(str(part.stage), stage), Role.INK),
                (fit(f"{alive}, since {say_day(part.since)}", rest), Role.QUIET),
            )

        return Row(words, f"{batch.id} {part.name}")

    def page_lines(self, width: int) -> Sequence[Line]:
        """Today's tasks there, and the last records of the place."""
        return list(self._page(width))

    def _page(self, width: int) -> Iterator[Line]:
        yield from paragraph("To do here today", width, Role.HEADING)
        tasks = [task for task in self.desk.round().tasks if task.place == self.code]
        for task in tasks:
            yield from pair(standing_words(task), _task_words(task), width)
        if not tasks:
            yield from paragraph("Nothing.", width)
        yield from self._measured(width)
        log = self.desk.season.place_log.get(self.code, ())
        if log:
            yield BLANK
            yield from paragraph("Done here, newest first", width, Role.HEADING)
        for record in log[::-1][:LAST_RECORDS]:
            yield from pair(say_day(record.day), record_text(record, self.desk.season), width)

    def _measured(self, width: int) -> Iterator[Line]:
        """What the place's own thermometer said, newest first."""
        inside = self.desk.season.weather.inside
        days = sorted((day for code, day in inside if code == self.code), reverse=True)
        if days:
            yield BLANK
            yield from paragraph("Measured here, newest first", width, Role.HEADING)
        for day in days[:LAST_RECORDS]:
            found = inside[self.code, day]
            yield from pair(say_day(day), _range(found.min_c, found.max_c), width)

    def action_open(self) -> None:
        """Open the batch under the cursor."""
        if not self.picks.picked:
            raise BenchroundError("There is no batch here.")
        self.bench.open("batch", self.picks.picked.partition(" ")[0])


def _task_words(task: Task) -> str:
    about = f"{task.about} {task.crop}: " if task.crop else ""
    return f"{about}{task.instruction}"


def _range(low: float | None, high: float | None) -> str:
    ends = (("lowest", low), ("highest", high))
    return ", ".join(f"{words} {value:g} C" for words, value in ends if value is not None)
