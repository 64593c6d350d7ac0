"""Making a task: the window, the vetoes and the grower's own putting-off decide how it stands."""

from __future__ import annotations

from datetime import date, time, timedelta

from benchround.core.caution.due import Work, cautions_for, mixed_with_edible
from benchround.core.caution.triggers import SIDE_BY_SIDE
from benchround.core.crop.crop import Crop
from benchround.core.dates import say_day
from benchround.core.frozen import dataclass
from benchround.core.record import Draft, Figure, Kind
from benchround.core.season import PutOff, Season
from benchround.core.site import Place
from benchround.core.task import (
    ASKED_ANEW,
    Ask,
    Family,
    Harm,
    Hold,
    Slot,
    Standing,
    Task,
    Why,
    Window,
)
from benchround.rounds.view import BatchView, PlaceView, SiteView


@dataclass(frozen=True, slots=True)
class Proposal:
    """What a family says of a task, before vetoes and putting-off are weighed."""

    family: Family
    window: Window
    harm: Harm
    instruction: str
    why: Why
    ticks: tuple[Draft, ...]
    slot: Slot = Slot.MORNING
    asks: tuple[Ask, ...] = ()
    hold: Hold | None = None
    late: bool = False
    place: str = ""
    at: time | None = None
    covering: str = ""
    cause: str = ""
    from_below: bool = False
    treated: bool = False
    trays: float | None = None


def in_sight(view: BatchView, family: Family, earliest: date) -> bool:
    """Whether a task of this window can be in today's round.

    Asked before a proposal is put into words: one whose earliest day lies ahead is shown only if
    it was put off.
    """
    put_offs = view.season.put_offs
    return view.day >= earliest or (
        bool(put_offs) and f"{family}:{view.batch.id}:{view.part.name}" in put_offs
    )


def window(best: date, *, early: int = 0, grace: int = 0) -> Window:
    """A window due on `best`, in sight `early` days before, overdue after `grace` days."""
    return Window(best - timedelta(days=early), best, best + timedelta(days=grace))


def draft(view: BatchView, kind: Kind, **figures: Figure | None) -> Draft:
    """A record about the part in view; figures that are None are left out."""
    said: dict[str, Figure] = {name: value for name, value in figures.items() if value is not None}
    if view.part.name:
        said["part"] = view.part.name
    return Draft(kind, view.batch.id, said)


def place_draft(view: PlaceView, kind: Kind, **figures: Figure) -> Draft:
    """A record about the place in view as a whole."""
    return Draft(kind, view.place.code, {"of_place": True, **figures})


def of_batch(view: BatchView, proposal: Proposal) -> Task | None:
    """The task a batch's proposal makes today; None where it is not in sight yet."""
    return _weigh(
        view.season,
        view.day,
        proposal,
        about=view.batch.id,
        part=view.part.name,
        view=view,
    )


def of_place(view: PlaceView, proposal: Proposal) -> Task | None:
    """The task a place's proposal makes today."""
    return _weigh(view.season, view.day, proposal, about=view.place.code, place=view.place.code)


def of_site(view: SiteView, proposal: Proposal) -> Task | None:
    """The task the site as a whole asks for today."""
    return _weigh(view.season, view.day, proposal, about="")


def _weigh(
    season: Season,
    day: date,
    proposal: Proposal,
    *,
    about: str,
    part: str = "",
    place: str = "",
    view: BatchView | None = None,
) -> Task | None:
    if season.done and season.done.get((str(proposal.family), about, part)) == day:
        return None
    put_offs = season.put_offs
    said = put_offs.get(f"{proposal.family}:{about}:{part}") if put_offs else None
    span, note = proposal.window, ""
    hold = proposal.hold
    if said is not None and said.until >= span.earliest and _is_meant(said, proposal, day, view):
        reason = f": {said.reason}" if said.reason else ""
        note = f"put off to {say_day(said.until)}{reason}"
        span = Window(min(span.earliest, day), said.until, max(said.until, span.latest))
        hold = hold if day >= said.until else None
    if day < span.earliest:
        return None
    standing = _standing(day, span, hold, proposal.late and not (note and day < span.best))
    where = proposal.place or place or (view.part.place if view else "")
    spot = season.place(where)
    return Task(
        family=proposal.family,
        about=about,
        part=part,
        crop=view.crop.name if view else "",
        variety=view.batch.variety if view else "",
        place=where,
        window=span,
        standing=standing,
        overdue_days=(day - span.latest).days if standing is Standing.OVERDUE else 0,
        harm=proposal.harm,
        slot=proposal.slot,
        instruction=proposal.instruction,
        why=proposal.why,
        ticks=proposal.ticks,
        asks=proposal.asks,
        hold=hold,
        cautions=_cautions(season, day, proposal, view.crop if view else None, spot),
        at=proposal.at,
        put_off=note,
    )


def _is_meant(said: PutOff, proposal: Proposal, day: date, view: BatchView | None) -> bool:
    """Whether a putting off is of this task, and not of one before it.

    What a day's weather asks for, such as a lid, is asked anew the next day; and once the work was
    done after all, what comes next is another task.
    """
    if proposal.family in ASKED_ANEW and said.said[0] != day:
        return False
    if view is None or not proposal.ticks:
        return True
    last = view.part.last.get(proposal.ticks[0].kind)
    return last is None or last.order < said.said


def _cautions(
    season: Season, day: date, proposal: Proposal, crop: Crop | None, spot: Place | None
) -> tuple[str, ...]:
    """The cautions of a task; the same ones for every batch of a crop in a place."""
    family = proposal.family
    beside = season.crops_at(spot.code) if spot and family in SIDE_BY_SIDE else ()
    watering = family is Family.WATER
    said = (proposal.covering, proposal.cause, proposal.from_below, proposal.treated)
    about = (crop.key if crop else None, spot.code if spot else None, proposal.trays, beside)
    key = (family, *about, day, *said)
    found = season.cautions_found.get(key)
    if found is None:
        work = Work(
            family,
            crop,
            spot,
            season.weather.on(day),
            season.site,
            covering=proposal.covering,
            cause=proposal.cause,
            mixed_with_edible=bool(beside)
            and mixed_with_edible(season.crops_beside(spot.code if spot else "", crop)),
            bottom_watering=proposal.from_below,
            sprinkled=watering and not proposal.from_below,
            treated=proposal.treated,
            trays=proposal.trays,
        )
        found = season.cautions_found[key] = cautions_for(work)
    return found


def _standing(day: date, span: Window, hold: Hold | None, late: bool) -> Standing:
    if hold is not None:
        return Standing.HELD
    if late:
        return Standing.LATE
    if day < span.best:
        return Standing.EARLY
    return Standing.DUE if day <= span.latest else Standing.OVERDUE
