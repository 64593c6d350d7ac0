"""Bench room over time: trays used against what each place holds, week by week."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator, Sequence
from datetime import date, timedelta
from itertools import groupby

from benchround.core.dates import Span as Days
from benchround.core.frozen import dataclass
from benchround.core.season import Season
from benchround.core.site import PlaceKind
from benchround.drawing.canvas import UNICODE, Glyphs, Inked, Line, Role, fit, within_width, wrap
from benchround.drawing.room_stays import Stay, capacity, stays
from benchround.drawing.scale import Scale, month_line, span_label, tick_line
from benchround.drawing.words import counted, say, spoken

WEEK = timedelta(days=7)
WEEKS_BACK, WEEKS_AHEAD = 4, 22
NEARLY = 1e-6
NO_TRAYS = "No place for trays is set up yet."


@dataclass(frozen=True, slots=True)
class PlaceRoom:
    """One place's trays through the weeks.

    Attributes:
        name: the place; with its code where another one has the same name.
        holds: full trays it takes; None where nobody said.
        now: full trays on it today.
        monday: the first day of the first week.
        used: the most trays on it on any day of each week.
        code: the place's code.
    """

    name: str
    holds: float | None
    now: float
    monday: date
    used: tuple[float, ...]
    code: str = ""

    @property
    def state(self) -> str:
        """How it stands today, in a word and a figure."""
        if self.holds is None:
            return f"{self.now:.1f} on it" if self.now else "empty"
        left = self.holds - self.now
        if abs(left) < 0.05:
            return "full"
        return f"{left:.1f} free" if left > 0 else f"{-left:.1f} over"

    def over(self, week: int) -> float:
        """Trays too many in a week; 0 where they fit or nobody said what fits."""
        if self.holds is None or self.used[week] <= self.holds + NEARLY:
            return 0.0
        return self.used[week] - self.holds

    def week_of(self, day: date) -> int:
        """The number of the week a day lies in; may lie outside those known."""
        return (day - self.monday).days // 7


def bench_room(
    season: Season, day: date, weeks_back: int = WEEKS_BACK, weeks_ahead: int = WEEKS_AHEAD
) -> tuple[PlaceRoom, ...]:
    """The room on benches, sills and in frames, in walking order; beds have no trays."""
    monday = day - timedelta(days=day.weekday()) - weeks_back * WEEK
    weeks = weeks_back + 1 + weeks_ahead
    found = [stay for batch in season.batches.values() for stay in stays(season, batch, day)]
    names = Counter(place.name for place in season.places)
    rooms = []
    for place in sorted(season.places, key=lambda place: (place.order, place.code)):
        here = [stay for stay in found if stay.place == place.code]
        holds = capacity(place)
        if place.kind is PlaceKind.BED or (holds is None and not here):
            continue
        daily = _daily(here, monday, 7 * weeks)
        used = tuple(max(daily[7 * week : 7 * week + 7]) for week in range(weeks))
        name = place.name if names[place.name] == 1 else f"{place.name} ({place.code})"
        now = daily[(day - monday).days]
        rooms.append(PlaceRoom(name, holds, now, monday, used, place.code))
    return tuple(rooms)


def _daily(here: Sequence[Stay], monday: date, days: int) -> list[float]:
    trays = [0.0] * days
    for stay in here:
        first = max(0, (stay.opens - monday).days)
        for number in range(first, min(days, (stay.closes - monday).days + 1)):
            trays[number] += stay.trays
    return trays


def room_lines(
    rooms: Sequence[PlaceRoom], today: date, width: int, glyphs: Glyphs = UNICODE
) -> tuple[Line, ...]:
    """The picture: a strip for each place, and under it when it will be too full.

    Args:
        rooms: the places, all with the same weeks.
        today: what lies after it is expected.
        width: cells; where not all weeks fit, past ones go first, then the furthest.
        glyphs: the set of signs.
    """
    if not rooms or not rooms[0].used:
        return tuple(within_width([(Inked(NO_TRAYS, Role.QUIET),)], width, glyphs))
    label, state, strip = _columns(width)
    shown = _weeks_shown(rooms[0], today, strip)
    each = strip // len(shown)
    days = Days(
        rooms[0].monday + shown.start * WEEK, rooms[0].monday + shown.stop * WEEK - timedelta(1)
    )
    scale = Scale(days, each * len(shown))
    left = label + state + 2
    lines: list[Line] = [
        (Inked(fit("trays, by the week", left, glyphs), Role.QUIET), *month_line(scale)),
        (
            Inked(fit(span_label(days), left, glyphs), Role.QUIET),
            *tick_line(scale, today, glyphs),
        ),
    ]
    for room in rooms:
        head = f"{fit(room.name, label, glyphs)} {fit(room.state, state, glyphs)} "
        lines.append((Inked(head, Role.LABEL), *_strip(room, shown, each, today, glyphs)))
        for text in wrap(over_words(room, today), width - 2, glyphs):
            lines.append((Inked("  " + text, Role.BAD),))
    how = (
        f"Height: share of the room in use, {glyphs.levels[-1]} all of it, {glyphs.over} more than "
        f"there is; right of {glyphs.pointer} expected."
    )
    lines += [(Inked(text, Role.QUIET),) for text in wrap(how, width, glyphs)]
    return tuple(within_width(lines, width, glyphs))


def _columns(width: int) -> tuple[int, int, int]:
    width = max(20, width)
    label, state = min(24, max(4, width // 5)), 10
    return label, state, max(1, width - label - state - 2)


def _weeks_shown(room: PlaceRoom, today: date, strip: int) -> range:
    weeks = len(room.used)
    now = min(max(0, room.week_of(today)), weeks - 1)
    first = min(now, max(0, weeks - strip))
    return range(first, min(weeks, first + strip))


def _strip(
    room: PlaceRoom, shown: range, each: int, today: date, glyphs: Glyphs
) -> Iterator[Inked]:
    now = room.week_of(today)
    signs = [Inked(_sign(room, week, glyphs) * each, _role(room, week, now)) for week in shown]
    for role, spans in groupby(signs, key=lambda span: span.role):
        yield Inked("".join(span.text for span in spans), role)


def _sign(room: PlaceRoom, week: int, glyphs: Glyphs) -> str:
    used = room.used[week]
    if used < NEARLY:
        return glyphs.gap
    if room.over(week):
        return glyphs.over
    steps = len(glyphs.levels)
    share = 1.0 / steps if room.holds is None or room.holds <= 0 else used / room.holds
    return glyphs.levels[min(steps, max(1, math.ceil(share * steps - NEARLY))) - 1]


def _role(room: PlaceRoom, week: int, now: int) -> Role:
    if room.over(week):
        return Role.BAD
    return Role.AHEAD if week > now else Role.DONE


def over_words(room: PlaceRoom, today: date) -> str:
    """When a place is or will be too full, from this week on; empty where it never is."""
    first = max(0, room.week_of(today))
    bad = [week for week in range(first, len(room.used)) if room.over(week)]
    if not bad or room.holds is None:
        return ""
    worst = max(bad, key=lambda week: (room.over(week), -week))
    when = "this week" if bad[0] == first else f"from the week of {_monday(room, bad[0], today)}"
    return (
        f"{room.name}: too full {when}, {counted(len(bad), 'week')} in all; at most "
        f"{room.used[worst]:.1f} of {room.holds:g} trays, week of {_monday(room, worst, today)}"
    )


def _monday(room: PlaceRoom, week: int, today: date) -> str:
    return say(room.monday + week * WEEK, today)


def room_words(rooms: Sequence[PlaceRoom], today: date) -> str:
    """The picture in sentences."""
    if not rooms or not rooms[0].used:
        return NO_TRAYS
    told = []
    for room in rooms:
        holds = "" if room.holds is None else f" of {room.holds:g}"
        told.append(f"{room.name}: {room.now:.1f}{holds} trays in use today, {room.state}")
        told.append(over_words(room, today).partition(": ")[2])
    return spoken(told)
