"""One strip of the year picture: which cell shows what."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from functools import lru_cache
from itertools import groupby

from benchround.core.dates import Span as Days
from benchround.drawing.canvas import Glyphs, Inked, Role
from benchround.drawing.phases import LETTERS, Phase
from benchround.drawing.scale import Scale
from benchround.drawing.stretches import Stretch

ALWAYS_SHOWN = (Phase.ENDED, Phase.FLOWER, Phase.PICKING)
"""Phases that take a cell as soon as one of their days falls into it, first things first."""
ROLES = {Phase.FLOWER: Role.FLOWER, Phase.PICKING: Role.CROP, Phase.ENDED: Role.QUIET}

Cell = tuple[Phase, bool] | None
"""What a cell of a strip shows: the phase, and whether it is only expected."""


def bar(stretches: Sequence[Stretch], scale: Scale, today: date, glyphs: Glyphs) -> Iterator[Inked]:
    """Yield the spans of a strip, one cell for each column of the scale.

    Each phase begins with its letter, capital where recorded and small where expected. What
    begins before the scale or ends after it has a sign for that at the edge.
    """
    cells = [_cell(stretches, days) for days in _spans(scale)]
    now = scale.column(today)
    if scale.holds(now):
        cells[now] = next(
            ((one.phase, False) for one in stretches if _holds_today(one, today)), cells[now]
        )
    signs: list[Inked] = []
    for cell, run in groupby(cells):
        signs += _run(cell, sum(1 for _ in run), len(signs), glyphs)
    if scale.holds(now) and not _begins_here(cells, now):
        signs[now] = Inked(glyphs.now, Role.NOW)
        if cells[now] != (cells[now - 1] if now else None) and now + 1 < len(cells):
            # its letter stood where the line now runs
            signs[now + 1 : now + 2] = _run(cells[now + 1], 1, now + 1, glyphs)
    if stretches:
        first, last = stretches[0].opens, stretches[-1].closes
        if last >= scale.days.opens > first:
            signs[0] = Inked(glyphs.before, signs[0].role)
        if first <= scale.days.closes < last:
            signs[-1] = Inked(glyphs.after, signs[-1].role)
    for role, spans in groupby(signs, key=lambda span: span.role):
        yield Inked("".join(span.text for span in spans), role)


def _holds_today(stretch: Stretch, today: date) -> bool:
    return not stretch.expected and stretch.opens <= today <= stretch.closes


def _begins_here(cells: Sequence[Cell], now: int) -> bool:
    """Whether today's cell must show its letter, because neither neighbour tells its phase."""
    cell = cells[now]
    beside = [cells[at] for at in (now - 1, now + 1) if 0 <= at < len(cells)]
    if cell is None:
        return False
    if cell[1]:
        return cell not in beside
    return now == 0 or beside[0] is None or beside[0][0] is not cell[0]


def _cell(stretches: Sequence[Stretch], days: Days) -> Cell:
    """What a cell shows: flower and picking before all, else what fills most of its days."""
    best: tuple[int, int] = (-len(ALWAYS_SHOWN) - 1, 0)
    shown: Cell = None
    begins, ends = days.opens, days.closes
    for stretch in stretches:
        if stretch.closes < begins or stretch.opens > ends:
            continue
        share = (min(stretch.closes, ends) - max(stretch.opens, begins)).days + 1
        always = stretch.phase in ALWAYS_SHOWN
        rank = -ALWAYS_SHOWN.index(stretch.phase) if always else -len(ALWAYS_SHOWN)
        if (rank, share) > best:
            best, shown = (rank, share), (stretch.phase, stretch.expected)
    return shown


@lru_cache(maxsize=64)
def _spans(scale: Scale) -> tuple[Days, ...]:
    """The days of every cell: the same for all strips of a year."""
    return tuple(scale.span_of(column) for column in range(scale.columns))


def _run(cell: Cell, length: int, start: int, glyphs: Glyphs) -> list[Inked]:
    """The signs of neighbouring cells that show the same: a letter, then its line."""
    if cell is None:
        return [Inked(" ", Role.TEXT)] * length
    phase, ahead = cell
    role = ROLES.get(phase, Role.AHEAD if ahead else Role.DONE)
    letter = LETTERS.get(phase, "?")
    signs = [Inked(_fill(phase, ahead, glyphs), role)] * length
    # at the left edge the letter makes room for the sign of what lies before
    at = 1 if start == 0 and length > 1 else 0
    signs[at] = Inked(letter.lower() if ahead else letter, role)
    return signs


def _fill(phase: Phase, ahead: bool, glyphs: Glyphs) -> str:
    if phase is Phase.FLOWER:
        return glyphs.flower_ahead if ahead else glyphs.flower
    if phase is Phase.PICKING:
        return glyphs.crop_ahead if ahead else glyphs.crop
    return glyphs.ahead if ahead else glyphs.done
