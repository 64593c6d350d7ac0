"""Look for seedlings: too early, due, or late and why."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.dates import say_day
from benchround.core.lifecycle import WAITING, Stage
from benchround.core.record import Kind
from benchround.core.seed.stall import Stall
from benchround.core.seed.waiting import Waiting
from benchround.core.site import PlaceKind
from benchround.core.task import Ask, Family, Harm, Why, Window
from benchround.rounds import partial
from benchround.rounds.proposal import Proposal, draft, window
from benchround.rounds.stalled import remedy
from benchround.rounds.view import BatchView

RISING_DAYS = 10
"""Days after first up in which a count may still rise (emerging: 1 / 4 / 14, from memory)."""
FAR = timedelta(days=400)
UP = Ask("count", "up now", "0", opens=True, hint="0: none yet")
NOT_DUG = "not dug up"
FOUND_IN_SOIL = {
    "firm": "dug up a seed: firm, so wait",
    "soft": "dug up a seed: soft, so sow again",
    "gone": "dug for a seed: none there, so sow again",
}
"""What a seed dug up at a late look is like -> the note the look carries."""
DUG = Ask("dug", "seed dug up", NOT_DUG, whole=False, choices=(NOT_DUG, *FOUND_IN_SOIL))


def propose(view: BatchView) -> Iterator[Proposal]:
    """Looking for the first seedling, and at a count that still rises."""
    if view.did_today(Kind.LOOKED, Kind.FIRST_UP, Kind.COUNTED, Kind.SOWN):
        return
    if view.stage in WAITING:
        waiting = view.waiting
        if waiting is not None and waiting.look_from is not None:
            yield _for_first(view, waiting, waiting.look_from)
        elif waiting is not None and waiting.stall is not None:
            yield from _never_warm(view, waiting, waiting.stall)
    elif view.stage is Stage.EMERGING and view.first_up is not None:
        yield from _still_rising(view, view.first_up)


def _for_first(view: BatchView, waiting: Waiting, look_from: date) -> Proposal:
    sown = view.batch.sowing.seeds if view.batch.sowing else None
    late = waiting.late_from is not None and view.day >= waiting.late_from
    figures = [
        f"sown {say_day(waiting.since)}",
        f"{waiting.heat:.0f} of {waiting.heat_half:.0f} degree-days, by which half are up",
        f"expected from {say_day(look_from)}",
    ]
    if waiting.late_from is not None:
        figures.append(f"late from {say_day(waiting.late_from)}")
    if waiting.last_look is not None:
        figures.append(f"nothing on {say_day(waiting.last_look)}: {chances(waiting)}")
    if waiting.stall is not None:
        figures.append(str(waiting.stall))
    if waiting.taught:
        figures.append(waiting.taught)
    figures.append(waiting.basis)
    if waiting.had:
        figures.append(f"since sowing: {waiting.had}")
    return Proposal(
        Family.LOOK,
        Window(waiting.since + timedelta(days=1), look_from, look_from + FAR),
        Harm.SPOILS_THIS_WEEK if late else Harm.GETS_LATE,
        _words(view, waiting, look_from, sown, late),
        Why(
            "seed comes up when it has had its heat at the place it stood",
            tuple(figures),
            view.crop.source("germination"),
        ),
        (draft(view, Kind.LOOKED),),
        asks=(UP, DUG) if late else (UP,),
        late=late,
    )


def chances(waiting: Waiting) -> str:
    """The chance that it is alive by the last look, and that it is up a week from now."""
    return f"{waiting.alive:.0%} chance it is alive, {waiting.soon_words}"


def _never_warm(view: BatchView, waiting: Waiting, stall: Stall) -> Iterator[Proposal]:
    """Seed that will not have its heat within a year where it stands; in a fridge it is meant."""
    if view.place is not None and view.place.kind is PlaceKind.FRIDGE:
        return
    yield Proposal(
        Family.LOOK,
        window(stall.day, grace=RISING_DAYS),
        Harm.SPOILS_THIS_WEEK,
        f"Too cold to come up: {stall}; {remedy(view, stall)}",
        Why(
            "seed comes up when it has had its heat at the place it stood",
            (f"sown {say_day(waiting.since)}", "not warm enough within a year", waiting.basis),
            view.crop.source("germination"),
        ),
        (draft(view, Kind.LOOKED),),
        asks=(UP,),
    )


def _words(view: BatchView, waiting: Waiting, look_from: date, sown: int | None, late: bool) -> str:
    seeds = f" ({sown} sown)" if sown else ""
    stall = waiting.stall
    what = remedy(view, stall) if stall is not None else ""
    if late:
        nothing = f"nothing of {sown} sown" if sown else "nothing is up yet"
        cause = f", {stall}" if stall is not None else ""
        then = f" Then {what}" if what else ""
        return f"LATE: {nothing}{cause}. Look, dig up a seed: firm or soft?{then}"
    sulks = f"; {stall}: {what}" if stall is not None else ""
    if view.day < look_from:
        moist = f"only keep it moist until {say_day(look_from)}"
        return f"Too early to look{seeds}: {moist}{sulks}"
    return f"Look for first seedlings{seeds}{sulks}"


def _still_rising(view: BatchView, first_up: date) -> Iterator[Proposal]:
    sowing, up = view.batch.sowing, view.batch.tally.up
    if (view.day - first_up).days > RISING_DAYS or sowing is None:
        return
    most = sowing.seeds
    if most is not None and up is not None and up >= most:
        return
    yield Proposal(
        Family.LOOK,
        Window(first_up, first_up, view.day),
        Harm.GETS_LATE,
        f"Look and count: {_so_far(up, most)}{partial.end_words(view)}",
        Why(
            "while seedlings appear the count is taken daily",
            (f"first up {say_day(first_up)}", *partial.figures(view)),
        ),
        (draft(view, Kind.LOOKED),),
        asks=(Ask("count", "up now", most=most, opens=True, hint="empty: not counted"),),
    )


def _so_far(up: int | None, sown: int | None) -> str:
    """How many are up, as far as it was counted and typed."""
    of = f" of {sown}" if sown is not None else ""
    if up is not None:
        return f"{up} up{of}"
    return f"some{of} are up"
