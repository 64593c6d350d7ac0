"""Sow again: salads, radish, beans and cut flowers are sown a little at a time, all summer."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.batch.batch import Batch
from benchround.core.crop.crop import Raising
from benchround.core.dates import say_date, say_day
from benchround.core.lifecycle import BEFORE, Stage
from benchround.core.planning.in_turn import NextSowing, next_in_turn
from benchround.core.planning.row_in_turn import mean_here
from benchround.core.record import Draft, Figure, Kind, Record
from benchround.core.season import Season
from benchround.core.task import Ask, Family, Harm, Why, Window
from benchround.rounds.proposal import Proposal
from benchround.rounds.stalled import sowing_slot
from benchround.rounds.view import BatchView

STAGES = frozenset(Stage) - BEFORE - {Stage.CANCELLED}
"""Whatever became of the last sowing, the next one falls due."""
TAKEN_OVER = (
    "wanted",
    "seeds",
    "cells",
    "per_cell",
    "raising",
    "container",
    "covering",
    "depth_mm",
    "heat_c",
    "row_m",
    "place",
)
"""Figures of the last sowing that the next one repeats."""
SOWN, NO_MORE = "sown", "no more this year"
"""What may be said to the offer."""
NOT_BEFORE = timedelta(days=3)


def propose(view: BatchView) -> Iterator[Proposal]:
    """The next sowing of a crop sown in turn, while its last sowing of the year is in view."""
    if view.crop.succession_days is None or view.part is not view.batch.main:
        return
    turn = offer(view)
    if turn is None or not turn.offered_on(view.day):
        return
    first = view.part.first[Kind.SOWN]
    number = next_number(view.season, view.batch.id)
    place = view.season.place(first.text("place"))
    yield Proposal(
        Family.SOW_AGAIN,
        Window(turn.first, turn.best, turn.closes or turn.fades),
        Harm.GETS_LATE,
        _words(view, first, number, place.name if place else ""),
        Why(
            "sown little and often it is never short and never all at once",
            _figures(view, turn),
            turn.source,
        ),
        (Draft(Kind.SOWN, number, _repeated(view, first)),),
        slot=sowing_slot(view),
        asks=_asks(view, first),
        place=first.text("place"),
        covering=first.text("covering"),
    )


def offer(view: BatchView) -> NextSowing | None:
    """The next sowing after this batch; None where it is not the last one, or told to be."""
    sowing = view.batch.sowing
    if sowing is None or view.season.last_sown.get(view.batch.crop) != view.batch.id:
        return None
    sown = sowing.again_on or sowing.day
    year = view.season.site.year
    if view.day < sown + NOT_BEFORE or sown <= _begun(view.season, view.day):
        return None
    said = (str(Family.SOW_AGAIN), view.batch.id, "")
    if said in view.season.done or view.part.first.get(Kind.SOWN) is None:
        return None
    return next_in_turn(view.crop, sown, year, lambda day: mean_here(view.season, day))


def _begun(season: Season, day: date) -> date:
    """The midwinter the growing year of a day began with."""
    this = season.site.year.midwinter(day.year)
    return this if this <= day else season.site.year.midwinter(day.year - 1)


def _words(view: BatchView, first: Record, number: str, place: str) -> str:
    amount = _amount(first)
    where = f", {place}" if place else ""
    said = f"Label: front {view.name}; back {say_date(view.day)}, {number}"
    return f"Sow {view.name} again: {amount}{where}. {said}"


def _amount(first: Record) -> str:
    cells, seeds, row_m = first.count("cells"), first.count("seeds"), first.number("row_m")
    if cells:
        return f"{cells} cells"
    if seeds:
        return f"{seeds} seeds"
    return f"a row of {row_m:g} m" if row_m else "as much as last time"


def _figures(view: BatchView, turn: NextSowing) -> tuple[str, ...]:
    assert view.batch.sowing is not None
    sown = view.batch.sowing.again_on or view.batch.sowing.day
    said = [
        f"last sown {say_day(sown)} ({view.batch.id})",
        turn.how,
        f"next {say_day(turn.first)} to {say_day(turn.best)}",
    ]
    if turn.closes is not None:
        said.append(f"last sowing of the year {say_day(turn.closes)}")
    said.append(f"not asked again from {say_day(turn.fades)}, or once you say '{NO_MORE}'")
    return tuple(said)


def _repeated(view: BatchView, first: Record) -> dict[str, Figure]:
    said: dict[str, Figure] = {"crop": view.batch.crop}
    if view.batch.variety:
        said["variety"] = view.batch.variety
    said.update({name: first.figures[name] for name in TAKEN_OVER if name in first.figures})
    packet = view.batch.sowing.packet if view.batch.sowing else ""
    if packet in view.season.packets:
        said["packet"] = packet
    return said


def _asks(view: BatchView, first: Record) -> tuple[Ask, ...]:
    packet = _repeated(view, first).get("packet", "")
    asks = [
        Ask("again", "sown, or no more this year", SOWN, whole=False, choices=(SOWN, NO_MORE)),
        Ask("seeds", "seeds sown", str(first.count("seeds") or "")),
    ]
    if view.raising not in (Raising.DRILL, Raising.TRAY):
        asks.append(Ask("cells", "cells", str(first.count("cells") or "")))
    place = first.text("place")
    asks.append(Ask("place", "place", place, whole=False))
    asks.append(Ask("packet", "from packet", str(packet), whole=False))
    return tuple(asks)


def next_number(season: Season, name: str) -> str:
    """What the next sowing of a batch is called: b17-2 after b17, b17-3 after that."""
    stem, dash, last = name.rpartition("-")
    if not dash or not last.isdecimal():
        stem, last = name, "1"
    number = int(last) + 1
    while f"{stem}-{number}" in season.batches:
        number += 1
    return f"{stem}-{number}"


def ground(season: Season, batch: Batch) -> tuple[object, ...]:
    """What an offer rests on besides its own batch; nothing where the batch makes none."""
    if season.last_sown.get(batch.crop) != batch.id:
        return ()
    packet = batch.sowing.packet if batch.sowing else ""
    return (next_number(season, batch.id), str(packet in season.packets))
