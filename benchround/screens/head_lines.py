"""The head of the round as lines: the day, how many tasks, the weather, what to know first."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from typing import TYPE_CHECKING

from benchround.core.season import Season
from benchround.core.site import Site
from benchround.core.task import Round
from benchround.core.typed.date import MONTH_NAMES, how_far
from benchround.screens.text import Line, Role, fit, line, paragraph, width_of
from benchround.screens.words import COLD, counts, full_day, outlook

if TYPE_CHECKING:
    from benchround.desk import Desk
    from benchround.screens.sitting import Sitting

EMPTY_SEASON = (
    "No batch yet. Press s to sow your first one; then its look, its pricking out and all the "
    "rest come by themselves."
)
FROST_UNTOLD = ("last frost", "no site")
NOTHING = "Nothing to do on this day."

Notes = tuple[tuple[str, ...], ...]
"""What is worth knowing first, each note in several wordings, the longest first."""


def head_lines(
    made: Round, season: Season, today: date, notes: Notes, width: int
) -> Iterator[Line]:
    """Day and counts, weather, and notes."""
    yield _first(made, today)
    yield days_told(outlook(season.weather, made.day), width)
    yield from (_note(note, width) for note in notes)
    words = EMPTY_SEASON if not season.batches else "" if made.tasks else NOTHING
    yield from paragraph(words, width, Role.STRONG)


def with_place(first: Line, at: int, of: int, width: int) -> Line:
    """The first line with the cursor's place at its end, at a task of so many."""
    place = f"{at} of {of}" if of else ""
    room = width - sum(width_of(text) for text, _ in first) - width_of(place)
    return (*first, (" " * room + place, Role.QUIET)) if place and room >= 2 else first


def _first(made: Round, today: date) -> Line:
    far = f" ({how_far(made.day, today)})" if made.day != today else ""
    spans = ((full_day(made.day), Role.HEADING), (far, Role.CAUTION))
    return (*spans, (f"  {counts(made)}", Role.STRONG))


def days_told(pieces: Sequence[str], width: int) -> Line:
    """The day, then the days after it; cold ones come before others where room is short."""
    taken = {0}
    for cold in (True, False):
        for number, piece in enumerate(pieces):
            if not number or (COLD in piece) is not cold:
                continue
            chosen = [one for at, one in enumerate(pieces) if at in taken or at == number]
            if width_of("; ".join(chosen)) > width:
                break
            taken.add(number)
    return line(("; ".join(one for at, one in enumerate(pieces) if at in taken), Role.INK))


def _note(note: tuple[str, ...], width: int) -> Line:
    """The longest wording that fits; the last one is cut."""
    words = next((words for words in note if width_of(words) <= width), note[-1])
    return line((fit(words, width), Role.CAUTION))


def notes_of(desk: Desk, sitting: Sitting) -> Notes:
    """What is worth knowing first of a season and a sitting."""
    return tuple(_notes(desk, sitting))


def _notes(desk: Desk, sitting: Sitting) -> Iterator[tuple[str, ...]]:
    if sitting.sample:
        more = "; > is the next day" if sitting.clock is not None else ""
        pinned = f"day pinned to {_short(desk.today)}"
        first = "Sample, not kept when you leave" if sitting.lost_on_leaving else "Sample, kept"
        short = "Sample, not kept" if sitting.lost_on_leaving else first
        yield f"{first}; {pinned}{more}", f"{short}; {pinned}{more}", f"{short}; {pinned}"
    yield from _taken_for_granted(desk.season.site, sitting)
    problems = desk.problems
    if desk.read_only:
        yield (f"Read only: {problems[0] if problems else 'nothing can be recorded'}",)
        problems = problems[1:]
    tells = f"{sitting.ring.named('help')} tells"
    if problems:
        more = f" (and {len(problems) - 1} more: {tells})" if len(problems) > 1 else ""
        yield f"{problems[0]}{more}", problems[0]
    faults = sitting.ring.faults
    if faults:
        yield *faults[:1][: 2 - len(faults)], f"Own keys left out: {len(faults)}; {tells} why"


def _taken_for_granted(site: Site, sitting: Sitting) -> Iterator[tuple[str, ...]]:
    """The frost day nobody told, from which sowing days are counted, and the keys that set it."""
    if any(words.startswith(FROST_UNTOLD) for words in site.assumed):
        month, day = site.last_frost
        last = f"last frost assumed {day} {MONTH_NAMES[month - 1].capitalize()}"
        keys = f"{sitting.ring.named('go-to')} {sitting.ring.named('go-settings')} sets it"
        yield f"{last[0].upper()}{last[1:]}: {keys}", f"{last[0].upper()}{last[1:]}"


def _short(day: date) -> str:
    return f"{day.day} {day:%b} {day.year}"
