"""Re-sow: when a sowing is probably dead, or stalled, and there is still time."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.dates import say_day
from benchround.core.lifecycle import WAITING, Stage
from benchround.core.record import Kind
from benchround.core.task import Ask, Family, Harm, Slot, Why, Window
from benchround.core.waiting import Waiting
from benchround.rounds.proposal import Proposal, draft
from benchround.rounds.sowing import sowing_window
from benchround.rounds.view import BatchView

GRACE_DAYS = 7
WARM_DAY_C = 22.0
HEAT_SHY_CEILING_C = 30.0


def propose(view: BatchView) -> Iterator[Proposal]:
    """The decision to sow again."""
    waiting = view.waiting
    if view.stage not in WAITING or waiting is None or view.did_today(Kind.RESOWN):
        return
    stalled = view.stage is Stage.STALLED
    best = view.part.since if stalled else waiting.give_up_on
    if best is None:
        return
    latest = max(best + timedelta(days=GRACE_DAYS), view.day if stalled else best)
    yield Proposal(
        Family.RESOW,
        Window(best, best, latest),
        Harm.GETS_LATE,
        _words(view, stalled),
        Why(
            "stalled seed may live: a few cells are sown again as insurance"
            if stalled
            else "the chance that it is alive has fallen to one in five",
            _figures(view, waiting, best),
            view.crop.source("germination"),
        ),
        (draft(view, Kind.RESOWN, seeds=_seeds(view, stalled), cells=_cells(view, stalled)),),
        slot=_slot(view),
        asks=(
            Ask("seeds", "seeds sown again", str(_seeds(view, stalled) or "")),
            Ask("place", "place", _cool_place(view), whole=False),
        ),
    )


def _cells(view: BatchView, stalled: bool) -> int | None:
    cells = view.batch.sowing.cells if view.batch.sowing else None
    return None if cells is None else (cells // 2 if stalled else cells)


def _seeds(view: BatchView, stalled: bool) -> int | None:
    sowing = view.batch.sowing
    if sowing is None or sowing.seeds is None:
        return None
    return sowing.seeds // 2 if stalled else sowing.seeds


def _words(view: BatchView, stalled: bool) -> str:
    cells, seeds = _cells(view, stalled), _seeds(view, stalled)
    amount = f"{cells} cells" if cells else (f"{seeds} seeds" if seeds else "half of it")
    when = " this evening, in the cool" if _slot(view) is Slot.EVENING else ""
    where = view.season.place(_cool_place(view))
    place = f", {where.name}" if where else ""
    verb = "Re-sow" if stalled else "Decide: re-sow"
    return f"{verb} {amount}{when}{place}{'' if stalled else ', or give it up'}"


def _cool_place(view: BatchView) -> str:
    if view.waiting is None or view.waiting.stall is None or view.waiting.stall.cause != "heat":
        return view.part.place
    shaded = [place for place in view.season.places if place.shade_share > 0]
    return min(shaded, key=lambda p: (not p.lidded, p.order)).code if shaded else view.part.place


def _slot(view: BatchView) -> Slot:
    germination = view.crop.germination
    weather = view.season.weather.on_or_usual(view.day, view.season.site)
    warm = weather.max_c is not None and weather.max_c >= WARM_DAY_C
    shy = germination is not None and germination.ceiling_c < HEAT_SHY_CEILING_C
    return Slot.EVENING if warm and shy else Slot.MORNING


def _figures(view: BatchView, waiting: Waiting, best: date) -> tuple[str, ...]:
    figures = [
        f"sown {say_day(waiting.since)}",
        f"{waiting.share:.0%} of good sowings are up by now",
        f"decision due {say_day(best)}",
    ]
    if waiting.stall is not None:
        figures.append(str(waiting.stall))
    if view.part.first.get(Kind.PLANNED):
        span = sowing_window(view)
        if span is not None:
            still = "is still open" if view.day in span else "has closed: too late to re-sow"
            figures.append(f"sowing window to {say_day(span.closes)} {still}")
    return tuple(figures)
