"""Watering as the round asks for it, and the tray's water behind it.

"S03" is UC Santa Cruz, Teaching Organic Farming & Gardening, Unit 1.3 Supplement 1 (read). "the
scenario" is the invented acceptance scenario, written by hand before the program. Balances worked
by hand beside a test are closed forms of loss = ET0 x area and the shares printed in the module.
"""

from __future__ import annotations

from datetime import date, time, timedelta

import pytest

from benchround.core.batch.batch import Batch
from benchround.core.record import Figure, Kind
from benchround.core.season import Season
from benchround.core.task import Family, Harm, Slot, Standing, Task
from benchround.core.water.balance import RootStage, days_left, ml_from_mm
from benchround.core.water.place import Exposure
from benchround.core.water.run import run_balance
from benchround.core.water.tray_fit import days_at
from benchround.core.water.tray_outlook import TrayOutlook, tray_outlook, water_away
from benchround.core.water.tray_place import et0_mm
from benchround.rounds.build import build_round
from tests.rounds.small_season import DAY, GLASS, Story, begin, figures_of, outlook, place, sown
from tests.sample.story import DAY_0

F = Family
BENCH: dict[str, Figure] = {"name": "Bench", "kind": "bench"}


def bench(crop: str = "hardling", days: int = 6, /, **figures: Figure) -> Story:
    """One tray sown so many days ago on an open bench, dry sunny weather all along."""
    story = begin()
    place(story, "bench-1", **BENCH)
    weather(story)
    sown(story, "b01", crop, DAY - timedelta(days=days), "bench-1", **figures)
    return story


def weather(story: Story, back: int = 12, ahead: int = 12) -> None:
    for number in range(-back, ahead):
        outlook(story, DAY + timedelta(days=number), 8, 20, sun_h=8, rain_mm=0)


def tray(story: Story, day: date = DAY, name: str = "b01", part: str = "") -> TrayOutlook:
    season = story.season()
    batch: Batch = season.batches[name]
    found = tray_outlook(season, batch, batch.part(part), day)
    assert found is not None
    return found


def water(story: Story, day: date = DAY) -> list[Task]:
    return story.tasks(day, F.WATER)


def watered(story: Story, back: int, name: str = "b01", /, **figures: Figure) -> None:
    story.tell(DAY - timedelta(days=back), Kind.WATERED, name, **figures)


# --- against published figures ----------------------------------------------------------------


def test_a_day_of_lyon_in_july() -> None:
    """Allen et al. 1998, FAO-56, example 20 by eq. 52: 14.8 to 26.6 C is 5.0 mm (second-hand)."""
    assert et0_mm(45.72, 196, 14.8, 26.6) == pytest.approx(5.03, abs=0.05)


LASTING = [
    # container, days at 3 mm a day until all easily available water is gone
    ("full tray", 3.6),
    ("84-cell tray", 1.8),
    ("40-cell tray", 2.8),
]


@pytest.mark.parametrize(("name", "days"), LASTING, ids=[name for name, _ in LASTING])
def test_how_long_a_tray_lasts(name: str, days: float) -> None:
    """The watering table WAT-09: available water 25 % of the compost, 3 mm a day (computed)."""
    found = tray(bench(container=name))
    loss = ml_from_mm(3.0, found.holder.water.area_m2)
    lasts = days_left(found.holder.water, loss)
    assert lasts == pytest.approx(days, abs=0.1)


# --- the scenario ---------------------------------------------------------------------------


@pytest.mark.parametrize("name", ["b13", "b02", "b25", "b20"])
def test_the_morning_bottom_waters(sample: Season, name: str) -> None:
    """The scenario, 09:00: bottom-water b13, b02, b25, b20; uncovered seed dries first."""
    task = build_round(sample, DAY_0).find(f"{F.WATER}:{name}:")
    assert task is not None
    assert task.standing is Standing.DUE
    assert task.overdue_days == 0
    assert task.instruction.startswith("Water from below")
    assert "stand in 2-3 cm of water, 10-30 minutes" in task.instruction
    assert task.ticks[0].figures == {"how": "below"}
    assert "C50" in task.cautions  # children live there, and trays stand in water
    bare = name == "b13"
    assert (task.slot is Slot.FIRST, task.harm is Harm.DIES_TODAY) == (bare, bare)


