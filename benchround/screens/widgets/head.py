"""The head of the round: the day, how many tasks, the weather, and what is worth knowing first."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from typing import TYPE_CHECKING

from benchround.core.season import Season
from benchround.core.site import Site
from benchround.core.task import Round
from benchround.core.typed.date import MONTH_NAMES, how_far
from benchround.screens.text import Line, Role, fit, line, paragraph, width_of
from benchround.screens.widgets.paper import Paper
from benchround.screens.words import COLD, counts, full_day, outlook

if TYPE_CHECKING:
    from benchround.desk import Desk
    from benchround.screens.app import BenchroundApp

EMPTY_SEASON = (
    "No batch yet. Press s to sow your first one; then its look, its pricking out and all the "
    "rest come by themselves."
)
FROST = "last frost"
NOTHING = "Nothing to do on this day."


class RoundHead(Paper):
    """Two lines always; more where there is something to be said."""

    def __init__(self) -> None:
        super().__init__(id="head")
        self._round: Round | None = None
        self._season: Season | None = None
        self._today: date | None = None
        self._notes: tuple[tuple[str, ...], ...] = ()
        self._at = (0, 0)
        self._kept: tuple[int, tuple[Line, ...]] | None = None

    def show(self, made: Round, desk: Desk, app: BenchroundApp, position: tuple[int, int]) -> None:
        """Show the head of a round; the cursor stands at a task of so many."""
        self._round, self._season, self._today = made, desk.season, desk.today
        self._notes = tuple(_notes(desk, app, made))
        self._at = position
        self._kept = None
        self.rewrite(layout=True)

    def stand(self, position: tuple[int, int]) -> None:
        """Say which task of how many the cursor stands on."""
        if position != self._at:
            self._at = position
            self.rewrite()

    def lines(self, width: int) -> Sequence[Line]:
        """Day and counts, weather, and notes."""
        if self._kept is None or self._kept[0] != width:
            self._kept = (width, tuple(self._told(width)))
        first, *rest = self._kept[1] or ((),)
        return [self._placed(first, width), *rest]

    def _told(self, width: int) -> Iterator[Line]:
        made, season, today = self._round, self._season, self._today
        if made is None or season is None or today is None:
            return
        yield _first(made, today)
        yield _joined(outlook(season.weather, made.day), width)
        yield from (_note(note, width) for note in self._notes)
        words = EMPTY_SEASON if not season.batches else "" if made.tasks else NOTHING
        yield from paragraph(words, width, Role.STRONG)

    def _placed(self, first: Line, width: int) -> Line:
        """The first line with the cursor's place at its end."""
        at, of = self._at
        place = f"{at} of {of}" if of else ""
        room = width - sum(width_of(text) for text, _ in first) - width_of(place)
        return (*first, (" " * room + place, Role.QUIET)) if place and room >= 2 else first


def _first(made: Round, today: date) -> Line:
    far = f" ({how_far(made.day, today)})" if made.day != today else ""
    spans = ((full_day(made.day), Role.HEADING), (far, Role.CAUTION))
    return (*spans, (f"  {counts(made)}", Role.STRONG))


def _joined(pieces: Sequence[str], width: int) -> Line:
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


def _notes(desk: Desk, app: BenchroundApp, made: Round) -> Iterator[tuple[str, ...]]:
    if app.sample:
        more = "; > is the next day" if app.clock is not None else ""
        pinned = f"day pinned to {_short(desk.today)}"
        first = "Sample, not kept when you leave" if app.lost_on_leaving else "Sample, kept"
        short = "Sample, not kept" if app.lost_on_leaving else first
        yield f"{first}; {pinned}{more}", f"{short}; {pinned}{more}", f"{short}; {pinned}"
    yield from _taken_for_granted(desk.season.site, app)
    problems = desk.problems
    if desk.read_only:
        yield (f"Read only: {problems[0] if problems else 'nothing can be recorded'}",)
        problems = problems[1:]
    tells = f"{app.ring.named('help')} tells"
    if problems:
        more = f" (and {len(problems) - 1} more: {tells})" if len(problems) > 1 else ""
        yield f"{problems[0]}{more}", problems[0]
    faults = app.ring.faults
    if faults:
        yield *faults[:1][: 2 - len(faults)], f"Own keys left out: {len(faults)}; {tells} why"


def _taken_for_granted(site: Site, app: BenchroundApp) -> Iterator[tuple[str, ...]]:
    """The frost day nobody told, from which sowing days are counted, and the keys that set it."""
    if any(FROST in words for words in site.assumed):
        month, day = site.last_frost
        last = f"last frost assumed {day} {MONTH_NAMES[month - 1].capitalize()}"
        keys = f"{app.ring.named('go-to')} {app.ring.named('go-settings')} sets it"
        yield f"{last[0].upper()}{last[1:]}: {keys}", f"{last[0].upper()}{last[1:]}"


def _short(day: date) -> str:
    return f"{day.day} {day:%b} {day.year}"
