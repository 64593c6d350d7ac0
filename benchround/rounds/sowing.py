"""Sow: in trays, cells, pots or a drill outdoors, with the label written the same minute."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.crop.crop import Covering, Light, PlantClass, Raising, Treatment
from benchround.core.dates import Span, say_date, say_day, year_on
from benchround.core.lifecycle import Stage
from benchround.core.planning.last_sowing import window_span
from benchround.core.planning.planned_time import passed_over, wished_span
from benchround.core.record import Kind
from benchround.core.seed.packet_words import amount_words, packet_words, urgent_words
from benchround.core.task import Ask, Family, Harm, Slot, Why, Window
from benchround.rounds.proposal import Proposal, draft, in_sight
from benchround.rounds.seed_packet import packet_for, seeds_for
from benchround.rounds.stalled import sowing_slot
from benchround.rounds.view import BatchView

URGENT_SHARE = 2 / 3
SOAKED_AT_MOST_DAYS = 1
LONG_PERIOD_DAYS = 7
A_YEAR = timedelta(days=365)
NEXT_WINDOW_DAYS = 150
"""A window that opens within this time is still the same year's chance (our proposal)."""


def propose(view: BatchView) -> Iterator[Proposal]:
    """Sowing for what is planned, soaked, chitted or out of the cold."""
    if view.crop.plant_class is PlantClass.BULB:
        return
    match view.stage:
        case Stage.PLANNED:
            span = sowing_window(view)
            if span is not None:
                yield from _sow(view, span, _from_plan(view, span))
        case Stage.PRETREATED | Stage.CHITTED:
            yield from _sow(view, None, _from_wet(view))
        case Stage.STRATIFYING:
            ready = cold_done_on(view)
            if ready is not None:
                yield from _sow(view, None, Window(ready, ready, ready + timedelta(days=14)))


def sowing_window(view: BatchView) -> Span | None:
    """The span in which a planned sowing belongs: the grower's own day, else the crop's window.

    A time that was passed over is gone: the next one counts. Of windows that were missed the
    latest of the last year counts. None where the crop has no window and no day was wished.
    """
    wished = wished_span(view.season, view.batch, view.part, view.day)
    if wished is not None:
        return wished
    passed = passed_over(view.season, view.batch, view.part, view.day)
    return _window_from(view, passed, view.day)


def _window_from(view: BatchView, passed: date | None, day: date) -> Span | None:
    """The crop's window a plan belongs to on a day, those up to `passed` left out."""
    since = view.batch.begun if passed is None else passed + timedelta(days=1)
    return _in_turn(_spans(view, max(since, day - A_YEAR)), _spans(view, max(since, day)), day)


def next_time(view: BatchView) -> date | None:
    """The day it will be asked for next when its present time is passed over; None where never."""
    wished = wished_span(view.season, view.batch, view.part, view.day)
    if wished is not None:
        opens = wished.opens
        while opens <= view.day:
            opens = year_on(opens)
        return opens
    day = view.day + timedelta(days=1)
    while (span := _window_from(view, view.day, day)) is not None and span.opens > day:
        day = span.opens  # by then another window may be nearer
    return day if span is not None else None


def window_open_now(view: BatchView) -> Span | None:
    """A window of the crop that is open today, whatever day was wished."""
    return next((span for span in _spans(view, view.day) if view.day in span), None)


def _spans(view: BatchView, since: date) -> list[Span]:
    year = view.season.site.year
    found = (window_span(view.crop, year, window, since) for window in view.crop.windows)
    return [span for span in found if span is not None]


def _in_turn(planned: list[Span], now: list[Span], day: date) -> Span | None:
    """The window a planned sowing belongs to: an open one, the next one, else the one missed.

    Windows stand in the crop's order, the usual one first: while it has not opened yet, an earlier
    one that is open is not pressed on the grower.
    """
    if not planned:
        return None
    usual = now[0] if now else planned[0]
    soon = timedelta(days=NEXT_WINDOW_DAYS)
    open_now = [span for span in now if day in span]
    if open_now and not (day < usual.opens <= day + soon):
        return open_now[0]
    coming = [span for span in now if day < span.opens <= day + soon]
    if coming:
        return usual if usual in coming else min(coming, key=lambda span: span.opens)
    missed = [span for span in planned if span.closes < day]
    if missed:
        return max(missed, key=lambda span: span.closes)
    return min(planned, key=lambda span: span.opens)


def soaking_treatment(view: BatchView) -> Treatment | None:
    """The soaking or chipping the crop's seed wants the evening before."""
    return next((t for t in view.crop.treatments if t.name in ("soak", "chip")), None)


def cold_done_on(view: BatchView) -> date | None:
    """The day a chilled batch has had its cold."""
    begun = view.since(Kind.CHILLED)
    if begun is None:
        return None
    record = view.part.last[Kind.CHILLED]
    days = record.number("days") or next(
        (t.days for t in view.crop.treatments if t.name == "chill"), 35.0
    )
    return begun + timedelta(days=round(days))