def test_roots_that_fill_their_cells_are_not_watered_every_day(sample: Season) -> None:
    names = {task.about for task in build_round(sample, DAY_0).today if task.family is F.WATER}
    assert not names & {"b15", "b16", "b17", "b18", "b21"}


def test_grown_plants_in_small_pots_want_water_the_day_after_a_fine_one(sample: Season) -> None:
    """Common practice, no source: in leaf, a 9 cm pot goes a fine day in May and no more."""
    tasks = build_round(sample, DAY_0).today
    for name in ("b01", "b04", "b27"):
        [task] = [task for task in tasks if (task.family, task.about) == (F.WATER, name)]
        assert task.standing is Standing.DUE


def test_beds_rows_and_the_fridge_are_no_trays(sample: Season) -> None:
    for name in ("b08", "b22", "b23", "b24", "b30"):
        batch = sample.batches[name]
        assert tray_outlook(sample, batch, batch.main, DAY_0) is None


def test_a_hot_day_asks_for_four_rounds(sample: Season) -> None:
    """S03: look in the morning, at midday, at 15:00 and at about 17:00 on a hot day."""
    hot = build_round(sample, DAY_0 + timedelta(days=1))
    lines = [task.instruction for task in hot.tasks if task.family is F.WATER]
    assert lines
    assert all("midday, 15:00 and 17:00" in line for line in lines)


# --- the books --------------------------------------------------------------------------------


def test_the_level_is_what_went_in_less_what_the_days_took() -> None:
    """By hand: 720 ml in a full 40-cell tray, ET0 of two days over 0.0851 m2."""
    story = bench(container="40-cell tray", covering="compost")
    watered(story, 2)
    found = tray(story)
    number = (DAY - timedelta(days=2)).timetuple().tm_yday
    lost = sum(et0_mm(52.5, number + n, 8, 20) for n in (0, 1)) * 0.37 * 0.23 * 1000
    assert found.left_ml == pytest.approx(720 - lost, abs=0.01)
    assert found.allowed_ml == pytest.approx(0.35 * 720)


def test_the_books_close_to_rounding() -> None:
    story = bench(container="84-cell tray")
    watered(story, 5)
    found = tray(story)
    season = story.season()
    days = days_at(season, season.batches["b01"].main, found.leaves, found.full.day, DAY, 1.0)
    states = run_balance(found.holder.water, days)
    assert sum(abs(state.residual_ml) for state in states) < 1e-6
    assert states[-1].end_ml == pytest.approx(found.left_ml)


def test_rain_that_fell_fills_the_tray_and_forecast_rain_does_not() -> None:
    story = bench(container="40-cell tray")
    watered(story, 3)
    dry = tray(story).left_ml
    outlook(story, DAY - timedelta(days=1), 8, 20, rain_mm=30)
    outlook(story, DAY, 8, 20, rain_mm=30)
    found = tray(story)
    assert dry < 400
    assert found.left_ml == pytest.approx(720)
    assert found.by is not None or found.runs_out is None or found.runs_out > DAY
    assert found.today.rain_mm == 0.0


def test_a_dome_over_the_tray_keeps_its_water_until_it_comes_off() -> None:
    story = bench(container="40-cell tray", covered=True)
    assert water(story) == []
    assert tray(story).today.exposure is Exposure.SHUT
    story.tell(DAY - timedelta(days=4), Kind.UNCOVERED, "b01", cover_off=True)
    assert len(water(story)) == 1


def test_a_cover_nobody_took_off_in_the_books_is_off_once_seedlings_are_up() -> None:
    """Off heat and cover the day the first shows: an extension column of 2021 (read).

    Uncovered and warm a tray of seedlings dries within days: common practice, no source.
    """
    story = begin()
    place(story, "warm", name="Propagator", kind="propagator", set_c=20)
    weather(story)
    figures: dict[str, Figure] = {"container": "40-cell tray", "covered": True}
    sown(story, "b01", "hardling", DAY - timedelta(days=9), "warm", **figures)
    covered = tray(story)
    assert covered.today.exposure is Exposure.SHUT
    assert covered.again is None
    story.tell(DAY - timedelta(days=4), Kind.FIRST_UP, "b01", count=30)
    story.tell(DAY, Kind.WATERED, "b01")
    up = tray(story)
    assert up.today.exposure is Exposure.INDOORS
    assert up.again is not None and (up.again - DAY).days <= 6


