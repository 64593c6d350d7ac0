"""The year in words: the strip under the cursor, what flowers with it, how full a place will be."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from benchround.core.dates import Span as Days
from benchround.drawing.flowering import Flowering, bare_words, looks_like
from benchround.drawing.room import PlaceRoom, room_words
from benchround.drawing.words import counted, say_days
from benchround.drawing.year import legend_lines
from benchround.drawing.year_strips import YearStrip
from benchround.drawing.year_words import strip_words
from benchround.screens.pictures import glyphs, shown
from benchround.screens.text import BLANK, Line, Role, paragraph


def strip_told(strip: YearStrip, day: date, width: int) -> Iterator[Line]:
    """One strip in sentences, and what the letters of the picture mean."""
    yield from paragraph(strip_words(strip, day), width)
    yield from shown(legend_lines(width, glyphs()))
    for stretch in strip.stretches:
        if stretch.because:
            words = f"{stretch.phase} {say_days(Days(stretch.opens, stretch.closes), day)}"
            yield from paragraph(f"{words}: {stretch.because}", width, Role.QUIET, "  ")


def flowering_told(
    mine: Sequence[Flowering], others: Sequence[Flowering], days: Days, day: date, width: int
) -> Iterator[Line]:
    """What flowers together with a batch, the longest first, and what does not.

    Args:
        mine: the flowerings of the batch under the cursor.
        others: all others, each held against it.
        days: the span shown.
        day: today.
        width: columns.
    """
    for one in mine:
        words = ", ".join(filter(None, (say_days(one.days, day), looks_like(one))))
        yield from paragraph(f"{one.title}: {words}", width, Role.HEADING)
    together = sorted((one for one in others if one.together), key=lambda one: -(one.together or 0))
    apart = [one for one in others if not one.together]
    yield from paragraph("In flower with it:" if together else "Nothing flowers with it.", width)
    for one in together:
        words = ", ".join(filter(None, (say_days(one.days, day), looks_like(one))))
        said = f"{counted(one.together or 0, 'day')}: {one.title}, {words}"
        yield from paragraph(said, width, Role.INK, "    ")
    if apart:
        names = "; ".join(f"{one.title}, {say_days(one.days, day)}" for one in apart)
        yield from paragraph(f"Not with it: {names}.", width, Role.QUIET, "  ")
    yield BLANK
    yield from paragraph(bare_words((*mine, *others), days, day), width, Role.QUIET)


def room_told(
    room: PlaceRoom, here: Sequence[str], how: str, day: date, width: int
) -> Iterator[Line]:
    """How full a place is and will be, and what stands there.

    Args:
        room: the place.
        here: the batches that stand there today.
        how: what the signs mean.
        day: today.
        width: columns.
    """
    yield from paragraph(room_words((room,), day), width)
    stands = f"There now: {'; '.join(here)}." if here else "Nothing stands there now."
    yield from paragraph(stands, width, Role.INK, "  ")
    yield from paragraph(how, width, Role.QUIET)