def _from_plan(view: BatchView, span: Span) -> Window:
    if soaking_treatment(view) is None:
        return Window(span.opens, span.opens, span.closes)
    planned = view.part.last.get(Kind.PLANNED)
    wished = planned is not None and bool(planned.text("sow_on"))
    tomorrow = min(view.day + timedelta(days=1), span.closes)
    best = span.opens if wished else max(span.opens, tomorrow)
    return Window(span.opens - timedelta(days=1), best, span.closes)


def _from_wet(view: BatchView) -> Window:
    since = view.since(Kind.SOAKED, Kind.CHITTED, Kind.BROUGHT_OUT) or view.part.since
    soaked = view.since(Kind.SOAKED)
    best = since if soaked is None else since + timedelta(days=SOAKED_AT_MOST_DAYS)
    return Window(since, best, best + timedelta(days=0 if soaked else 2))


def _sow(view: BatchView, span: Span | None, when: Window) -> Iterator[Proposal]:
    if not in_sight(view, Family.SOW, when.earliest):
        return
    planned = view.part.first.get(Kind.PLANNED)
    chilled = view.part.last.get(Kind.CHILLED)
    reckoned, how = seeds_for(view)
    told = chilled.count("seeds") if chilled else None
    seeds = told or (planned.count("seeds") if planned else None) or reckoned
    into = (planned.text("place") if planned else "") or _place_said(view)
    packet = packet_for(view)
    words = packet_words(packet, None if told else seeds, view.crop, view.day)
    place = view.season.place(into)
    where = f", {place.name}" if place else ""
    figures = [how if told is None else f"{told} seeds have had their cold"]
    figures += [word.text for word in words]
    if span is not None:
        figures.insert(0, f"window {say_day(span.opens)} to {say_day(span.closes)}")
        over = view.day > span.closes
        if not over and span.share_gone(view.day) >= URGENT_SHARE and span.days > LONG_PERIOD_DAYS:
            figures.append("two thirds of the window are gone")
    container = (planned.text("container") if planned else "") or view.part.container
    yield Proposal(
        Family.SOW,
        when,
        Harm.SPOILS_THIS_WEEK if span is None else Harm.GETS_LATE,
        f"{_dry_yet(view)}{urgent_words(words)}{_how(view)} "
        f"{amount_words(seeds, packet, view.crop)}"
        f"{f' in {container}' if container else ''}{where}; {_cover(view)}. "
        f"{label_words(view, seeds)}",
        Why(_rule(view, span), tuple(figures), view.crop.source("windows")),
        (
            draft(
                view,
                Kind.SOWN,
                seeds=seeds,
                place=into or None,
                container=container or None,
                covering=str(_covering(view)),
                depth_mm=view.crop.germination.depth_mm if view.crop.germination else None,
                raising=str(view.crop.raising),
                per_cell=view.crop.growing.per_cell,
            ),
        ),
        slot=Slot.EVENING if _dry_yet(view) else sowing_slot(view),
        asks=(
            Ask("seeds", "seeds sown", str(seeds or ""), needed=False),
            Ask("cells", "cells", str(planned.count("cells") or "") if planned else ""),
            Ask("place", "place", into, whole=False),
            Ask("packet", "from packet", packet.id if packet else "", whole=False),
        ),
        place=into,
        covering=str(_covering(view)),
        treated=packet is not None and packet.treated,
    )


def _dry_yet(view: BatchView) -> str:
    if view.stage is Stage.PLANNED and soaking_treatment(view) is not None:
        return "Not soaked yet: soak tonight, sow tomorrow. "
    return ""


def _rule(view: BatchView, span: Span | None) -> str:
    match view.stage:
        case Stage.PRETREATED if view.since(Kind.SOAKED):
            return "soaked seed is sown within a day"
        case Stage.PRETREATED | Stage.STRATIFYING:
            return "its cold is done: sow at once"
        case Stage.CHITTED:
            return "sprouted seed is sown the day the roots show"
        case _ if span is not None and view.day > span.closes:
            return "its sowing window has closed: sow it at once, or let it wait"
        case _:
            return "its sowing window is open"


def _place_said(view: BatchView) -> str:
    record = view.part.last.get(Kind.CHILLED)
    return (record.text("sow_place") if record else "") or ""


def _covering(view: BatchView) -> Covering:
    return view.crop.germination.covering if view.crop.germination else Covering.COMPOST


def _cover(view: BatchView) -> str:
    germination = view.crop.germination
    if germination is None or germination.covering is Covering.NONE:
        return "press in, no cover, keep the surface moist"
    dark = "; keep dark" if germination.light is Light.DARK else ""
    return f"cover with {germination.depth_mm:g} mm of {germination.covering}{dark}"


def _how(view: BatchView) -> str:
    match view.crop.raising:
        case Raising.DRILL:
            return "Rake the ground fine, mark the row, sow"
        case Raising.TRAY:
            return "Sow thinly"
        case Raising.CELLS | Raising.CLUMPS | Raising.POTS:
            return f"Sow {view.crop.growing.per_cell} to a cell,"
        case _:
            return "Set"


def label_words(view: BatchView, seeds: int | None) -> str:
    """What goes on the two sides of the label."""
    number = f", {seeds} seeds" if seeds else ""
    return f"Label: front {view.name}; back {say_date(view.day)}, {view.batch.id}{number}"
