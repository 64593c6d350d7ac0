"""Germination: the share up over the days, drawn as honestly as it was looked at.

A seedling found at a look came up some time since the look before. So between two looks that
found more there is a band, not a line; between two that found the same, a line.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator

from benchround.drawing.canvas import (
    UNICODE,
    Glyphs,
    Grid,
    Inked,
    Line,
    Role,
    within_width,
    wrap,
    wrap_items,
)
from benchround.drawing.germination_curve import GerminationCurve, germination_curve_of, share_at

__all__ = [
    "GerminationCurve",
    "germination_curve_of",
    "germination_lines",
]

ROWS = 11
AXIS = 5
"""Cells of the figures on the left, the axis itself included."""
DAY_STEPS = (1, 2, 5, 7, 10, 14, 28, 56)
NO_LOOKS = "nobody has looked yet"


def germination_lines(
    curve: GerminationCurve, width: int, glyphs: Glyphs = UNICODE, *, rows: int = ROWS
) -> tuple[Line, ...]:
    """The picture: headline, share of the seeds sown against days, and what the signs mean.

    Args:
        curve: the sowing.
        width: cells.
        glyphs: the set of signs.
        rows: rows from 0 to 100 per cent, at least 3.
    """
    lines: list[Line] = [(Inked(curve.title, Role.TITLE),)]
    lines += [(Inked(text, Role.TEXT),) for text in wrap(_headline(curve), width, glyphs)]
    if curve.looks or curve.curve:
        lines += _chart(curve, max(2, width - AXIS), max(3, rows), glyphs)
        legend = wrap_items(_legend(curve, glyphs), width, glyphs)
        lines += [(Inked(text, Role.QUIET),) for text in legend]
    for note in curve.notes:
        lines += [(Inked(text, Role.QUIET),) for text in wrap(note, width, glyphs)]
    return tuple(within_width(lines, width, glyphs))


def _headline(curve: GerminationCurve) -> str:
    words = [_up_words(curve)]
    if curve.half_day is not None:
        words.append(f"half of them by day {curve.half_day:.1f}")
    if curve.today is not None:
        words.append(f"today is day {curve.today:.0f}")
    return "; ".join(words)


def _up_words(curve: GerminationCurve) -> str:
    sown = f"{curve.sown} seeds sown" if curve.sown else ""
    if curve.because:
        return "; ".join(filter(None, (curve.because, sown)))
    if not curve.looks:
        return "; ".join(filter(None, (NO_LOOKS, sown)))
    last = f"day {curve.looks[-1].this_look_day:.0f}"
    of = f" of {sown}" if sown else ""
    if not curve.up:
        return f"none up{of} at the last look, {last}"
    if not curve.counted:
        return f"first seen {last}, not counted{'; ' + sown if sown else ''}"
    share = f", {curve.up / curve.of:.0%}" if curve.sown else ""
    return f"{curve.up} up{of}{share}, {last}"


def _chart(curve: GerminationCurve, columns: int, rows: int, glyphs: Glyphs) -> Iterator[Line]:
    grid = Grid(columns, rows)
    last = curve.last_day

    def column(day: float) -> int:
        return round(day / last * (columns - 1))

    def row(share: float) -> int:
        return rows - 1 - round(min(1.0, max(0.0, share)) * (rows - 1))

    _put_looks(grid, curve, column, row, glyphs)
    for at in range(columns):
        share = share_at(curve.curve, at / (columns - 1) * last)
        if share is not None:
            grid.put(at, row(share), glyphs.curve, Role.CURVE)
    if curve.half_day is not None and curve.counted:
        for down in range(row(0.5 * curve.up / curve.of), rows):
            grid.put(column(curve.half_day), down, glyphs.upright, Role.NOW)
    total = 0
    for look in curve.looks:
        total += look.newly_up
        if look.newly_up:
            share = total / curve.of if curve.counted else 0.0
            grid.put(column(look.this_look_day), row(share), glyphs.point, Role.COUNT)
    for number, line in enumerate(grid.lines()):
        share = 1.0 - number / (rows - 1)
        figure = f"{share * 100:.0f}%" if number * 2 % (rows - 1) == 0 else ""
        yield (Inked(f"{figure:>{AXIS - 1}}{glyphs.upright}", Role.AXIS), *line)
    yield from _axis(curve, columns, glyphs)


def _put_looks(
    grid: Grid,
    curve: GerminationCurve,
    column: Callable[[float], int],
    row: Callable[[float], int],
    glyphs: Glyphs,
) -> None:
    """Between two looks: a band where seedlings came up, a line where none did."""
    total = 0
    for look in curve.looks:
        before, total = total, total + look.newly_up
        if look.newly_up and not curve.counted:
            return  # how many is not known
        sign = glyphs.band if look.newly_up else glyphs.rule
        high = row(total / curve.of)
        for at in range(column(look.previous_look_day), column(look.this_look_day) + 1):
            for down in range(high, row(before / curve.of) + 1):
                grid.put(at, down, sign, Role.QUIET)


def _axis(curve: GerminationCurve, columns: int, glyphs: Glyphs) -> Iterator[Line]:
    last = curve.last_day
    step = next(
        (n for n in DAY_STEPS if n * (columns - 1) / last >= 5), math.ceil(6 * last / columns)
    )
    signs, text = [glyphs.rule] * columns, ""
    for day in range(0, math.floor(last) + 1, step):
        at = round(day / last * (columns - 1))
        signs[at] = glyphs.tick
        if at + len(str(day)) <= columns:
            text = text.ljust(at) + str(day)
    blank = " " * AXIS
    if curve.today is None:
        yield (Inked(blank + "".join(signs), Role.AXIS),)
    else:
        now = min(columns - 1, max(0, round(curve.today / last * (columns - 1))))
        yield (
            Inked(blank + "".join(signs[:now]), Role.AXIS),
            Inked(glyphs.pointer, Role.NOW),
            Inked("".join(signs[now + 1 :]), Role.AXIS),
        )
    yield (Inked(blank + text, Role.AXIS),)


def _legend(curve: GerminationCurve, glyphs: Glyphs) -> Iterator[str]:
    yield "% of seeds sown" if curve.sown or not curve.counted else "% of those up"
    yield "days since sowing"
    if curve.up:
        yield f"{glyphs.point} {'counted' if curve.counted else 'first seen'}"
    if curve.up and curve.counted:
        yield f"{glyphs.band} came up somewhere in here"
    if any(not look.newly_up for look in curve.looks):
        yield f"{glyphs.rule} none new"
    if curve.half_day is not None:
        yield f"{glyphs.upright} half of those up"
    if curve.curve:
        yield f"{glyphs.curve} {curve.curve_name}"
    if curve.today is not None:
        yield f"{glyphs.pointer} today"
