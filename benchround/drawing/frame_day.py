"""A frame's day: warmth by the hour against its limits, and the lid under it.

Three curves of letters: o outside, s inside with the lid left shut, i inside with the lid moved as
planned. Where they meet, i is drawn before s, s before o.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import groupby, pairwise

from benchround.core.frame.build import LID_ORDER, LidPosition
from benchround.core.unit_words import UnitWords
from benchround.core.units import Units
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
from benchround.drawing.frame_curve import HOURS, FrameCurve, extremes, frame_curve
from benchround.drawing.frame_words import NO_FIGURES, frame_headline, frame_words, step_words
from benchround.drawing.words import say_weekday

__all__ = ["FrameCurve", "frame_curve", "frame_lines", "frame_words"]

METRIC = UnitWords(Units())
MOST_ROWS = 12
STEPS_C = (1, 2, 3, 4, 5, 10, 20, 50)
LARGEST_STEP_C = 100
AXIS = 5
"""Cells of the figures on the left, the axis itself included."""
LID_LETTERS = {
    LidPosition.SHUT: "s",
    LidPosition.CRACK: "c",
    LidPosition.FIRST_NOTCH: "1",
    LidPosition.SECOND_NOTCH: "2",
    LidPosition.OFF: "O",
}
LID_LEVELS = {
    LidPosition.SHUT: 0,
    LidPosition.CRACK: 1,
    LidPosition.FIRST_NOTCH: 3,
    LidPosition.SECOND_NOTCH: 5,
    LidPosition.OFF: 7,
}


def frame_lines(
    curve: FrameCurve,
    width: int,
    glyphs: Glyphs = UNICODE,
    *,
    most_rows: int = MOST_ROWS,
    said: UnitWords = METRIC,
) -> tuple[Line, ...]:
    """The picture: headline, curves, lid, hours, what the letters mean, and the steps.

    Args:
        curve: the day.
        width: cells.
        glyphs: the set of signs.
        most_rows: rows the curves may take, at least 4.
        said: turns its sentences and the figures of its axis into the grower's units.
    """
    head = f"{curve.name}, {say_weekday(curve.day)}"
    lines: list[Line] = [(Inked(head, Role.TITLE),)]
    if not curve.known_c:
        lines.append((Inked(NO_FIGURES, Role.QUIET),))
        return tuple(within_width(lines, width, glyphs))
    lines += [
        (Inked(text, Role.TEXT),) for text in wrap(said(frame_headline(curve)), width, glyphs)
    ]
    lines += _chart(curve, width, glyphs, max(4, most_rows), said.units)
    lines += [_lid_line(curve, _each(width), glyphs), _hour_line(_each(width), glyphs)]
    lines += [
        (Inked(text, Role.QUIET),) for text in wrap_items(map(said, _legend(curve)), width, glyphs)
    ]
    for step in curve.steps:
        texts = wrap(said(step_words(step)), width, glyphs, "      ")
        lines += [(Inked(text, Role.TEXT),) for text in texts]
    return tuple(within_width(lines, width, glyphs))


def _each(width: int) -> float:
    """Cells an hour takes; below one, several hours share a cell."""
    room = max(1, width - AXIS)
    return room // HOURS if room >= HOURS else room / HOURS


def _chart(
    curve: FrameCurve, width: int, glyphs: Glyphs, most_rows: int, units: Units
) -> Iterator[Line]:
    each = _each(width)
    known = (*curve.known_c, curve.act_c, curve.low_c)
    step = next((one for one in STEPS_C if _rows(known, one) <= most_rows), LARGEST_STEP_C)
    top = _nearest(max(known), step) * step
    grid = Grid(round(each * HOURS), _rows(known, step))
    for limit in (curve.act_c, curve.low_c):
        for column in range(grid.width):
            grid.put(column, _row(limit, top, step), glyphs.limit, Role.LIMIT)
    series = (
        (curve.outside_c, "o", Role.OUTSIDE),
        (curve.shut_c, "s", Role.SHUT),
        (curve.inside_c, "i", Role.INSIDE),
    )
    for temps, letter, role in series:
        _draw(grid, temps, each, (top, step), letter, role, glyphs)
    limits = {_row(curve.low_c, top, step): curve.low_c, _row(curve.act_c, top, step): curve.act_c}
    for row, line in enumerate(grid.lines()):
        held = limits.get(row)
        value = top - row * step if held is None else held
        figure = Inked(
            f"{units.figure(value):>{AXIS - 1}}", Role.AXIS if held is None else Role.LIMIT
        )
        yield (figure, Inked(glyphs.upright, Role.AXIS), *line)


def _nearest(temp: float, step: int) -> int:
    return math.floor(temp / step + 0.5)


def _rows(known: Sequence[float], step: int) -> int:
    return _nearest(max(known), step) - _nearest(min(known), step) + 1


def _row(temp: float, top: int, step: int) -> int:
    """The row whose figure is nearest."""
    return top // step - _nearest(temp, step)


def _draw(
    grid: Grid,
    temps: Sequence[float],
    each: float,
    scale: tuple[int, int],
    letter: str,
    role: Role,
    glyphs: Glyphs,
) -> None:
    """Put one curve: its letter in the middle of each hour, links on the straight line between."""
    top, step = scale
    places = [
        ((hour + 0.5) * each - 0.5, temp)
        for hour, temp in enumerate(temps[:HOURS])
        if math.isfinite(temp)
    ]
    for (start, low), (end, high) in pairwise(places):
        for column in range(math.ceil(start), math.floor(end) + 1):
            temp = low + (high - low) * (column - start) / (end - start)
            grid.put(column, _row(temp, top, step), glyphs.link, role)
    for middle, temp in places:
        grid.put(round(middle), _row(temp, top, step), letter, role)


def _lid_line(curve: FrameCurve, each: float, glyphs: Glyphs) -> Line:
    """The lid through the day: a letter where it is moved, and how far it stands open."""
    cells = [
        curve.lid[min(len(curve.lid) - 1, int(column / each))]
        for column in range(round(each * HOURS))
        if curve.lid
    ]
    spans = [Inked("lid".rjust(AXIS - 1), Role.LABEL), Inked(glyphs.upright, Role.AXIS)]
    steps = len(glyphs.levels) - 1
    for position, run in groupby(cells):
        level = glyphs.levels[LID_LEVELS[position] * steps // 7]
        length = sum(1 for _ in run)
        shut, letter = position is LidPosition.SHUT, LID_LETTERS[position]
        fill = glyphs.gap if shut else letter if glyphs.ascii_only else level
        role = Role.QUIET if shut else Role.GOOD
        spans.append(Inked(letter + fill * (length - 1), role))
    return tuple(spans)


def _hour_line(each: float, glyphs: Glyphs) -> Line:
    every = next((n for n in (1, 2, 3, 6, 12) if n * each >= 4), 12)
    text = ""
    for hour in range(0, HOURS, every):
        text = text.ljust(round(hour * each)) + str(hour)
    return (Inked(" " * (AXIS - 1) + glyphs.upright + text, Role.AXIS),)


def _legend(curve: FrameCurve) -> Iterator[str]:
    for temps, words in (
        (curve.outside_c, "o outside"),
        (curve.shut_c, "s lid left shut"),
        (curve.inside_c, "i with the lid plan"),
    ):
        if extremes(temps) is not None:
            yield words
    yield f"{curve.act_c:g} C act"
    yield f"{curve.low_c:g} C low"
    shown = set(curve.lid)
    for position in LID_ORDER:
        if position in shown:
            yield f"lid {LID_LETTERS[position]} {position.words}"
