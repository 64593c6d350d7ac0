"""The year: each batch and bulb as a strip across it.

A capital letter begins what was recorded, a small one what is only expected, each followed by its
own line; days in flower and of picking stand out. Today runs through all strips.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import date

from benchround.core.dates import Span as Days
from benchround.core.frozen import dataclass
from benchround.drawing.canvas import (
    UNICODE,
    Glyphs,
    Inked,
    Line,
    Role,
    fit,
    within_width,
    wrap_items,
)
from benchround.drawing.phases import LETTERS, Phase
from benchround.drawing.scale import Scale, month_line, span_label, tick_line
from benchround.drawing.words import say_short
from benchround.drawing.year_bar import bar
from benchround.drawing.year_strips import Order, YearStrip
from benchround.drawing.year_words import strip_words

__all__ = [
    "Columns",
    "axis_lines",
    "legend_lines",
    "rows",
    "strip_words",
]

LEAST_WIDTH = 20
LEADS = {Order.PLACE: "place", Order.SOWING: "sown", Order.FLOWERING: "flowers"}


@dataclass(frozen=True, slots=True)
class Columns:
    """How the width is shared out: what it is sorted by, the batch, its stage, the strip."""

    lead: int
    label: int
    stage: int
    strip: int

    @classmethod
    def of(cls, width: int) -> Columns:
        """Share out a width; a narrow one goes without the lead and the stage."""
        width = max(LEAST_WIDTH, width)
        lead = 0 if width < 40 else 7 if width < 100 else 10 if width < 160 else 12
        label = min(40, max(4, width // 5))
        stage = 17 if width >= 110 else 0
        taken = sum(column + 1 for column in (lead, label, stage) if column)
        return cls(lead, label, stage, width - taken)

    def left(self, lead: str, label: str, stage: str, glyphs: Glyphs, role: Role) -> list[Inked]:
        """The words before the strip."""
        shown = ((lead, self.lead), (label, self.label), (stage, self.stage))
        return [Inked(fit(text, wide, glyphs) + " ", role) for text, wide in shown if wide]


def axis_lines(
    days: Days, today: date, width: int, glyphs: Glyphs = UNICODE, order: Order = Order.PLACE
) -> tuple[Line, ...]:
    """The month names and the axis under them, with headings for what stands on the left."""
    columns = Columns.of(width)
    scale = Scale(days, columns.strip)
    heads = columns.left(LEADS[order], "batch", "stage now", glyphs, Role.QUIET)
    label = span_label(days)
    blank = sum(len(span.text) for span in heads)
    lines = (
        (*heads, *month_line(scale)),
        (Inked(fit(label, blank, glyphs), Role.QUIET), *tick_line(scale, today, glyphs)),
    )
    return tuple(within_width(lines, width, glyphs))


def rows(
    strips: Iterable[YearStrip],
    days: Days,
    today: date,
    width: int,
    glyphs: Glyphs = UNICODE,
    order: Order = Order.PLACE,
) -> Iterator[Line]:
    """Yield one line for each strip, drawn only when it is asked for.

    Args:
        strips: the strips, in the order they are to stand in.
        days: the days the strip part covers, such as `scale.growing_year`.
        today: where the line between recorded and expected runs.
        width: cells.
        glyphs: the set of signs.
        order: what the strips are sorted by; it is shown in front of each.
    """
    columns = Columns.of(width)
    scale = Scale(days, columns.strip)
    for strip in strips:
        left = columns.left(
            _lead(strip, order, today), strip.title, strip.stage, glyphs, Role.LABEL
        )
        yield from within_width(
            [(*left, *bar(strip.stretches, scale, today, glyphs))], width, glyphs
        )


def _lead(strip: YearStrip, order: Order, today: date) -> str:
    if order is Order.PLACE:
        return strip.place or "-"
    flowers = strip.flowerings[0].opens if strip.flowerings else None
    day = flowers if order is Order.FLOWERING else strip.begins
    return say_short(day, today) if day else "-"


def legend_lines(
    width: int, glyphs: Glyphs = UNICODE, phases: Iterable[Phase] = tuple(LETTERS)
) -> tuple[Line, ...]:
    """What letters and lines mean, for the phases that are shown."""
    asked = set(phases)
    letters = [f"{letter} {phase}" for phase, letter in LETTERS.items() if phase in asked]
    if not letters:
        return ()
    how = (
        f"Capital and {glyphs.done} recorded",
        f"small and {glyphs.ahead} expected",
        f"{glyphs.now} today",
    )
    words = (*wrap_items(letters, width, glyphs), *wrap_items(how, width, glyphs))
    return tuple(within_width(((Inked(one, Role.QUIET),) for one in words), width, glyphs))