def test_a_dry_tray_does_not_say_that_the_day_takes_nothing() -> None:
    """By hand: the day's millimetres over 0.085 m2 of a 40-cell tray are wanted all the same."""
    story = bench("hardling", 9, container="40-cell tray")
    watered(story, 7)
    found = tray(story)
    assert found.left_ml == 0.0
    wanted = found.today.loss_mm * found.holder.water.area_m2 * 1000
    [task] = water(story)
    assert any(f"today wants {wanted:.0f} ml, 0 ml is there: " in f for f in task.why.figures)
    assert not any("today takes 0 ml" in figure for figure in task.why.figures)


@pytest.mark.parametrize(("late", "asked"), [(1, True), (21, True), (22, False), (242, False)])
def test_turning_let_go_for_weeks_is_no_habit_and_not_asked_for_ever(
    late: int, asked: bool
) -> None:
    """Seedlings are turned once or twice a week (UC Santa Cruz, read); the three weeks are ours."""
    story = begin()
    place(story, "sill", name="Sill", kind="windowsill")
    up = DAY - timedelta(days=late + 3)
    sown(story, "b01", "hardling", up - timedelta(days=9), "sill")
    story.tell(up, Kind.SEED_LEAVES, "b01")
    assert bool(story.tasks(DAY, F.TURN)) is asked


EXPOSURES = [
    ({"kind": "greenhouse bench"}, Exposure.UNDER_GLASS),
    ({"kind": "propagator"}, Exposure.INDOORS),
    ({"kind": "windowsill"}, Exposure.INDOORS),
    ({"kind": "tunnel"}, Exposure.UNDER_GLASS),
    ({"kind": "bench"}, Exposure.OPEN),
    ({"kind": "bench", "shade_share": 0.5}, Exposure.SHADED),
    ({"kind": "frame", "glazing": "slats"}, Exposure.SHADED),
]


@pytest.mark.parametrize(
    ("figures", "exposure"), EXPOSURES, ids=[str(figures) for figures, _ in EXPOSURES]
)
def test_where_a_tray_stands_decides_how_it_dries(
    figures: dict[str, Figure], exposure: Exposure
) -> None:
    story = begin()
    place(story, "spot", **figures)
    weather(story)
    sown(story, "b01", "hardling", DAY - timedelta(days=2), "spot")
    assert tray(story).today.exposure is exposure


LIDS = [
    (16.0, "", Exposure.CRACKED),
    (24.0, "", Exposure.OPEN),
    (24.0, "shut", Exposure.SHUT),
    (24.0, "crack", Exposure.CRACKED),
    (16.0, "off", Exposure.OPEN),
]


@pytest.mark.parametrize(("high", "lid", "exposure"), LIDS)
def test_in_a_frame_the_lid_as_noted_decides(high: float, lid: str, exposure: Exposure) -> None:
    story = begin()
    place(story, "frame-a", **GLASS)
    outlook(story, DAY, 8, high, rain_mm=5)
    sown(story, "b01", "hardling", DAY - timedelta(days=2), "frame-a")
    if lid:
        story.tell_at(time(6), DAY, Kind.LID, "frame-a", position=lid)
    found = tray(story)
    assert found.today.exposure is exposure
    assert found.today.lid_off is (lid == "off")


def test_uncovered_seed_dries_before_covered_seed_before_seedlings() -> None:
    bare = tray(bench("dustling", 3, container="half tray"))
    covered = tray(bench("hardling", 3, container="half tray"))
    grown = bench("hardling", 9, container="half tray")
    grown.tell(DAY - timedelta(days=3), Kind.TRUE_LEAVES, "b01", count=30)
    seedlings = tray(grown)
    assert bare.roots is RootStage.BARE_SEED
    assert covered.roots is RootStage.COVERED_SEED
    assert seedlings.roots is RootStage.SEEDLING
    assert bare.allowed_ml < covered.allowed_ml < seedlings.allowed_ml


# --- when it is due ---------------------------------------------------------------------------


