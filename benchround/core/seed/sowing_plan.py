"""What a sowing takes, worked out before it is sown: seed, cells, container, place, depth, label.

Everything can be changed by the grower; this is what stands in the sheet when it is opened.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from datetime import date

from benchround.core.batch.batch import Batch
from benchround.core.containers import USUAL_CONTAINERS, usual_called
from benchround.core.crop.crop import Covering, Crop, Raising, SowingWindow
from benchround.core.dates import Span, say_date, say_day
from benchround.core.frozen import dataclass
from benchround.core.planning.last_sowing import window_span
from benchround.core.season import Packet, Season
from benchround.core.seed.age import Word
from benchround.core.seed.needed import CELLED, Needed, needed_for
from benchround.core.seed.packet_words import packet_words
from benchround.core.site import Place, PlaceKind

FULL_TRAY_SEEDS, QUARTER_TRAY_SEEDS = 400, 60
"""Above and up to these a full and a quarter tray are sown, else a half (common practice)."""

MANY_SEEDS = 20_000
"""More than these in one sowing are asked about (our proposal)."""

PLACES_FOR: dict[str, tuple[PlaceKind, ...]] = {
    "heat": (PlaceKind.PROPAGATOR, PlaceKind.WINDOWSILL, PlaceKind.GREENHOUSE, PlaceKind.BENCH),
    "cover": (
        PlaceKind.GREENHOUSE,
        PlaceKind.BENCH,
        PlaceKind.FRAME,
        PlaceKind.TUNNEL,
        PlaceKind.WINDOWSILL,
    ),
    "shade": (PlaceKind.FRAME, PlaceKind.BENCH),
    "outdoors": (PlaceKind.BED, PlaceKind.FRAME, PlaceKind.BENCH),
}
"""Kinds of place a sowing window asks for, the best first."""


@dataclass(frozen=True, slots=True)
class SowingPlan:
    """What stands in the sowing sheet before anything is typed.

    Attributes:
        seeds, cells: None where nothing tells how many.
        how: how the numbers were come by.
        minds: what to know of the packet before it is opened, what cannot wait first.
        window: the sowing window meant, None where the crop has none.
        out_of_window: a sentence where the day lies outside it, else empty.
        like: the batch of the same crop some figures were taken from, empty for none.
    """

    wanted: int | None
    seeds: int | None
    cells: int | None
    per_cell: int
    raising: str
    container: str
    place: str
    covering: str
    depth_mm: float | None
    heat_c: float | None
    how: str
    window: Span | None
    out_of_window: str
    like: str
    minds: tuple[Word, ...] = ()


def plan_sowing(
    season: Season,
    crop: Crop,
    day: date,
    wanted: int | None = None,
    container: str = "",
    packet: str = "",
) -> SowingPlan:
    """What a sowing of a crop takes.

    Args:
        season: places, containers, packets and earlier batches, and what they taught.
        crop: the crop's rules.
        day: the day it is to be sown.
        wanted: plants wanted at the end; None: as many as last time, if there was one.
        container: the container chosen; empty: the usual one.
        packet: the packet chosen; empty: none, and the crop's figures are reckoned with.
    """
    last = _last_of(season, crop)
    sowing = last.sowing if last else None
    raising = (sowing.raising if sowing else "") or str(crop.raising)
    per_cell = (sowing.per_cell if sowing else None) or crop.growing.per_cell
    number = wanted if wanted is not None else (last.wanted if last else None)
    chosen = season.packets.get(packet)
    found = needed_for(season, crop, number, chosen, raising, per_cell)
    needed = found.amount.cells if found.amount is not None else None
    holds = container or (_container_of(last) if last else "")
    holds = holds or _usual_container(season, raising, needed)
    cells = _cells(season, raising, holds, needed, per_cell)
    seeds = cells * per_cell if cells is not None else needed
    how = _how(found, number)
    if needed is None and cells is not None:
        how = f"one {holds}, {per_cell} to a cell"
    window, span = _window(season, crop, day)
    germination = crop.germination
    return SowingPlan(
        wanted=number,
        seeds=seeds,
        cells=cells,
        per_cell=per_cell,
        raising=raising,
        container=holds,
        place=_place(season, crop, raising, window, last),
        covering=str(germination.covering) if germination else str(Covering.COMPOST),
        depth_mm=germination.depth_mm if germination else None,
        heat_c=germination.heat_c if germination else None,
        how=how,
        window=span,
        out_of_window=_out_of_window(span, day),
        like=last.id if last else "",
        minds=packet_words(chosen, seeds, crop, day),
    )


def _last_of(season: Season, crop: Crop) -> Batch | None:
    same = [b for b in season.batches.values() if b.crop == crop.key and b.sowing is not None]
    return max(same, key=lambda batch: (batch.begun, batch.id), default=None)


def _container_of(batch: Batch) -> str:
    return batch.records[0].text("container")


def _how(found: Needed, wanted: int | None) -> str:
    """How the number of seeds was come by."""
    if not wanted or found.known is None:
        return "say how many plants you want and the seed is reckoned"
    if found.amount is None:
        return found.fault
    told = f"; {found.told}" if found.told else ""
    return f"{wanted} ready nine times in ten, at {found.shares}{told}"


def _usual_container(season: Season, raising: str, needed: int | None) -> str:
    match raising:
        case Raising.TRAY if needed is not None and needed > FULL_TRAY_SEEDS:
            return "full tray"
        case Raising.TRAY if needed is not None and needed <= QUARTER_TRAY_SEEDS:
            return "quarter tray"
        case Raising.TRAY:
            return "half tray"
        case Raising.CELLS | Raising.CLUMPS:
            return "40-cell tray"
        case Raising.POTS:
            return "9 cm pot"
        case _:
            return ""


def cells_of(season: Season, container: str) -> int | None:
    """How many cells a container has; None where it is not known."""
    own = season.containers.get(container)
    if own is not None:
        return own.count("cells")
    usual = usual_called(container)
    return usual.cells if usual else None


def _cells(
    season: Season, raising: str, container: str, needed: int | None, per_cell: int
) -> int | None:
    """Cells to fill: those needed, else one whole container; None where it is sown broadcast."""
    if raising not in CELLED:
        return None
    if needed is not None:
        return needed
    return cells_of(season, container)


def containers_of(season: Season) -> tuple[str, ...]:
    """Names of all containers, the grower's own first."""
    own = tuple(season.containers)
    return (*own, *(name for name in USUAL_CONTAINERS if name not in own))


