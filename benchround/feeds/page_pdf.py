"""A page as a PDF: set as large as the sheet allows, on further sheets where it must be."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.progress import Progress, told, unheard
from benchround.feeds.fitting import line_height_mm
from benchround.feeds.page_strips import Setting, Strip
from benchround.feeds.pages import Page
from benchround.feeds.papers import Paper
from benchround.feeds.pdf_text import Ink

MARGIN_MM = 10.0
BETWEEN_MM = 6.0
LARGEST_PT, SMALLEST_PT, OVER_PT, USUAL_PT = 11.0, 6.5, 7.5, 8.5
"""Body sizes: the range tried to keep a page on one sheet, the one used where it cannot be kept on
one, and the usual one of a page that may be long."""
LEAST_TABLE_PT = 5.5
"""Tables that would tear their words apart are set smaller, down to this."""
STEP_PT = 0.5
LEAST_PAPER_MM = (74.0, 105.0)
"""A page of text wants as much, A7 (our proposal)."""
FOOT_PT = 7.0
"""Size of the line below a page of several sheets that says which it is."""
LEAST_COLUMN_MM = 85.0
"""Columns narrower than this tear every line apart (our proposal)."""


@dataclass(frozen=True, slots=True)
class Placed:
    """Where a strip goes: sheet and column from 0, and its top edge."""

    sheet: int
    column: int
    top_mm: float
    strip: Strip


def page_pdf(
    page: Page,
    paper: Paper,
    day: date,
    *,
    one_sheet: bool,
    ink: Ink | None = None,
    progress: Progress = unheard,
) -> tuple[bytes, tuple[str, ...]]:
    """The page as a PDF, and remarks.

    Args:
        page: what it says.
        paper: the paper.
        day: the day the file says it was made.
        one_sheet: whether to set it smaller, and in two columns, to keep it on one sheet.
        ink: what to write with; None: the best typefaces at hand.
        progress: told of the lines drawn.

    Raises:
        InputError: the paper is too small for a page.
    """
    if paper.width_mm < LEAST_PAPER_MM[0] or paper.height_mm < LEAST_PAPER_MM[1]:
        least = " x ".join(f"{side:g}" for side in LEAST_PAPER_MM)
        raise InputError(
            f"{paper.name} mm is too small a paper for a page: take one of {least} mm at least."
        )
    with ink or Ink(paper, day, page.title) as pen:
        columns, setting = _setting(pen, page, one_sheet=one_sheet)
        places = _on_sheets(setting.strips(page), _room(paper), columns)
        sheets = max(placed.sheet for placed in places) + 1
        for placed in told(places, progress):
            while pen.pages <= placed.sheet:
                pen.page()
                if sheets > 1:
                    _foot(pen, page, pen.pages, sheets)
            left = MARGIN_MM + placed.column * (setting.across_mm + BETWEEN_MM)
            placed.strip.draw(left, MARGIN_MM + placed.top_mm)
        if one_sheet and sheets > 1:
            pen.remark(f"It does not fit on one sheet of {paper.name}: there are {sheets}.")
        return pen.data(), pen.remarks


def _foot(pen: Ink, page: Page, sheet: int, sheets: int) -> None:
    """Which sheet it is, and of what, where that is short enough to stand in a line."""
    number = f"{sheet} of {sheets}"
    text = pen.ready(f"{page.foot or page.title}, {number}")
    if pen.measure()(text) * FOOT_PT > pen.paper.width_mm - 2 * MARGIN_MM:
        text = number
    top = pen.paper.height_mm - MARGIN_MM - line_height_mm(FOOT_PT)
    pen.lines([text], 0, top, FOOT_PT, right=pen.paper.width_mm - MARGIN_MM)


def _setting(pen: Ink, page: Page, *, one_sheet: bool) -> tuple[int, Setting]:
    """The number of columns and the setting: the largest letters that keep it on one sheet."""
    full = pen.paper.width_mm - 2 * MARGIN_MM
    half = (full - BETWEEN_MM) / 2
    widths = [(1, full), *([(2, half)] if half >= LEAST_COLUMN_MM else [])]
    size = LARGEST_PT
    while one_sheet and size >= SMALLEST_PT:
        for columns, across in widths:
            if len(page.blocks) * line_height_mm(size) > columns * _room(pen.paper):
                continue  # each block takes a line at the least
            setting = Setting(pen, size, across)
            places = _placed(setting.strips(page), _room(pen.paper), columns)
            if max(placed.sheet for placed in places) == 0:
                return columns, setting
        size -= STEP_PT
    size = OVER_PT if one_sheet else USUAL_PT
    while size > LEAST_TABLE_PT and not Setting(pen, size, full).whole_words(page):
        size -= STEP_PT
    return 1, Setting(pen, size, full)


def _room(paper: Paper) -> float:
    return paper.height_mm - 2 * MARGIN_MM


def _on_sheets(strips: Sequence[Strip], room: float, columns: int) -> tuple[Placed, ...]:
    """Where every strip goes; where one sheet does not do, with a line left free for the foot."""
    places = tuple(_placed(strips, room, columns))
    if places[-1].sheet == 0:
        return places
    return tuple(_placed(strips, room - 2 * line_height_mm(FOOT_PT), columns))


def _placed(strips: Sequence[Strip], room: float, columns: int) -> Iterator[Placed]:
    """Where every strip goes, column by column and sheet by sheet."""
    column, top = 0, 0.0
    for at, strip in enumerate(strips):
        after = strips[at + 1].height_mm if strip.keep and at + 1 < len(strips) else 0.0
        if top > 0 and top + strip.height_mm + after > room + 1e-9:
            column, top = column + 1, 0.0
            for repeated in strip.again:
                yield Placed(*divmod(column, columns), top, repeated)
                top += repeated.height_mm
        yield Placed(*divmod(column, columns), top, strip)
        top += strip.height_mm