def test_a_new_tray_comes_due_the_day_its_water_runs_out_and_then_is_overdue() -> None:
    """By hand: 0.35 of 8.46 mm is 2.96 mm, gone on the first day of more than that."""
    story = bench("hardling", 0, container="40-cell tray")
    assert water(story) == []
    [task] = water(story, DAY + timedelta(days=1))
    assert (task.standing, task.overdue_days) == (Standing.DUE, 0)
    [task] = water(story, DAY + timedelta(days=2))
    assert (task.standing, task.overdue_days) == (Standing.OVERDUE, 1)
    assert any("watered in Wed 27 May" in figure for figure in task.why.figures)


def test_watered_in_the_books_it_stays_overdue_until_it_is_watered() -> None:
    story = bench("hardling", 9, container="40-cell tray")
    watered(story, 7)
    [task] = water(story)
    assert task.overdue_days == 6
    assert task.harm is Harm.DIES_TODAY


def test_where_no_watering_was_ever_written_it_is_due_and_stays_due_but_never_overdue() -> None:
    """Common practice, no source: a tray nobody wrote a watering of has to be felt."""
    story = bench("hardling", 20, container="84-cell tray")
    for ahead in range(5):
        [task] = water(story, DAY + timedelta(days=ahead))
        assert task.standing is Standing.DUE
        assert "no watering written down since Thu 7 May, feel it" in task.instruction
        assert "no watering written down since Thu 7 May: feel it" in task.why.figures
    story.tell(DAY, Kind.MOISTURE, "b01", said="still wet")
    assert water(story) == []


@pytest.mark.parametrize("kind", [Kind.SEEN, Kind.TURNED])
def test_a_tray_looked_after_without_a_watering_comes_due_a_dry_interval_later(kind: Kind) -> None:
    """By hand: 0.35 of 8.46 mm is gone on the first day of more than that, as after a watering."""
    story = bench("hardling", 20, container="40-cell tray")
    story.tell(DAY, kind, "b01")
    assert water(story) == []
    for ahead in range(1, 6):
        [task] = water(story, DAY + timedelta(days=ahead))
        assert task.standing is Standing.DUE
    story.tick(task, DAY + timedelta(days=5))
    assert water(story, DAY + timedelta(days=5)) == []


def test_a_look_teaches_nothing_of_a_tray_whose_last_watering_is_not_known() -> None:
    story = bench("hardling", 20, container="40-cell tray")
    story.tell(DAY - timedelta(days=2), Kind.SEEN, "b01")
    story.tell(DAY, Kind.MOISTURE, "b01", said="still wet")
    assert tray(story).factor.looks == 0


def test_seedlings_weeks_up_are_no_longer_seed_under_a_cover() -> None:
    """Lettuce shows true leaves about a week after it is up; the crop here says ten days."""
    story = bench("hardling", 30, container="40-cell tray")
    story.tell(DAY - timedelta(days=21), Kind.FIRST_UP, "b01", count=30)
    assert tray(story, DAY - timedelta(days=20)).roots is RootStage.COVERED_SEED
    assert tray(story).roots is RootStage.SEEDLING


def test_a_found_tray_with_no_past_is_reckoned_from_the_day_it_was_found() -> None:
    story = begin()
    place(story, "bench-1", **BENCH)
    weather(story)
    story.tell(
        DAY - timedelta(days=9), Kind.FOUND, "b01", crop="unknown", count=30, place="bench-1"
    )
    found = tray(story)
    assert found.full.day == DAY - timedelta(days=9)
    assert found.to_feel
    assert "container not told: 40-cell tray taken" in found.holder.assumed


def test_a_watering_of_the_whole_bench_counts_for_what_stood_there() -> None:
    story = bench(container="40-cell tray")
    story.tell(DAY - timedelta(days=1), Kind.WATERED, "bench-1", of_place=True)
    assert tray(story).full.day == DAY - timedelta(days=1)


CARRIED: list[tuple[Kind, dict[str, Figure]]] = [
    (Kind.MOVED, {"place": "bench-2"}),
    (Kind.HARDENING_BEGUN, {"place": "bench-2"}),
    (Kind.HARDENING_BEGUN, {}),
]


