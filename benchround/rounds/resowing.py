"""Re-sow: when a sowing is probably dead, stalled or too thin, and there is still time."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.crop.crop import Raising
from benchround.core.dates import say_day
from benchround.core.lifecycle import SEEDLING, WAITING, Stage
from benchround.core.record import Cause, Kind
from benchround.core.seed.waiting import Waiting
from benchround.core.task import Ask, Family, Harm, Slot, Why, Window
from benchround.rounds import partial
from benchround.rounds.looking import chances
from benchround.rounds.partial import Short
from benchround.rounds.proposal import Proposal, draft, in_sight, window
from benchround.rounds.sowing import sowing_window
from benchround.rounds.sown_again import Again, sown_again
from benchround.rounds.stalled import cool_place, sowing_slot
from benchround.rounds.view import BatchView

GRACE_DAYS = 7


def propose(view: BatchView) -> Iterator[Proposal]:
    """The decision to sow again, to sow more, or to give it up."""
    if view.did_today(Kind.RESOWN):
        return
    if view.stage in WAITING:
        yield from _instead(view)
    elif view.stage in SEEDLING:
        yield from _more(view)


def _instead(view: BatchView) -> Iterator[Proposal]:
    """Nothing is up: sow again, or give it up where that no longer helps."""
    waiting, stalled = view.waiting, view.stage is Stage.STALLED
    if waiting is None:
        return
    best = view.part.since if stalled else waiting.give_up_on
    if best is None or not in_sight(view, Family.RESOW, best):
        return
    again = sown_again(view)
    latest = max(best + timedelta(days=GRACE_DAYS), view.day if stalled else best)
    when = Window(best, best, latest)
    if again.helps:
        yield _sow_again(view, waiting, when, again)
    elif not stalled:
        yield _give_up(view, waiting, when, again)


def _sow_again(view: BatchView, waiting: Waiting, when: Window, again: Again) -> Proposal:
    stalled = view.stage is Stage.STALLED
    seeds = _seeds(view, stalled)
    return Proposal(
        Family.RESOW,
        when,
        Harm.GETS_LATE,
        _words(view, stalled, again),
        Why(
            "stalled seed may live: a few cells are sown again as insurance"
            if stalled
            else _dead_words(waiting),
            _figures(view, waiting, when.best),
            view.crop.source("germination"),
        ),
        (draft(view, Kind.RESOWN, seeds=seeds, cells=_cells(view, stalled)),),
        slot=sowing_slot(view),
        asks=_asks(view, seeds),
    )


def _give_up(view: BatchView, waiting: Waiting, when: Window, again: Again) -> Proposal:
    return Proposal(
        Family.RESOW,
        when,
        Harm.GETS_LATE,
        f"{_decide(waiting)}: keep it a while or give it up; {again.words}",
        Why(
            _dead_words(waiting),
            _figures(view, waiting, when.best),
            view.crop.source("germination"),
        ),
        (draft(view, Kind.LOST),),
        asks=(
            Ask("cause", "why", str(Cause.UNKNOWN), whole=False, choices=tuple(map(str, Cause))),
        ),
    )


def _more(view: BatchView) -> Iterator[Proposal]:
    """Too few come up: sow what is lacking now, while it still helps."""
    sowing = view.batch.sowing
    if sowing is None or sowing.again_on is not None or view.raising == Raising.CLUMPS:
        return
    short, found = partial.short_of(view), partial.promised(view)
    if short is None or found is None:
        return
    again = sown_again(view)
    if not again.helps:
        return
    yield Proposal(
        Family.RESOW,
        window(found.counted_on, grace=GRACE_DAYS),
        Harm.GETS_LATE,
        _more_words(view, short, found.up, found.final, again),
        Why(
            "the count so far says how many there will be; what is lacking is sown at once",
            partial.figures(view),
            "beta-binomial count of the seed still to come; spread of emergence: our proposal",
        ),
        (draft(view, Kind.RESOWN, seeds=short.more),),
        slot=sowing_slot(view),
        asks=_asks(view, short.more),
    )


def _more_words(view: BatchView, short: Short, up: int, final: float, again: Again) -> str:
    amount = f"{short.more} more seeds" if short.more else "more"
    ready = f", {again.words}" if again.words else ""
    return (
        f"Sow {amount} now{_when(view)}{ready}: {up} up, about {final:.0f} in the end, "
        f"{short.plants} of {short.wanted} plants"
    )


def _asks(view: BatchView, seeds: int | None) -> tuple[Ask, ...]:
    return (
        Ask("seeds", "seeds sown again", str(seeds or "")),
        Ask("place", "place", _place(view), whole=False),
    )


def _cells(view: BatchView, stalled: bool) -> int | None:
    cells = view.batch.sowing.cells if view.batch.sowing else None
    return None if cells is None else (cells // 2 if stalled else cells)


def _seeds(view: BatchView, stalled: bool) -> int | None:
    sowing = view.batch.sowing
    if sowing is None or sowing.seeds is None:
        return None
    return sowing.seeds // 2 if stalled else sowing.seeds


def _words(view: BatchView, stalled: bool, again: Again) -> str:
    cells, seeds = _cells(view, stalled), _seeds(view, stalled)
    amount = f"{cells} cells" if cells else (f"{seeds} seeds" if seeds else "half of it")
    where = view.season.place(_place(view))
    place = f", {where.name}" if where else ""
    verb = "Re-sow" if stalled or view.waiting is None else f"{_decide(view.waiting)}: re-sow"
    ready = f"; {again.words}" if again.words else ""
    return f"{verb} {amount}{_when(view)}{place}{'' if stalled else ', or give it up'}{ready}"


def _decide(waiting: Waiting) -> str:
    """What nobody has looked at may well be up: the look comes first."""
    return "Decide" if waiting.seen_dead else "Look; if nothing is up, decide"


def _dead_words(waiting: Waiting) -> str:
    fallen = "the chance that it is alive has fallen to one in five"
    return fallen if waiting.seen_dead else f"with nothing up at a look today, {fallen}"


def _when(view: BatchView) -> str:
    return " this evening, in the cool" if sowing_slot(view) is Slot.EVENING else ""


def _place(view: BatchView) -> str:
    """Where to sow again: a cool place after heat, else where it stood."""
    stall = view.waiting.stall if view.waiting is not None else None
    cool = cool_place(view) if stall is not None and stall.cause == "heat" else None
    return cool.code if cool is not None else view.part.place


def _figures(view: BatchView, waiting: Waiting, best: date) -> tuple[str, ...]:
    figures = [
        f"sown {say_day(waiting.since)}",
        f"{waiting.share:.0%} of good sowings are up by now",
        f"decision due {say_day(best)}",
    ]
    if waiting.last_look is not None:
        figures.append(f"nothing on {say_day(waiting.last_look)}: {chances(waiting)}")
    else:
        figures.append("no look since sowing is on record")
    if waiting.stall is not None:
        figures.append(str(waiting.stall))
    if view.part.first.get(Kind.PLANNED):
        span = sowing_window(view)
        if span is not None:
            still = "is still open" if view.day in span else "has closed: too late to re-sow"
            figures.append(f"sowing window to {say_day(span.closes)} {still}")
    return tuple(figures)
