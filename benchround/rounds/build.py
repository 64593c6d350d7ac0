"""The day's round: every family asked about every batch, place and the site, then put in order.

`build_round` is pure: the same season and day give the same round. A new family is one new file
with a `propose` function, named in one of the three lists below. What it asks of other batches, of
a place's records or of seed has to be named in `footing` too, or the kept round would miss it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from datetime import date

from benchround.core.batch.batch import Batch
from benchround.core.dates import say_day
from benchround.core.lifecycle import Stage
from benchround.core.season import Season
from benchround.core.site import Place
from benchround.core.task import Round, Slot, Standing, Task
from benchround.core.units import degrees
from benchround.rounds import (
    airing,
    bulbs,
    clearing,
    counting,
    deadheading,
    feeding,
    flower_watch,
    frost_cover,
    frosted,
    hardening,
    lids,
    looking,
    overwintering,
    pests,
    pinching,
    planting_out,
    potting_on,
    pricking_out,
    relabelling,
    resowing,
    seed_saving,
    soaking,
    sowing,
    sowing_in_turn,
    spares,
    supporting,
    thermometer,
    thinning,
    turning,
    uncovering,
    washing,
    watering,
    weeding,
)
from benchround.rounds.asked_at import ASKED_AT, BatchFamily
from benchround.rounds.proposal import Proposal, of_batch, of_place, of_site
from benchround.rounds.standing import instead_of_the_missed
from benchround.rounds.view import BatchView, PlaceView, SiteView

PlaceFamily = Callable[[PlaceView], Iterator[Proposal]]
SiteFamily = Callable[[SiteView], Iterator[Proposal]]

BATCH_FAMILIES: tuple[BatchFamily, ...] = (
    soaking.propose,
    sowing.propose,
    sowing_in_turn.propose,
    looking.propose,
    uncovering.propose,
    resowing.propose,
    counting.propose,
    watering.propose,
    thinning.propose,
    pricking_out.propose,
    potting_on.propose,
    pinching.propose,
    feeding.propose,
    turning.propose,
    weeding.propose,
    hardening.propose,
    planting_out.propose,
    spares.propose,
    supporting.propose,
    flower_watch.propose,
    deadheading.propose,
    seed_saving.propose,
    clearing.propose,
    bulbs.propose,
    relabelling.propose,
    pests.propose,
    washing.propose,
    overwintering.propose,
    airing.propose,
    frost_cover.propose,
    frosted.propose,
)
BY_LOG: tuple[BatchFamily, ...] = (watering.propose, airing.propose)
"""Those of them that ask what was recorded of a whole place: its waterings and its lids."""
NOT_BY_LOG = tuple(family for family in BATCH_FAMILIES if family not in BY_LOG)
PLACE_FAMILIES: tuple[PlaceFamily, ...] = (lids.propose,)
"""They are asked of places with lids."""
SITE_FAMILIES: tuple[SiteFamily, ...] = (thermometer.propose,)

Order = tuple[int, int, int, int, int, str, str, str]

DOING = (Standing.DUE, Standing.LATE, Standing.OVERDUE)
ORDER = {Standing.HELD: 1, Standing.EARLY: 2}


def build_round(season: Season, day: date) -> Round:
    """The round of a day: all tasks in walking order, and what was assumed in making them."""
    by_batch = tasks_of(season, season.batches.values(), day)
    tasks = [task for tasks in by_batch.values() for task in tasks]
    tasks.extend(common_tasks(season, day))
    return compose(season, tasks, day)


def tasks_of(
    season: Season,
    batches: Iterable[Batch],
    day: date,
    families: tuple[BatchFamily, ...] = BATCH_FAMILIES,
) -> dict[str, list[Task]]:
    """The tasks of batches by their ids, each in the order of the families.

    They rest on the batch, the places, the weather and the day. Every part is asked by one family
    before the next one asks: the few steps of one family over and over are done sooner than those
    of thirty families by turns (a fifth less time for 1,000 batches).
    """
    found: dict[str, list[Task]] = {}
    views_of: dict[str, list[BatchView]] = {}
    at_stage: dict[Stage, list[BatchView]] = {}
    for batch in batches:
        found[batch.id] = []
        crop = season.crop(batch.crop)
        for part in batch.parts:
            view = BatchView(season, batch, part, crop, day)
            at_stage.setdefault(part.stage, []).append(view)
            views_of.setdefault(batch.id, []).append(view)
    for family in families:
        stages = ASKED_AT.get(family)
        for stage, views in at_stage.items():
            if stages is None or stage in stages:
                for view in views:
                    for proposal in family(view):
                        task = of_batch(view, proposal)
                        if task is not None:
                            found[view.batch.id].append(task)
    for name, tasks in found.items():
        if any(task.standing is Standing.OVERDUE for task in tasks):
            found[name] = _asked_once(views_of[name], tasks)
    return found


def _asked_once(views: Iterable[BatchView], tasks: list[Task]) -> list[Task]:
    """A batch's tasks, with one question a part for steps that were missed for weeks."""
    parts = ((view, [task for task in tasks if task.part == view.part.name]) for view in views)
    return [task for view, own in parts for task in instead_of_the_missed(view, own)]