@pytest.mark.parametrize("back", [0, 1, 3])
@pytest.mark.parametrize(("kind", "figures"), CARRIED, ids=["moved", "into the frame", "stays"])
def test_carried_elsewhere_a_tray_is_no_fuller(
    kind: Kind, figures: dict[str, Figure], back: int
) -> None:
    """Carrying adds no water (conservation of mass): watered 5 days ago it is as dry as before."""
    story = bench("hardling", 30, container="40-cell tray")
    story.tell(DAY - timedelta(days=21), Kind.FIRST_UP, "b01", count=30)
    story.tell(DAY - timedelta(days=5), Kind.WATERED, "bench-1", of_place=True)
    place(story, "bench-2", **BENCH)
    before = tray(story)
    assert before.dry_since is not None and before.full.written
    assert len(water(story)) == 1
    story.tell(DAY - timedelta(days=back), kind, "b01", **figures)
    after = tray(story)
    assert after.left_ml == pytest.approx(before.left_ml)
    assert (after.full.day, after.full.written) == (before.full.day, True)
    [again] = water(story)
    assert again.place == figures.get("place", "bench-1")
    assert "no watering written down" not in again.instruction


def test_what_the_old_bench_was_given_after_it_left_is_not_its_water() -> None:
    story = bench(container="40-cell tray")
    story.tell(DAY - timedelta(days=4), Kind.WATERED, "bench-1", of_place=True)
    place(story, "bench-2", **BENCH)
    story.tell(DAY - timedelta(days=2), Kind.MOVED, "b01", place="bench-2")
    story.tell(DAY - timedelta(days=1), Kind.WATERED, "bench-1", of_place=True)
    assert tray(story).full.day == DAY - timedelta(days=4)
    story.tell(DAY, Kind.WATERED, "bench-2", of_place=True)
    assert tray(story).full.day == DAY


def test_each_day_dries_it_as_the_place_did_where_it_stood() -> None:
    """A day in the propagator and one on the bench lie between two days at either."""
    story = bench("hardling", 2, container="full tray")
    place(story, "warm", name="Propagator", kind="propagator")
    outside = tray(story).left_ml
    story.tell(DAY - timedelta(days=2), Kind.MOVED, "b01", place="warm")
    inside = tray(story).left_ml
    story.tell(DAY - timedelta(days=1), Kind.MOVED, "b01", place="bench-1")
    assert tray(story).left_ml == pytest.approx((inside + outside) / 2, abs=1)
    assert inside > outside + 10


def test_ticked_it_is_gone_and_undo_brings_it_back() -> None:
    story = bench(container="40-cell tray")
    [task] = water(story)
    taken = story.tick(task, DAY)
    assert taken[0].kind is Kind.WATERED
    assert water(story) == []
    assert tray(story).left_ml == pytest.approx(720)
    story.undo(taken, DAY)
    assert water(story) == [task]


def test_watering_the_place_today_clears_every_tray_on_it() -> None:
    story = bench(container="40-cell tray")
    sown(story, "b02", "dustling", DAY - timedelta(days=3), "bench-1", container="half tray")
    assert {task.about for task in water(story)} == {"b01", "b02"}
    story.tell(DAY, Kind.WATERED, "bench-1", of_place=True)
    assert water(story) == []


def test_spares_are_watered_on_their_own() -> None:
    story = bench("hardling", 60, container="84-cell tray")
    for back, kind in ((50, Kind.TRUE_LEAVES), (30, Kind.HARDENING_BEGUN)):
        story.tell(DAY - timedelta(days=back), kind, "b01", count=30)
    story.tell(DAY - timedelta(days=8), Kind.PLANTED_OUT, "b01", count=20, place="bed-1")
    story.tell(DAY - timedelta(days=8), Kind.MOVED, "b01", part="spares", place="bench-1")
    place(story, "bed-1", kind="bed")
    [task] = water(story)
    assert (task.about, task.part) == ("b01", "spares")
    story.tick(task, DAY)
    assert water(story) == []


def test_thinning_does_not_give_a_seedling_an_older_plants_roots() -> None:
    """Thinning takes neighbours away, and roots reach no further for it (common practice)."""
    story = bench("hardling", 30, container="40-cell tray")
    story.tell(DAY - timedelta(days=5), Kind.TRUE_LEAVES, "b01", count=40)
    watered(story, 1)
    before = tray(story)
    assert before.roots is RootStage.SEEDLING
    story.tell(DAY, Kind.THINNED, "b01", count=30)
    after = tray(story)
    assert (after.roots, after.allowed_left_ml) == (before.roots, before.allowed_left_ml)
    [task] = water(story)
    assert task.ticks[0].figures == {"how": "below"}


