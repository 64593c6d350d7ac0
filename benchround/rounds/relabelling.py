"""Relabel a tray nobody can name, and locate the one that is missing."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.batch.batch import Part
from benchround.core.dates import say_day
from benchround.core.lifecycle import SEEDLING, YOUNG
from benchround.core.record import Draft, Kind
from benchround.core.site import PlaceKind
from benchround.core.task import Family, Harm, Why
from benchround.rounds.proposal import Proposal, draft, in_sight, window
from benchround.rounds.view import BatchView

GRACE_DAYS = 7
COUNT_APART = 0.1
UNSEEN_DAYS = 42
TRAY_STAGES = SEEDLING | YOUNG


def propose(view: BatchView) -> Iterator[Proposal]:
    """Naming an unlabelled tray from the book, and finding a tray that was not seen."""
    if view.crop.key == "unknown":
        yield from _relabel(view)
    elif view.stage in TRAY_STAGES and not view.is_spare:
        yield from _locate(view)


def matches(unknown: Part, candidate: Part) -> bool:
    """Whether a batch on the books could be the unlabelled tray: place, stage and count agree."""
    if unknown.place and candidate.place and unknown.place != candidate.place:
        return False
    if unknown.stage is not candidate.stage:
        return False
    if unknown.alive is None or candidate.alive is None:
        return True
    return abs(unknown.alive - candidate.alive) <= COUNT_APART * max(1, unknown.alive)


def _relabel(view: BatchView) -> Iterator[Proposal]:
    since = _nameless_since(view)
    if view.stage not in TRAY_STAGES or view.done_since(Kind.RELABELLED, since):
        return
    found = [
        batch
        for batch in view.season.batches.values()
        if batch.crop != "unknown"
        and any(matches(view.part, part) for part in batch.parts)
        and not _seen_since(batch.main, view)
    ]
    ticks: tuple[Draft, ...] = (draft(view, Kind.RELABELLED),)
    words = "Label it 'unknown' with the day; narrow it down by leaf, age and place"
    if len(found) == 1:
        only = found[0]
        crop = view.season.crop(only.crop)
        variety = f" '{only.variety}'" if only.variety else ""
        words = f"Relabel as {only.id} {crop.name}{variety}: the only one that matches"
        ticks = (
            draft(view, Kind.SAME_AS, batch=only.id),
            Draft(Kind.SEEN, only.id, {"place": view.part.place} if view.part.place else {}),
        )
    elif found:
        words = "Relabel: could be " + ", ".join(sorted(batch.id for batch in found))
    yield Proposal(
        Family.RELABEL,
        window(since, grace=GRACE_DAYS),
        Harm.GETS_LATE,
        words,
        Why(
            "place, stage and number alive are compared with the book",
            (
                f"{_alive(view.part)}, {view.stage}",
                f"without a name since {say_day(since)}",
            ),
        ),
        ticks,
    )


def _nameless_since(view: BatchView) -> date:
    return view.since(Kind.LABEL_LOST) or view.batch.begun


def _alive(part: Part) -> str:
    return f"{part.alive} alive" if part.alive is not None else "never counted"


def _seen_since(part: Part, view: BatchView) -> bool:
    lost = _nameless_since(view)
    latest = max((record.day for record in part.last.values()), default=lost)
    return latest > lost


def _locate(view: BatchView) -> Iterator[Proposal]:
    seen = max(record.day for record in view.part.last.values())
    for batch, part in view.season.nameless:
        lost = part.last_day(Kind.LABEL_LOST) or batch.begun
        if matches(part, view.part) and seen <= lost:
            if not in_sight(view, Family.LOCATE, lost):
                return
            figure = f"{batch.id} ({_alive(part)}, {part.stage}) matches it"
            yield _find(view, seen, lost, figure)
            return
    indoors = view.place is not None and view.place.kind is not PlaceKind.BED
    if indoors:
        unseen_from = seen + timedelta(days=UNSEEN_DAYS)
        if not in_sight(view, Family.LOCATE, unseen_from):
            return
        yield _find(view, seen, unseen_from, "nothing written about it since")


def _find(view: BatchView, seen: date, best: date, figure: str) -> Proposal:
    return Proposal(
        Family.LOCATE,
        window(best, grace=GRACE_DAYS),
        Harm.GETS_LATE,
        f"Find this tray: last seen {say_day(seen)}; {figure}",
        Why("a tray not ticked off is dry, forgotten or lost its label", (figure,)),
        (draft(view, Kind.SEEN),),
    )
