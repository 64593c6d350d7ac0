"""What flowers together: only the days in flower, with colours and heights in words."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from datetime import date

from benchround.core.dates import Span as Days
from benchround.core.frozen import dataclass
from benchround.core.planning.overlap import flowering_overlap, flowerless
from benchround.drawing.canvas import (
    UNICODE,
    Glyphs,
    Inked,
    Line,
    Role,
    fit,
    paragraph,
    within_width,
    wrap,
)
from benchround.drawing.phases import Phase
from benchround.drawing.scale import Scale, month_line, span_label, tick_line
from benchround.drawing.stretches import Stretch
from benchround.drawing.words import counted, listed, say_days
from benchround.drawing.year_bar import bar
from benchround.drawing.year_strips import YearStrip

WORDS_BESIDE_FROM = 150
"""Width from which colours and heights stand beside the strip instead of under it."""
INDENT = "    "
NONE = "Nothing is in flower or expected to be in this time."


@dataclass(frozen=True, slots=True)
class Flowering:
    """One batch in flower, once.

    Attributes:
        batch: its id; parts of one batch flower each for themselves.
        title: batch, part and name.
        days: recorded and expected together.
        stretches: the same apart.
        together: days in flower together with the chosen batch; None where none is chosen.
    """

    batch: str
    title: str
    days: Days
    stretches: tuple[Stretch, ...]
    colours: tuple[str, ...] = ()
    height_cm: tuple[int, int] | None = None
    together: int | None = None

    @property
    def expected(self) -> bool:
        """Whether none of it has been recorded."""
        return all(stretch.expected for stretch in self.stretches)


def flowerings(strips: Iterable[YearStrip], days: Days, chosen: str = "") -> tuple[Flowering, ...]:
    """The flowerings that fall into a span of days, the chosen batch first, then by first flower.

    Args:
        strips: the strips of the year.
        days: the span.
        chosen: id of the batch the others are held against; empty for none.
    """
    found = [one for strip in strips for one in _of_strip(strip, days)]
    found.sort(key=lambda one: (one.batch != chosen, one.days.opens, one.title))
    mine = [one.days for one in found if one.batch == chosen]
    return tuple(_held_against(one, mine) if mine else one for one in found)


def _of_strip(strip: YearStrip, days: Days) -> Iterator[Flowering]:
    for span in strip.flowerings:
        if span.closes < days.opens or span.opens > days.closes:
            continue
        parts = tuple(
            one for one in strip.stretches if one.phase is Phase.FLOWER and one.opens in span
        )
        yield Flowering(strip.batch, strip.title, span, parts, strip.colours, strip.height_cm)


def _held_against(one: Flowering, mine: Sequence[Days]) -> Flowering:
    pairs = (flowering_overlap((("", span), ("", one.days)))[0] for span in mine)
    together = sum(pair.days_together for pair in pairs)
    return Flowering(
        one.batch, one.title, one.days, one.stretches, one.colours, one.height_cm, together
    )


def looks_like(flowering: Flowering) -> str:
    """Height and colours in words; the colours are those the crop may have."""
    height = flowering.height_cm
    tall = "" if height is None else f"{height[0]}-{height[1]} cm"
    return ", ".join(word for word in (tall, listed(flowering.colours, "or")) if word)


def _together_words(flowering: Flowering, chosen: str) -> str:
    if flowering.together is None:
        return ""
    if flowering.batch == chosen:
        return f"chosen, {counted(flowering.days.days, 'day')}"
    if not flowering.together:
        return f"not with {chosen}"
    return f"{counted(flowering.together, 'day')} with {chosen}"


def flowering_rows(
    found: Iterable[Flowering],
    days: Days,
    today: date,
    width: int,
    glyphs: Glyphs = UNICODE,
    chosen: str = "",
    in_units: Callable[[str], str] = str,
) -> Iterator[tuple[Line, ...]]:
    """Yield the lines of one flowering at a time: one beside its words, or two.

    `in_units` says a height in the grower's units.
    """
    label, strip, words = _columns(width)
    scale = Scale(days, strip)
    for one in found:
        role = Role.TITLE if chosen and one.batch == chosen else Role.LABEL
        looks = in_units(looks_like(one))
        said = "; ".join(filter(None, (_together_words(one, chosen), looks)))
        line: Line = (
            Inked(fit(one.title, label, glyphs) + " ", role),
            *bar(one.stretches, scale, today, glyphs),
        )
        if words:
            beside = Inked(" " + said, Role.TEXT)
            yield tuple(within_width([(*line, beside)], width, glyphs))
        else:
            under = wrap(said, width - len(INDENT), glyphs)
            more = [(Inked(INDENT + text, Role.TEXT),) for text in under]
            yield tuple(within_width([line, *more], width, glyphs))


def _columns(width: int) -> tuple[int, int, int]:
    """Cells for the title, the strip and the words; no words where they go under the strip."""
    width = max(20, width)
    label = min(36, max(6, width // 4))
    words = width * 2 // 5 if width >= WORDS_BESIDE_FROM else 0
    return label, width - label - 1 - (words + 1 if words else 0), words


def flowering_lines(
    found: Sequence[Flowering],
    days: Days,
    today: date,
    width: int,
    glyphs: Glyphs = UNICODE,
    chosen: str = "",
) -> tuple[Line, ...]:
    """The whole picture: axis, the flowerings, and when nothing flowers."""
    if not found:
        return tuple(within_width([(Inked(NONE, Role.QUIET),)], width, glyphs))
    label, strip, _ = _columns(width)
    scale = Scale(days, strip)
    axis: tuple[Line, ...] = (
        (Inked(fit("in flower", label + 1, glyphs), Role.QUIET), *month_line(scale)),
        (
            Inked(fit(span_label(days), label, glyphs) + " ", Role.QUIET),
            *tick_line(scale, today, glyphs),
        ),
    )
    picture = flowering_rows(found, days, today, width, glyphs, chosen)
    how = f"F {glyphs.flower} recorded, f {glyphs.flower_ahead} expected, {glyphs.now} today"
    lines = (
        *axis,
        *(line for lines in picture for line in lines),
        *paragraph(how, width, glyphs, Role.QUIET),
        *paragraph(bare_words(found, days, today), width, glyphs, Role.QUIET),
    )
    return tuple(within_width(lines, width, glyphs))


def bare_words(found: Sequence[Flowering], days: Days, today: date) -> str:
    """When nothing is in flower."""
    bare = flowerless([one.days for one in found], days)
    if not bare:
        return "Something is in flower all the time."
    return f"Nothing in flower {'; '.join(say_days(span, today) for span in bare)}."