def test_pricked_out_and_later_is_watered_from_above() -> None:
    story = bench("hardling", 40, container="half tray")
    story.tell(DAY - timedelta(days=20), Kind.TRUE_LEAVES, "b01", count=30)
    story.tell(DAY - timedelta(days=2), Kind.PRICKED_OUT, "b01", count=30)
    [task] = water(story)
    assert task.instruction.startswith("Water from above")
    assert task.ticks[0].figures == {"how": "above"}
    assert "container not told: 40-cell tray taken" in task.why.figures


# --- containers -------------------------------------------------------------------------------


def test_the_growers_own_container_goes_before_the_usual_one() -> None:
    story = bench(container="plug tray")
    assert tray(story).holder.assumed == (
        "'plug tray' is not among the containers: 40-cell tray taken",
    )
    story.tell(
        date(2026, 1, 1),
        Kind.CONTAINER,
        "plug tray",
        cells=60,
        cell_ml=20.0,
        length_m=0.4,
        width_m=0.2,
    )
    assert tray(story).holder.water.capacity_ml == pytest.approx(60 * 20 * 0.25)
    assert tray(story).holder.assumed == ()


def test_an_impossible_container_is_not_used_and_named() -> None:
    story = bench(container="plug tray")
    story.tell(
        date(2026, 1, 1),
        Kind.CONTAINER,
        "plug tray",
        cells=60,
        cell_ml=1e9,
        length_m=0.4,
        width_m=2,
    )
    assert tray(story).holder.name == "40-cell tray"
    assert "not described in full, or not possible" in tray(story).holder.assumed[0]


GUESSES: list[tuple[dict[str, Figure], str]] = [
    ({"raising": "tray"}, "half tray"),
    ({"raising": "cells", "cells": 24}, "24-cell tray"),
    ({"raising": "cells", "cells": 50}, "60-cell tray"),
    ({"raising": "cells", "cells": 80}, "40-cell tray"),
    ({"raising": "cells", "cells": 200}, "200-cell tray"),
    ({"raising": "cells", "cells": 240}, "240-cell tray"),
    ({"raising": "cells", "cells": 210}, "240-cell tray"),
    ({"raising": "clumps", "cells": 30}, "40-cell tray"),
    ({"raising": "pots", "cells": 8}, "9 cm pot"),
]


@pytest.mark.parametrize(("figures", "name"), GUESSES, ids=[str(f) for f, _ in GUESSES])
def test_an_untold_container_is_guessed_by_how_it_was_sown(
    figures: dict[str, Figure], name: str
) -> None:
    found = tray(bench("hardling", 3, **figures))
    assert found.holder.name == name
    assert found.holder.assumed == (f"container not told: {name} taken",)


# --- learning -----------------------------------------------------------------------------------


def test_still_wet_puts_it_off_and_slows_the_tray() -> None:
    story = bench("hardling", 9, container="40-cell tray")
    watered(story, 1)
    assert len(water(story)) == 1
    story.tell(DAY, Kind.MOISTURE, "b01", said="still wet")
    assert water(story) == []
    found = tray(story, DAY + timedelta(days=1))
    assert found.factor.looks == 1
    assert found.factor.factor < 1.0
    assert found.left_ml > 720 - 0.81 * 0.35 * 720 - found.lost_ml - 1.0


def test_already_dry_makes_it_due_and_speeds_the_tray() -> None:
    story = bench("hardling", 1, container="deep pot", raising="pots")
    assert water(story) == []
    story.tell(DAY, Kind.MOISTURE, "b01", said="already dry")
    [task] = water(story)
    assert "called already dry today" in task.why.figures
    assert tray(story).factor.factor > 1.0


def test_dry_again_after_todays_watering_is_due_again() -> None:
    story = bench("hardling", 9, container="40-cell tray")
    watered(story, 0)
    assert water(story) == []
    story.tell(DAY, Kind.MOISTURE, "b01", said="already dry")
    assert len(water(story)) == 1
    watered(story, 0)
    assert water(story) == []