def common_tasks(season: Season, day: date) -> tuple[Task, ...]:
    """The tasks of places and of the site as a whole."""
    of_places = (task for place in season.places for task in place_tasks(season, place, day))
    return (*of_places, *site_tasks(season, day))


def place_tasks(season: Season, place: Place, day: date) -> tuple[Task, ...]:
    """Every task of one place; they rest on its records and on what stands there."""
    if not place.lidded:
        return ()
    view = PlaceView(season, place, standing_at(season, place.code, day), day)
    found = (of_place(view, p) for family in PLACE_FAMILIES for p in family(view))
    return tuple(task for task in found if task is not None)


def site_tasks(season: Season, day: date) -> tuple[Task, ...]:
    """The tasks of the site as a whole; they rest on the weather."""
    view = SiteView(season, day)
    found = (of_site(view, p) for family in SITE_FAMILIES for p in family(view))
    return tuple(task for task in found if task is not None)


def standing_at(season: Season, code: str, day: date) -> tuple[BatchView, ...]:
    """Every living part at a place."""
    return tuple(
        BatchView(season, batch, part, season.crop(batch.crop), day)
        for batch in season.standing_at(code)
        for part in batch.parts
        if part.place == code and not part.ended
    )


def standing_by_place(season: Season, day: date) -> dict[str, tuple[BatchView, ...]]:
    """Every living part by the place it stands at."""
    found: dict[str, list[BatchView]] = {}
    for batch in season.batches.values():
        for part in batch.parts:
            if not part.ended:
                view = BatchView(season, batch, part, season.crop(batch.crop), day)
                found.setdefault(part.place, []).append(view)
    return {place: tuple(views) for place, views in found.items()}


def compose(season: Season, tasks: list[Task], day: date) -> Round:
    """Put tasks in order and say what was assumed."""
    orders = {place.code: place.order for place in season.places}
    ordered = sorted(tasks, key=lambda task: order_of(orders, task))
    return Round(day, tuple(ordered), assumed(season, day), season.doubts)


def order_of(orders: Mapping[str, int], task: Task) -> Order:
    """What tasks are put in order by, places by their number on the morning walk."""
    slot = task.slot if task.standing in DOING else Slot.EVENING
    return (
        ORDER.get(task.standing, 0),
        slot,
        orders.get(task.place, 999 if task.place else 0),
        task.harm,
        -task.overdue_days,
        task.about,
        str(task.family),
        task.part,
    )


def assumed(season: Season, day: date) -> tuple[str, ...]:
    """What was taken for granted in making the round of a day."""
    said = list(season.site.assumed)
    if not season.weather.known_from(day):
        usual = season.weather.on_or_usual(day, season.site)
        said.append(
            f"no weather is known from {say_day(day)} on: a usual day of "
            f"{degrees(usual.min_c or 0.0)} to {degrees(usual.max_c or 0.0)} C is assumed, "
            "and no frost, rain or gale"
        )
    return tuple(said)