def _window(season: Season, crop: Crop, day: date) -> tuple[SowingWindow | None, Span | None]:
    year = season.site.year
    spans = [(window, window_span(crop, year, window, day)) for window in crop.windows]
    found = [(window, span) for window, span in spans if span is not None]
    if not found:
        return None, None
    return min(found, key=lambda pair: (day not in pair[1], pair[1].opens))


def out_of_window(season: Season, crop: Crop, day: date) -> str:
    """A sentence where a day lies outside the crop's sowing windows, else empty."""
    return _out_of_window(_window(season, crop, day)[1], day)


def too_many_words(crop: Crop, seeds: int | None) -> str:
    """What so many seeds weigh, where nobody sows as many by hand; empty where it is usual."""
    if seeds is None or seeds <= MANY_SEEDS:
        return ""
    weight = f", {seeds / crop.seeds_per_g:,.0f} g" if crop.seeds_per_g else ""
    return f"{seeds:,} seeds{weight}: more than are usually sown at once"


def _out_of_window(span: Span | None, day: date) -> str:
    if span is None or day in span:
        return ""
    year = f" {span.opens.year}" if span.opens.year != day.year else ""
    return f"Outside its sowing window: the next one opens {say_day(span.opens)}{year}"


def _place(
    season: Season, crop: Crop, raising: str, window: SowingWindow | None, last: Batch | None
) -> str:
    if raising == Raising.DRILL:
        where = "outdoors"
    elif window is not None and window.where in PLACES_FOR:
        where = window.where
    else:
        where = "heat" if crop.germination and crop.germination.heat_c else "cover"
    before = last.records[0].text("place") if last else ""
    if before and season.place(before) is not None:
        return before
    kinds = PLACES_FOR[where]
    fitting = [place for place in season.places if place.kind in kinds]
    if where == "shade":
        fitting = [p for p in fitting if p.shaded] or fitting
    if raising != Raising.DRILL and where == "outdoors":
        fitting = [p for p in fitting if p.kind is not PlaceKind.BED] or fitting
    standing = _standing(season)
    best = min(
        fitting,
        key=lambda place: (_full(place, standing), kinds.index(place.kind), place.order),
        default=None,
    )
    return best.code if best else ""


def _standing(season: Season) -> dict[str, int]:
    found: dict[str, int] = {}
    for batch in season.batches.values():
        for part in batch.parts:
            if not part.ended and part.place:
                found[part.place] = found.get(part.place, 0) + 1
    return found


def _full(place: Place, standing: dict[str, int]) -> bool:
    return place.trays is not None and standing.get(place.code, 0) >= math.floor(place.trays)


def packets_for(season: Season, crop: str) -> tuple[Packet, ...]:
    """The packets of a crop that are not used up, the freshest first."""
    found = [p for p in season.packets.values() if p.crop == crop and p.left != 0]
    return tuple(sorted(found, key=lambda packet: (-(packet.year or 0), packet.id)))


def label_sides(
    crop: Crop, variety: str, day: date, batch: str, seeds: int | None
) -> tuple[str, str]:
    """What goes on the front and on the back of the label."""
    front = f"{crop.name} '{variety}'" if variety else crop.name
    amount = f"{seeds} {'seed' if seeds == 1 else 'seeds'}" if seeds else ""
    parts: Iterable[str] = (say_date(day), batch, amount)
    return front, ", ".join(part for part in parts if part)
