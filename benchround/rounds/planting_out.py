"""Plant out: when hardened or big enough, unless frost, storm or an uncleared bed forbids it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from benchround.core.batch.batch import Part
from benchround.core.crop.crop import Raising
from benchround.core.dates import Span, number_of_days, say_day
from benchround.core.lifecycle import SEEDLING, YOUNG, Stage
from benchround.core.planning.growing_season import safe_from
from benchround.core.record import Kind
from benchround.core.site import BEFORE_REST_DAYS
from benchround.core.task import Ask, Family, Harm, Hold, Slot, Why, Window
from benchround.rounds.hardening import (
    day_of_course,
    days_repeated,
    hardening_begun,
    steps_back_today,
)
from benchround.rounds.proposal import Proposal, draft, in_sight
from benchround.rounds.vetoes import (
    FROST_SOURCE,
    frost_hold,
    last_cold_day,
    room_hold,
    storm_hold,
)
from benchround.rounds.view import BatchView

ROOT_BOUND_DAYS = 5
"""Plugs held this long past ready have roots circling (0 / 3 / 10 days, from memory)."""
UNHARDENED = SEEDLING | YOUNG | {Stage.OVERWINTERING}
WINDOW_SHOWN_DAYS = 14


def propose(view: BatchView) -> Iterator[Proposal]:
    """Planting out the part in view."""
    outdoors = view.place is not None and view.place.outdoors
    if view.is_spare or outdoors or view.in_row:
        return
    found = ready_window(view)
    if found is None:
        return
    when, figure = found
    if not in_sight(view, Family.PLANT_OUT, when.earliest):
        return
    if steps_back_today(view):
        return  # a day that is repeated is no day to plant
    hold, looked = _hold(view, when)
    if hold is None:
        when = _after_frost(view, when)
    late = (view.day - when.latest).days
    number = planting_number(view)
    yield Proposal(
        Family.PLANT_OUT,
        when,
        Harm.SPOILS_THIS_WEEK,
        _words(view, number, late, hold),
        Why(
            "hardened and at planting size: out in the next suitable slot",
            (figure, *looked),
            FROST_SOURCE
            if hold and view.crop.planting.least_night_c is not None
            else "UC Santa Cruz, unit 1.4, transplanting (readiness, depth, hour)",
        ),
        (
            draft(
                view,
                Kind.PLANTED_OUT,
                count=number,
                place=meant_for(view.part) or None,
                spacing_cm=view.crop.planting.spacing_cm,
            ),
        ),
        slot=Slot.MORNING if late >= ROOT_BOUND_DAYS and hold is None else Slot.AFTERNOON,
        asks=(
            Ask("count", "planted", str(number or ""), most=view.alive),
            Ask("place", "into", meant_for(view.part), needed=True, whole=False),
            Ask("rest", "the rest", "kept", whole=False, choices=("kept", "composted")),
        ),
        hold=hold,
    )


def ready_window(view: BatchView) -> tuple[Window, str] | None:
    """The window of planting out, and the figure it rests on; None where it is not in sight."""
    course = view.crop.hardening
    if view.stage is Stage.READY:
        since = view.since(Kind.READY, Kind.HARDENED) or view.part.since
        return Window(since, since, since), f"ready since {say_day(since)}"
    if view.stage is Stage.HARDENING and course is not None:
        begun = hardening_begun(view) or view.part.since
        done = day_of_course(view, course.days + 1)
        least = day_of_course(view, course.least_days)
        repeated = days_repeated(view)
        again = f", {repeated} of them stepped back" if repeated else ""
        figure = f"hardening since {say_day(begun)}{again}, {course.days} days wanted"
        return Window(min(least, done), done, done), figure
    if view.stage in UNHARDENED:
        return _unhardened(view)
    return None


def _after_frost(view: BatchView, when: Window) -> Window:
    """Days lost to frost are not the grower's: what was held falls due when the hold lifts."""
    if view.crop.planting.least_night_c is None:
        return when
    best = when.best
    cold = last_cold_day(view, best)
    if cold is not None:
        best = cold + timedelta(days=1)
    safe = safe_from(view.season.site.year, view.day)
    if best < safe <= view.day:
        best = safe
    return Window(when.earliest, best, max(best, when.latest))


