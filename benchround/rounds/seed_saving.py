"""Save seed: look when it should ripen, collect on a dry day, pack when dry."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.batch.batch import Batch, Part
from benchround.core.dates import say_day
from benchround.core.lifecycle import Stage
from benchround.core.record import Draft, Figure, Kind
from benchround.core.task import Ask, Family, Harm, Hold, Why, Window
from benchround.rounds.flower_watch import over_from
from benchround.rounds.proposal import Proposal, draft, window
from benchround.rounds.view import BatchView

LOOK_BEFORE_DAYS = 7
LOOK_EVERY_DAYS = 3
WET_MM = 1.0
SPOILING_RAIN_MM = 5.0
DRY_DAYS, PACK_LATEST_DAYS = 7, 28
RIPE = Ask("ripe", "ripe", "no", whole=False, choices=("yes", "no"))
OVER = Ask("over", "flowering over", "no", whole=False, choices=("yes", "no"))
SOURCE = "RHS advice on seed collecting and storing (two months from flower to ripe; a dry day)"

CALLED_FOR_BY = frozenset({Kind.SEED_SAVED, Kind.SEED_RIPE, Kind.LEFT_FOR_SEED})
"""Records after which there may be seed to look at; marking a plant for it is the other way."""


def propose(view: BatchView) -> Iterator[Proposal]:
    """Looking for ripe seed, collecting it, and packing it."""
    part, batch = view.part, view.batch
    if CALLED_FOR_BY.isdisjoint(part.last) and not batch.marked_for_seed:
        return
    saved = view.since(Kind.SEED_SAVED)
    if saved is not None and not view.done_since(Kind.PACKED, saved):
        yield _pack(view, saved)
    if view.stage is Stage.SEED_SAVED or part.ended:
        return
    ripe = view.since(Kind.SEED_RIPE)
    if ripe is not None and ripe >= view.regrown_from and (saved is None or saved < ripe):
        yield _collect(view, ripe)
    elif view.stage is Stage.LEFT_FOR_SEED or (
        batch.marked_for_seed and not (saved is not None and saved >= view.regrown_from)
    ):
        yield from _look(view)


def _collect(view: BatchView, ripe: date) -> Proposal:
    today = view.season.weather.on(view.day)
    latest = ripe + timedelta(days=view.crop.seed.sheds_within_days)
    figures = [f"ripe since {say_day(ripe)}"]
    rain = next(
        (
            weather
            for weather in view.season.weather.ahead(view.day + timedelta(days=1), 7)
            if weather.rain_mm is not None and weather.rain_mm >= SPOILING_RAIN_MM
        ),
        None,
    )
    if rain is not None:
        latest = min(latest, max(view.day, rain.day - timedelta(days=1)))
        figures.append(f"{rain.rain_mm:g} mm of rain coming on {say_day(rain.day)}")
    hold = None
    if today is not None and today.rain_mm is not None and today.rain_mm >= WET_MM:
        hold = Hold(f"{today.rain_mm:g} mm of rain: collect on a dry day", _dry_day(view))
    elif today is None:
        figures.append("no weather known: taken as dry")
    return Proposal(
        Family.SAVE_SEED,
        Window(ripe, ripe, latest),
        Harm.SPOILS_THIS_WEEK,
        "Collect seed today, dry; label the paper bag with name, place and date",
        Why("ripe seed is collected on a dry day before it sheds", tuple(figures), SOURCE),
        (draft(view, Kind.SEED_SAVED), _packet(view, own_packet(view.batch, view.part))),
        asks=(Ask("packet", "packet name", own_packet(view.batch, view.part), whole=False),),
        hold=hold,
    )


def _dry_day(view: BatchView) -> date:
    for weather in view.season.weather.ahead(view.day + timedelta(days=1), 7):
        if weather.rain_mm is None or weather.rain_mm < WET_MM:
            return weather.day
    return view.day + timedelta(days=1)


def ripe_on(view: BatchView) -> date | None:
    """The day seed should be ripe: two months, or the crop's own time, from mid-flowering."""
    first = view.since(Kind.FIRST_FLOWER)
    if first is None:
        return None
    over = view.since(Kind.GOING_OVER, Kind.LEFT_FOR_SEED)
    middle = first + (over - first) / 2 if over is not None and over > first else first
    return middle + timedelta(days=view.crop.seed.ripe_days)


def _look(view: BatchView) -> Iterator[Proposal]:
    ripe = ripe_on(view)
    if ripe is None or view.did_today(Kind.LOOKED):
        return
    best = ripe - timedelta(days=LOOK_BEFORE_DAYS)
    looked = view.since(Kind.LOOKED)
    if looked is not None and looked >= best:
        best = looked + timedelta(days=LOOK_EVERY_DAYS)
    over = over_from(view)  # asked here too: these looks put off the one that asks it alone
    yield Proposal(
        Family.SAVE_SEED,
        window(best, grace=LOOK_EVERY_DAYS),
        Harm.GETS_LATE,
        "Look whether the seed ripens: brown, rattling, capsules opening"
        + ("; bag the heads" if view.crop.seed.bag else ""),
        Why(
            "seed ripens about two months from the middle of flowering; look from a week before",
            (f"ripe about {say_day(ripe)}",),
            SOURCE,
        ),
        (draft(view, Kind.LOOKED),),
        asks=(RIPE, *((OVER,) if over is not None and view.day >= over else ())),
    )


def _pack(view: BatchView, saved: date) -> Proposal:
    return Proposal(
        Family.PACK_SEED,
        Window(
            saved + timedelta(days=DRY_DAYS),
            saved + timedelta(days=DRY_DAYS),
            saved + timedelta(days=PACK_LATEST_DAYS),
        ),
        Harm.GETS_LATE,
        "Clean and pack the dried seed: name, variety, place and date on the packet",
        Why("seed dries a week or two in paper before it is packed", (f"saved {say_day(saved)}",)),
        (draft(view, Kind.PACKED), _packet(view, own_packet(view.batch, view.part))),
        asks=(
            Ask("packet", "packet name", own_packet(view.batch, view.part), whole=False),
            Ask("seeds", "seeds, if counted"),
            Ask("grams", "grams, if weighed", whole=False),
            Ask("storage", "kept where", _stored(view), whole=False),
        ),
    )


def own_packet(batch: Batch, part: Part) -> str:
    """The id of the packet of a part's own seed: as it was named, else after the batch."""
    saved = part.last.get(Kind.SEED_SAVED)
    return (saved.text("packet") if saved else "") or f"{batch.id}-seed"


def _stored(view: BatchView) -> str:
    packet = view.season.packets.get(own_packet(view.batch, view.part))
    return packet.storage if packet else ""


def _packet(view: BatchView, name: str) -> Draft:
    """The packet's own record; what was said of it before stands."""
    known = view.season.packet_record(name)
    figures: dict[str, Figure] = dict(known.figures) if known is not None else {}
    figures.update(crop=view.batch.crop, variety=view.batch.variety, saved=True)
    figures.setdefault("year", (view.since(Kind.SEED_SAVED) or view.day).year)
    return Draft(Kind.PACKET, name, figures)
