"""The front of a batch's card in words: where it is, its counts, what comes, what happened."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from benchround.core.batch.batch import Batch, Part
from benchround.core.dates import say_day
from benchround.core.planning.schedule import Expected
from benchround.core.record import Record
from benchround.core.season import Season
from benchround.core.unit_words import own
from benchround.drawing.lifecycle import lifecycle_lines, way_of
from benchround.drawing.stretches import coming_steps
from benchround.screens.pictures import glyphs, shown
from benchround.screens.text import Line, Role, fit, line, paragraph, width_of
from benchround.screens.widgets.pick_list import Row, heading
from benchround.screens.words import figure_words

STEP_WIDE, DAYS_WIDE, DAY_WIDE = 16, 26, 12
NOT_COUNTED = "-"
COUNTS = ("sown", "up", "pricked_out", "planted", "flowered")


def title(batch: Batch, season: Season) -> str:
    """A batch with crop and variety."""
    variety = f" '{batch.variety}'" if batch.variety else ""
    return f"{batch.id} {season.crop(batch.crop).name}{variety}"


def head(
    batch: Batch, season: Season, day: date, chosen: Part, at: str, width: int
) -> Iterator[Line]:
    """Name, parts, lifecycle and counts.

    Args:
        batch: the batch.
        season: names crop and places.
        day: today.
        chosen: the part that is recorded for.
        at: which batch of how many, for the end of the first line.
        width: columns.
    """
    crop = season.crop(batch.crop)
    words = f"{title(batch, season)}, {crop.plant_class}"
    room = max(0, width - width_of(at) - 1)
    yield line((fit(words, room), Role.HEADING), (f" {at}", Role.QUIET))
    several = len(batch.parts) > 1
    for part in batch.parts:
        mark = ("* " if part is chosen else "  ") if several else ""
        yield line((fit(mark + part_words(part, batch, season, day), width), Role.STRONG))
    yield from shown(lifecycle_lines(way_of(season, batch, chosen, day), width, glyphs())[1:])
    yield from paragraph(count_words(batch), width)


def part_words(part: Part, batch: Batch, season: Season, day: date) -> str:
    """Where a part is in its life, how many live, and where they stand."""
    name = f"{part.name}: " if part.name else ""
    said = [f"{name}{part.stage} since {full_day(part.since, day)}"]
    if part.alive is not None and not part.ended:
        said.append(f"{part.alive} alive")
    place = season.place(part.place)
    if part.place:
        said.append(place.name if place else part.place)
    if not part.name and batch.wanted:
        said.append(f"{batch.wanted} wanted")
    return ", ".join(said)


def count_words(batch: Batch) -> str:
    """The five counts and what became of the rest; what nobody counted is a dash."""
    tally = batch.tally
    numbers = {name: getattr(tally, name) for name in COUNTS}
    again = batch.sowing.again_seeds if batch.sowing else 0
    counts = [
        f"{name.replace('_', ' ')} {NOT_COUNTED if number is None else number}"
        for name, number in numbers.items()
    ]
    if again:
        counts[0] += f" + {again}"
    lost = [f"{number or 'all'} {cause}" for cause, number in tally.losses.items()]
    counts.append(f"lost {', '.join(lost)}" if lost else "lost none")
    if tally.surplus:
        counts.append(f"surplus {tally.surplus}")
    return "; ".join((", ".join(counts[: len(COUNTS)]), *counts[len(COUNTS) :]))


def rows(batch: Batch, season: Season, day: date) -> Iterator[Row]:
    """What comes, and what happened, newest first; each record can be picked."""
    steps = coming_steps(season, batch, season.crop(batch.crop), day)
    if steps:
        yield heading("Coming")
        yield from (_coming(step, day) for step in steps)
    number = len(batch.records)
    noted = "1 record" if number == 1 else f"{number} records"
    yield heading("What happened, newest first", noted)
    yield from (_happened(record, season, day) for record in reversed(batch.records))


def _coming(step: Expected, day: date) -> Row:
    until = step.until if step.until and step.until > step.day else None
    days = full_day(step.day, day) + (f" to {full_day(until, day)}" if until else "")
    if step.day < day and (until is None or until < day):
        days = f"now ({days})"

    def words(width: int) -> Line:
        wide = max(DAYS_WIDE, width_of(days) + 1)
        room = max(0, width - STEP_WIDE - wide - 2)
        return line(
            ("  " + fit(str(step.step), STEP_WIDE), Role.INK),
            (fit(days, wide), Role.STRONG),
            (fit(step.because, room), Role.QUIET),
        )

    return Row(words)


def _happened(record: Record, season: Season, day: date) -> Row:
    said = record_text(record, season)

    def words(width: int) -> Line:
        when = full_day(record.day, day)
        wide = max(DAY_WIDE, width_of(when) + 1)
        return line((fit(when, wide), Role.QUIET), (fit(said, max(0, width - wide)), Role.INK))

    return Row(words, record.id)


def record_text(record: Record, season: Season) -> str:
    """A record in words: kind, figures, part and note."""
    part = record.text("part")
    figures = figure_words(record.figures, season)
    more = ", ".join(words for words in (part, figures, own(record.note)) if words)
    return f"{record.kind}: {more}" if more else str(record.kind)


def full_day(day: date, today: date) -> str:
    """A day with its weekday, and with its year where that is not this one."""
    return say_day(day) + (f" {day.year}" if day.year != today.year else "")
