"""Where a batch stands on its way: the stages in line, past, now and ahead, with their days."""

from __future__ import annotations

from datetime import date

from benchround.drawing.canvas import (
    UNICODE,
    Glyphs,
    Inked,
    Line,
    Role,
    cell_width,
    cut,
    fit,
    within_width,
)
from benchround.drawing.way import Stop, Way, When, way_of
from benchround.drawing.words import say, say_short

__all__ = ["Stop", "Way", "When", "lifecycle_lines", "way_of"]

NOTHING = "Nothing is on the books for this batch."
LINK = 2
"""Cells between two stops."""


def lifecycle_lines(way: Way, width: int, glyphs: Glyphs = UNICODE) -> tuple[Line, ...]:
    """At most three lines: where it stands in words, the stages, and their days under them.

    The present stage stands in brackets, coming days after a tilde. Where not all stages fit, the
    present one and those next to it are kept.
    """
    if not way.stops:
        return tuple(within_width([(Inked(NOTHING, Role.QUIET),)], width, glyphs))
    first, last = _shown(way, width, glyphs)
    names: list[Inked] = []
    days: list[Inked] = []
    if first > 0:
        names.append(Inked(glyphs.ellipsis + " ", Role.QUIET))
        days.append(Inked(" " * (len(glyphs.ellipsis) + 1), Role.QUIET))
    for number in range(first, last + 1):
        stop = way.stops[number]
        wide, role = _wide(way, stop, glyphs), _role(stop)
        names.append(Inked(_name(stop), role))
        rest = wide - cell_width(_name(stop))
        if number < last:
            link = glyphs.ahead if way.stops[number + 1].when is When.AHEAD else glyphs.done
            names.append(Inked(" " + link * (rest + LINK - 1) + " ", Role.QUIET))
        under = wide + (LINK + 1 if number < last else 0)
        days.append(Inked(fit(_day(stop, way.today), under, glyphs), Role.QUIET))
    if last < len(way.stops) - 1:
        names.append(Inked(" " + glyphs.ellipsis, Role.QUIET))
    head = Inked(_headline(way), Role.TITLE)
    return tuple(within_width([(head,), tuple(names), tuple(days)], width, glyphs))


def _name(stop: Stop) -> str:
    return f"[{stop.name}]" if stop.when is When.NOW else stop.name


def _day(stop: Stop, today: date) -> str:
    mark = "~" if stop.when is When.AHEAD else " " if stop.when is When.NOW else ""
    return mark + say_short(stop.day, today)


def _wide(way: Way, stop: Stop, glyphs: Glyphs) -> int:
    return max(cell_width(cut(_name(stop), 200, glyphs)), len(_day(stop, way.today)))


def _role(stop: Stop) -> Role:
    return {When.PAST: Role.DONE, When.NOW: Role.NOW, When.AHEAD: Role.AHEAD}[stop.when]


def _shown(way: Way, width: int, glyphs: Glyphs) -> tuple[int, int]:
    """First and last stop that fit, grown from the present one, ahead before behind."""
    now = way.now
    first = last = 0 if now is None else now
    dots = 2 * (len(glyphs.ellipsis) + 1)
    wide = [_wide(way, stop, glyphs) + LINK + 1 for stop in way.stops]
    room = width - wide[first] + LINK + 1
    if sum(wide) - LINK - 1 > width:
        room -= dots
    grown = True
    while grown:
        grown = False
        if last + 1 < len(wide) and wide[last + 1] <= room:
            last += 1
            room -= wide[last]
            grown = True
        if first > 0 and wide[first - 1] <= room:
            first -= 1
            room -= wide[first]
            grown = True
    return first, last


def _headline(way: Way) -> str:
    now = way.now
    words = way.title
    if now is not None:
        stop = way.stops[now]
        since = "today" if stop.day == way.today else say(stop.day, way.today)
        words += f": {stop.name} since {since}"
    after = _next(way)
    if after is not None:
        when = "now" if after.day <= way.today else say(after.day, way.today)
        words += f"; next {after.name} {when}"
    return words


def _next(way: Way) -> Stop | None:
    return next((stop for stop in way.stops if stop.when is When.AHEAD), None)
