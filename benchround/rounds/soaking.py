"""Pre-treatment of seed, scheduled backwards from the sowing day: chip, soak, chill."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from benchround.core.dates import number_of_days, say_day
from benchround.core.lifecycle import Stage
from benchround.core.record import Kind
from benchround.core.seed.packet_words import amount_words, packet_words, urgent_words
from benchround.core.task import Family, Harm, Slot, Why, Window
from benchround.rounds.proposal import Proposal, draft, in_sight, window
from benchround.rounds.seed_packet import packet_for, seeds_for
from benchround.rounds.sowing import cold_done_on, soaking_treatment, sowing_window
from benchround.rounds.view import BatchView

LOOK_EVERY_DAYS = 14
COLD_GRACE_DAYS = 14


def propose(view: BatchView) -> Iterator[Proposal]:
    """Soak this evening, put into the cold, look at what is in the cold, bring it out."""
    if view.stage is Stage.PLANNED:
        yield from _soak(view)
        yield from _into_cold(view)
    elif view.stage is Stage.STRATIFYING:
        yield from _in_cold(view)


def _soak(view: BatchView) -> Iterator[Proposal]:
    treatment, span = soaking_treatment(view), sowing_window(view)
    if treatment is None or span is None:
        return
    chips = any(t.name == "chip" for t in view.crop.treatments)
    best = span.opens - timedelta(days=1)
    if not in_sight(view, Family.SOAK, best):
        return
    seeds, how = seeds_for(view)
    planned, packet = view.part.first[Kind.PLANNED], packet_for(view)
    number = planned.count("seeds") or seeds
    words = packet_words(packet, number, view.crop, view.day)
    doing = "Chip and soak" if chips else "Soak"
    yield Proposal(
        Family.SOAK,
        Window(best, best, span.closes - timedelta(days=1)),
        Harm.GETS_LATE,
        f"{urgent_words(words)}{doing} {amount_words(number, packet, view.crop)} overnight in "
        "hand-warm water; sow them tomorrow",
        Why(
            "hard seed is wetted the evening before it is sown",
            (f"sowing window from {say_day(span.opens)}", how, *(w.text for w in words)),
            view.crop.source("treatments"),
        ),
        (draft(view, Kind.SOAKED, chipped=chips, seeds=number),),
        slot=Slot.EVENING,
        treated=packet is not None and packet.treated,
    )


def _into_cold(view: BatchView) -> Iterator[Proposal]:
    chill = next((t for t in view.crop.treatments if t.name == "chill"), None)
    span = sowing_window(view)
    if chill is None or span is None:
        return
    best = max(view.batch.begun, span.opens - timedelta(days=round(chill.days)))
    if not in_sight(view, Family.CHILL, best):
        return
    seeds, how = seeds_for(view)
    packet = packet_for(view)
    words = packet_words(packet, seeds, view.crop, view.day)
    yield Proposal(
        Family.CHILL,
        Window(best, best, span.closes - timedelta(days=round(chill.days))),
        Harm.GETS_LATE,
        f"{urgent_words(words)}Put {amount_words(seeds, packet, view.crop)}, damp not wet and "
        f"labelled, into the cold for {chill.days:g} days at about {chill.temp_c or 4:g} C",
        Why(
            "the seed wants cold before it comes up; the days are counted back from sowing",
            (f"sowing window from {say_day(span.opens)}", how, *(w.text for w in words)),
            view.crop.source("treatments"),
        ),
        (draft(view, Kind.CHILLED, days=chill.days, temp_c=chill.temp_c, seeds=seeds),),
        treated=packet is not None and packet.treated,
    )


def _in_cold(view: BatchView) -> Iterator[Proposal]:
    out_on, begun = cold_done_on(view), view.since(Kind.CHILLED)
    if out_on is None or begun is None:
        return
    had, wanted = (view.day - begun).days, number_of_days((out_on - begun).days)
    yield Proposal(
        Family.CHILL,
        window(out_on, grace=COLD_GRACE_DAYS),
        Harm.SPOILS_THIS_WEEK,
        f"Bring out of the cold and sow: {number_of_days(had)} had",
        Why(
            "its days of cold are done",
            (
                f"in the cold since {say_day(begun)}",
                f"wanted {wanted}",
            ),
            view.crop.source("treatments"),
        ),
        (draft(view, Kind.BROUGHT_OUT),),
        slot=Slot.FIRST,
    )
    looked = view.since(Kind.LOOKED) or begun
    look_on = looked + timedelta(days=LOOK_EVERY_DAYS)
    if look_on < out_on and view.day < out_on:
        yield Proposal(
            Family.LOOK,
            window(look_on, grace=3),
            Harm.SPOILS_THIS_WEEK,
            "Look for mould and first roots in the cold; sow at once if a root shows",
            Why(
                "seed in the cold is looked at every fortnight",
                (f"last look {say_day(looked)}", f"comes out {say_day(out_on)}"),
            ),
            (draft(view, Kind.LOOKED),),
        )
