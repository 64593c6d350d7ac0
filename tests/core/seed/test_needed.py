"""Seeds for the plants wanted: one number wherever it is told."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from scipy.stats import binom

from benchround.core.planning.plan import cells_for
from benchround.core.record import Figure, Kind, Record
from benchround.core.season import Season
from benchround.core.seed.sowing_plan import plan_sowing
from benchround.core.task import Family
from benchround.crops.library import load_library
from benchround.feeds.next_time import findings
from benchround.feeds.next_year import next_year
from benchround.rounds.build import build_round
from tests.folding import fold_season
from tests.rounds.small_season import LONDON

DAY = date(2027, 4, 20)
LIBRARY = load_library()
Event = tuple[int, str, Kind, dict[str, Figure]]


def season(*events: Event) -> Season:
    """Days count from 20 April."""
    begun: list[Event] = [
        (-150, "", Kind.SITE, {**LONDON}),
        (-150, "warm", Kind.PLACE, {"name": "Warm box", "kind": "propagator", "set_c": 20.0}),
    ]
    return fold_season(
        [
            Record(f"N{number:04d}", DAY + timedelta(days=day), kind, about, said)
            for number, (day, about, kind, said) in enumerate([*begun, *events])
        ],
        LIBRARY,
    )


def told_everywhere(found: Season, crop: str, wanted: int) -> dict[str, int | None]:
    """The number on the sheet, in the round and for next year; b01 is sown, b02 is planned."""
    sow = next(
        task
        for task in build_round(found, DAY).tasks
        if task.family is Family.SOW and task.about == "b02"
    )
    return {
        "sheet": plan_sowing(found, LIBRARY[crop], DAY, wanted).seeds,
        "round": int(str(next(ask.default for ask in sow.asks if ask.into == "seeds"))),
        "next year": next(one.seeds for one in next_year(found, DAY) if one.wanted == wanted),
    }


def sown(crop: str, wanted: int, *more: Event, **said: Figure) -> Season:
    first: dict[str, Figure] = {"crop": crop, "wanted": wanted, "place": "warm", **said}
    when = {"place": "warm", "sow_on": DAY.isoformat()}
    planned: dict[str, Figure] = {"crop": crop, "wanted": wanted, **when}
    return season(
        (-30, "b01", Kind.SOWN, first), *more, (-1, "b02", Kind.PLANNED, planned)
    )  # fmt: skip


def test_sheet_round_and_next_year_ask_for_the_same_seed() -> None:
    """Cosmos, 30 wanted of cells: 44 at 85 % x 90 % are the fewest (binomial chance of scipy)."""
    found = told_everywhere(sown("cosmos", 30, seeds=40, raising="cells"), "cosmos", 30)
    assert found == dict.fromkeys(found, 44)
    chances = [float(binom.sf(29, seeds, 0.85 * 0.9)) for seeds in (43, 44)]
    assert chances[0] < 0.9 <= chances[1]


def test_they_still_agree_after_an_own_count_and_so_does_the_advice_to_sow_more() -> None:
    more: list[Event] = [
        (-22, "b01", Kind.FIRST_UP, {}),
        (-10, "b01", Kind.COUNTED, {"count": 20, "final": True}),
        (-2, "b01", Kind.PLANTED_OUT, {"count": 18}),
    ]
    story = sown("cosmos", 30, *more, seeds=40, raising="cells")
    found = told_everywhere(story, "cosmos", 30)
    assert len(set(found.values())) == 1
    (short,) = [one for one in findings(story) if "30 wanted, 18 planted" in one.found]
    assert short.therefore == f"sow {found['sheet']} seeds instead of 40"


def test_of_a_pot_that_is_not_thinned_every_seedling_is_a_plant() -> None:
    """Sweet pea, 5 to a pot and all kept: 32 plants take 10 pots, and 9 are too few (scipy)."""
    found = told_everywhere(sown("sweet-pea", 32, seeds=40, raising="pots"), "sweet-pea", 32)
    assert found == dict.fromkeys(found, 50)
    amount = cells_for(LIBRARY["sweet-pea"], 32)
    assert amount is not None and (amount.cells, amount.seeds) == (10, 50)
    sweet_pea = LIBRARY["sweet-pea"].germination
    assert sweet_pea is not None
    chances = [float(binom.sf(31, seeds, sweet_pea.share * 0.9)) for seeds in (45, 50)]
    assert chances[0] < 0.9 <= chances[1]


@pytest.mark.parametrize("per_cell", [2, 4])
def test_more_seeds_a_cell_than_plants_are_left_in_it(per_cell: int) -> None:
    """Chard, 2 left a cell: of 2 seeds each plant has one, of 4 it has two (scipy)."""
    plan = plan_sowing(
        season(
            (-30, "b01", Kind.SOWN, {"crop": "chard", "per_cell": per_cell, "raising": "cells"})
        ),
        LIBRARY["chard"],
        DAY,
        20,
    )
    chard = LIBRARY["chard"].germination
    assert chard is not None and plan.cells is not None and plan.seeds == plan.cells * per_cell
    p = (1 - (1 - chard.share) ** (per_cell // 2)) * 0.9
    places = [binom.sf(19, 2 * number, p) for number in (plan.cells - 1, plan.cells)]
    assert places[0] < 0.9 <= places[1]
