"""Whether sowing again still helps, and when plants sown today would be ready.

Seed sown today goes the crop's usual way. It helps if it reaches the same planting, flowering or
cropping as the first sowing: within the same window of the site's year where the crop has one, and
before frost where it is tender.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, timedelta

from benchround.core.batch.batch import apply
from benchround.core.crop.crop import Hardiness
from benchround.core.dates import say_day
from benchround.core.frozen import dataclass
from benchround.core.planning.last_sowing import WORTH_DAYS, first_frost_from, window_span
from benchround.core.planning.planned_time import wished_span
from benchround.core.planning.schedule import Expected, Step, expected_course
from benchround.core.record import Figure, Kind, Record
from benchround.rounds.view import BatchView

GOALS = {Step.PLANT_OUT: "ready to plant", Step.FLOWER: "in flower", Step.CROP: "to pick"}


@dataclass(frozen=True, slots=True)
class Again:
    """What sowing again today would come to.

    Attributes:
        ready: the day plants would be ready, or in flower or to pick where nothing is planted out;
            None where the crop's days do not tell.
        helps: whether that is still in time.
        words: the same in words, for an instruction.
    """

    ready: date | None
    helps: bool
    words: str


def sown_again(view: BatchView) -> Again:
    """What sowing this batch again today would come to."""
    steps = _steps_if_sown_today(view)
    goal = next((steps[step] for step in GOALS if step in steps), None)
    because = _too_late(view, steps)
    if because:
        return Again(goal.day if goal else None, False, f"re-sowing no longer helps: {because}")
    if goal is not None:
        ready = f"sown today {GOALS[goal.step]} about {say_day(goal.day)}"
        return Again(goal.day, True, ready)
    days = view.crop.planting.from_sowing_days
    if days is None:
        return Again(None, True, "")
    day = view.day + timedelta(days=days[0])
    return Again(day, True, f"sown today {GOALS[Step.PLANT_OUT]} about {say_day(day)}")


def _steps_if_sown_today(view: BatchView) -> Mapping[Step, Expected]:
    sowing = view.batch.sowing
    figures: dict[str, Figure] = {"crop": view.batch.crop, "place": view.part.place}
    if sowing is not None:
        figures["raising"] = sowing.raising
        if sowing.per_cell is not None:
            figures["per_cell"] = sowing.per_cell
    fresh = apply(None, Record("", view.day, Kind.SOWN, view.batch.id, figures), view.batch.id)
    return _by_step(expected_course(view.season, fresh, view.crop, view.day))


def _by_step(course: tuple[Expected, ...]) -> Mapping[Step, Expected]:
    return {expected.step: expected for expected in course}


def _too_late(view: BatchView, again: Mapping[Step, Expected]) -> str:
    """Why a sowing today would come too late; empty where it would not."""
    first = _by_step(expected_course(view.season, view.batch, view.crop, view.day))
    crop = view.crop
    windows = {
        Step.PLANT_OUT: crop.planting.window,
        Step.FLOWER: crop.flowering.window if crop.flowering else None,
    }
    for step, window in windows.items():
        old, new = first.get(step), again.get(step)
        if window is None or old is None or new is None or old.until is None:
            continue
        if new.day > old.until:
            return f"{GOALS[step]} by {say_day(old.until)} is out of reach"
    return _frosted(view, again) or _window_shut(view)


def _frosted(view: BatchView, again: Mapping[Step, Expected]) -> str:
    if view.crop.hardiness is Hardiness.HARDY:
        return ""
    frost = first_frost_from(view.season.site.year, view.day)
    for step in (Step.CROP, Step.FLOWER):
        new = again.get(step)
        if new is not None and new.day > frost - timedelta(days=WORTH_DAYS):
            return f"{GOALS[step]} about {say_day(new.day)}, first frost about {say_day(frost)}"
    return ""


def _window_shut(view: BatchView) -> str:
    """Whether its sowing time is over; a sowing outside it from the start is the grower's own."""
    planned, sowing = view.part.last.get(Kind.PLANNED), view.batch.sowing
    if planned is not None and planned.text("sow_by"):
        span = wished_span(view.season, view.batch, view.part, view.day)
        by = span.closes if span is not None else date.fromisoformat(planned.text("sow_by"))
        return f"it was to be sown by {say_day(by)}" if view.day > by else ""
    if not view.crop.windows or sowing is None:
        return ""
    if not _in_window(view, sowing.day) or _in_window(view, view.day):
        return ""
    return "its sowing time is over"


def _in_window(view: BatchView, day: date) -> bool:
    year = view.season.site.year
    spans = (window_span(view.crop, year, window, day) for window in view.crop.windows)
    return any(span is not None and day in span for span in spans)