def _unhardened(view: BatchView) -> tuple[Window, str] | None:
    planting, sowing = view.crop.planting, view.batch.sowing
    if planting.size_stem_mm is not None:
        measured = view.part.last.get(Kind.MEASURED)
        stem = measured.number("stem_mm") if measured else None
        if measured is None or stem is None or stem < planting.size_stem_mm:
            return None
        return (
            Window(measured.day, measured.day, measured.day + timedelta(days=7)),
            f"stems {stem:g} mm on {say_day(measured.day)}",
        )
    if planting.window is not None:
        begun = sowing.day if sowing is not None else view.batch.begun
        return _in_window(view, view.season.site.year.span(planting.window, begun))
    to_be_pricked = view.stage in SEEDLING and view.raising == Raising.TRAY
    if view.crop.hardening is None and planting.from_sowing_days and sowing and not to_be_pricked:
        first, last = planting.from_sowing_days
        best = view.season.site.after_rest(sowing.day + timedelta(days=first))
        return (
            Window(best, best, best + timedelta(days=last - first)),
            f"{first} to {last} days from sowing {say_day(sowing.day)}",
        )
    return None


def _in_window(view: BatchView, span: Span | None) -> tuple[Window, str] | None:
    """The planting window after sowing; what missed it stands the winter and goes out after it."""
    if span is None or (view.stage in SEEDLING and view.raising == Raising.TRAY):
        return None
    shown = span.opens - timedelta(days=WINDOW_SHOWN_DAYS)
    rest = view.season.site.rest_around(span.closes, BEFORE_REST_DAYS)
    if rest is not None and view.day >= rest[0]:
        spring = rest[1]
        latest = spring + timedelta(days=BEFORE_REST_DAYS)
        return (
            Window(spring, spring, latest),
            f"it missed its window to {say_day(span.closes)}; out when the days lengthen",
        )
    return (
        Window(shown, span.opens, span.closes),
        f"planting window {say_day(span.opens)} to {say_day(span.closes)}",
    )


def _hold(view: BatchView, when: Window) -> tuple[Hold | None, tuple[str, ...]]:
    hold = frost_hold(view) or storm_hold(view) or room_hold(view, meant_for(view.part))
    if hold is None:
        return None, _assumed(view)
    again = hold.look_again
    if again is not None and when.best > again:
        hold = Hold(hold.because, when.best)
    return hold, (hold.because,)


def _assumed(view: BatchView) -> tuple[str, ...]:
    least = view.crop.planting.least_night_c
    known = view.season.weather.ahead(view.day, 5)
    if least is None or len(known) >= 5:
        return ()
    return (f"{len(known)} of 5 nights known; the others are taken as above {least:g} C",)


def planting_number(view: BatchView) -> int | None:
    """How many to plant: what was wanted, as far as there are so many."""
    numbers = [n for n in (view.batch.wanted, view.alive) if n is not None]
    return min(numbers) if numbers else None


def meant_for(part: Part) -> str:
    """The place a part is to be planted in, by its plan or sowing; empty where none was named."""
    for kind in (Kind.PLANNED, Kind.SOWN):
        record = part.first.get(kind)
        if record is not None and record.text("for_place"):
            return record.text("for_place")
    return ""


def _words(view: BatchView, number: int | None, late: int, hold: Hold | None) -> str:
    things = "clumps" if view.raising == Raising.CLUMPS else "plants"
    amount = f"{number} {things}" if number else f"the young {things}"
    spacing = f"{view.crop.planting.spacing_cm} cm apart, {view.crop.planting.depth}"
    if hold is not None:
        again = f"; look again {say_day(hold.look_again)}" if hold.look_again else ""
        waited = f"{number_of_days(late)} ready, " if late > 0 else ""
        return f"Held back, {waited}{hold.because}{again}: plant out {amount}"
    if late >= ROOT_BOUND_DAYS:
        return f"Plant out {amount} today, roots circling: {spacing}"
    return f"Plant out {amount} late this afternoon: {spacing}; water in"