def test_a_look_at_the_whole_place_is_learnt_by_all_trays_there() -> None:
    story = bench("hardling", 9, container="40-cell tray")
    sown(story, "b02", "hardling", DAY - timedelta(days=9), "bench-1", container="40-cell tray")
    story.tell(DAY - timedelta(days=3), Kind.WATERED, "bench-1", of_place=True)
    story.tell(DAY - timedelta(days=1), Kind.MOISTURE, "bench-1", of_place=True, said="still wet")
    for name in ("b01", "b02"):
        assert tray(story, DAY, name).factor.factor < 1.0


def test_two_weighings_settle_the_factor() -> None:
    """By hand: half of what two days of ET0 over the tray would take gives a factor of 0.5."""
    story = bench("hardling", 9, container="40-cell tray")
    watered(story, 3)
    number = (DAY - timedelta(days=3)).timetuple().tm_yday
    modelled = sum(et0_mm(52.5, number + n, 8, 20) for n in (0, 1)) * 0.37 * 0.23 * 1000
    story.tell(DAY - timedelta(days=3), Kind.WEIGHED, "b01", grams=2200.0)
    story.tell(DAY - timedelta(days=1), Kind.WEIGHED, "b01", grams=2200.0 - modelled / 2)
    found = tray(story)
    assert found.factor.weighings == 1
    assert found.factor.factor == pytest.approx(0.5, abs=1e-6)


@pytest.mark.parametrize("spoiled", ["watered", "heavier", "rained on"])
def test_weighings_that_cannot_be_a_pair_are_left_out(spoiled: str) -> None:
    story = bench("hardling", 9, container="40-cell tray")
    story.tell(DAY - timedelta(days=3), Kind.WEIGHED, "b01", grams=2200.0)
    if spoiled == "watered":
        watered(story, 2)
    if spoiled == "rained on":
        outlook(story, DAY - timedelta(days=2), 8, 20, rain_mm=4)
    later = 2300.0 if spoiled == "heavier" else 1900.0
    story.tell(DAY - timedelta(days=1), Kind.WEIGHED, "b01", grams=later)
    assert tray(story).factor.weighings == 0


def test_words_that_are_no_look_are_passed_over() -> None:
    story = bench("hardling", 9, container="40-cell tray")
    watered(story, 2)
    story.tell(DAY - timedelta(days=1), Kind.MOISTURE, "b01", said="damp-ish")
    assert tray(story).factor.looks == 0


# --- away, and odd input ------------------------------------------------------------------------


def test_a_weekend_away_names_the_trays_that_will_not_last() -> None:
    """By hand: 4.1 mm a day goes from 2.2 mm (bare seed), 3.8 mm (covered) and 11.4 mm (rooted).

    The rooted plant, grown to 22.5 cm, dries 4.9 times its pot: 20 mm a day over it.
    """
    story = bench("hardling", 3, container="half tray")
    sown(story, "b02", "dustling", DAY - timedelta(days=3), "bench-1", container="half tray")
    sown(story, "b03", "hardling", DAY - timedelta(days=90), "bench-1", container="9 cm pot")
    story.tell(DAY - timedelta(days=60), Kind.TRUE_LEAVES, "b03", count=9)
    story.tell(DAY - timedelta(days=40), Kind.POTTED_ON, "b03", count=9, container="9 cm pot")
    season = story.season()
    assert water_away(season, DAY, 0) == ()
    one_day = water_away(season, DAY, 1)
    assert [gone.batch for gone in one_day] == ["b01", "b02", "b03"]
    assert all(gone.dry_on == DAY and gone.absence.short_ml > 0.0 for gone in one_day)
    week = {gone.batch: gone.dry_on for gone in water_away(season, DAY, 7)}
    assert week["b03"] == DAY


def test_nothing_known_at_all_still_gives_a_task_that_says_so() -> None:
    story = Story()
    sown(story, "b01", "dustling", DAY - timedelta(days=2), "nowhere")
    tasks = story.tasks(DAY, F.WATER)
    assert tasks
    said = list(figures_of(tasks))
    assert any("a usual" in figure for figure in said)
    assert any("container not told" in figure for figure in said)


def test_a_round_of_the_past_does_not_stumble_over_later_records() -> None:
    story = bench("hardling", 5, container="40-cell tray")
    watered(story, 0)
    for back in range(8):
        build_round(story.season(), DAY - timedelta(days=back))
    assert tray(story, DAY - timedelta(days=3)).left_ml <= 720.0
