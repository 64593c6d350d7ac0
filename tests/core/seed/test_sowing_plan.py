"""What stands in the sowing sheet before anything is typed."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import binom

from benchround.core.crop.crop import Covering
from benchround.core.record import Figure, Kind, Record
from benchround.core.season import Season
from benchround.core.seed.quantity import SURVIVAL, WANTED_CHANCE, how_many
from benchround.core.seed.sowing_plan import (
    cells_of,
    containers_of,
    label_sides,
    packets_for,
    plan_sowing,
)
from tests.crops.published import KEYS, LIBRARY, crop
from tests.folding import fold_season
from tests.sample.story import DAY_0, PLACES, SITE, records

SPRING = date(2026, 4, 5)
Line = tuple[date, Kind, str, dict[str, Figure]]


def season(*lines: Line) -> Season:
    """The sample's site and places, and what else happened."""
    begun = date(2025, 11, 1)
    told: list[Line] = [(begun, Kind.SITE, "", SITE)]
    told += [
        (begun, Kind.PLACE, code, {**said, "order": order})
        for order, (code, said) in enumerate(PLACES, start=1)
    ]
    return fold_season(
        [
            Record(f"{number:04d}", day, kind, about, said)
            for number, (day, kind, about, said) in enumerate([*told, *lines])
        ],
        LIBRARY,
    )


@pytest.mark.parametrize("wanted", [1, 6, 24, 60, 200])
@pytest.mark.parametrize("key", ["cosmos", "snapdragon", "lettuce"])
def test_cells_are_the_fewest_that_are_enough_nine_times_in_ten(key: str, wanted: int) -> None:
    """Binomial chance after scipy.stats.binom."""
    rules = crop(key)
    assert rules.germination is not None
    plan = plan_sowing(season(), rules, SPRING, wanted)
    cells = plan.cells if plan.cells is not None else plan.seeds
    assert cells is not None
    per_cell = plan.per_cell if plan.cells is not None else 1
    up = 1 - (1 - rules.germination.share) ** per_cell
    p = up * SURVIVAL[1] * (SURVIVAL[0] if plan.raising == "tray" else 1.0)
    assert binom.sf(wanted - 1, cells, p) >= WANTED_CHANCE
    assert cells == wanted or binom.sf(wanted - 1, cells - 1, p) < WANTED_CHANCE
    assert plan.seeds == (cells * plan.per_cell if plan.cells is not None else cells)


COUNTED: list[Line] = [
    (date(2025, 12, 1), Kind.SOWN, "a0", {"crop": "cosmos", "seeds": 200, "raising": "cells"}),
    (date(2025, 12, 9), Kind.FIRST_UP, "a0", {"count": 3}),
    (date(2026, 1, 4), Kind.COUNTED, "a0", {"count": 60, "final": True}),
]


def test_own_counts_move_the_number_as_they_do_in_the_round() -> None:
    """The learned share is (25 x library + 60) / (25 + 200), worth 225 seeds."""
    rules = crop("cosmos")
    assert rules.germination is not None
    before, after = (plan_sowing(season(*s), rules, SPRING, 24) for s in ((), COUNTED))
    learned = (25 * rules.germination.share + 60) / 225
    expected = how_many(24, learned, 225.0, SURVIVAL[1:], WANTED_CHANCE)
    assert before.cells is not None and after.cells is not None
    assert after.cells == expected.cells > before.cells
    assert f"yours {learned:.0%} from 200 seeds in 1 sowing" in after.how


def test_the_packet_chosen_gives_the_share_and_is_named_where_it_is_short() -> None:
    low: Line = (
        SPRING, Kind.PACKET, "p1",
        {"crop": "cosmos", "year": 2026, "seeds": 30, "germination": 0.45, "tested": 20},
    )  # fmt: skip
    plan = plan_sowing(season(low), crop("cosmos"), SPRING, 24, packet="p1")
    assert plan.cells == how_many(24, 0.45, 20.0, SURVIVAL[1:], WANTED_CHANCE).cells
    assert "at 45% x 90%" in plan.how
    urgent = [word.text for word in plan.minds if word.urgent]
    assert urgent[0] == f"packet p1 holds 30, {plan.seeds} are needed"
    assert "comes up below 50 %" in urgent[1]
    assert plan_sowing(season(low), crop("cosmos"), SPRING, 24).minds == ()


def test_a_drilled_row_loses_nothing_at_pricking_out() -> None:
    rules = crop("carrot")
    assert rules.germination is not None
    plan = plan_sowing(season(), rules, SPRING, 100)
    assert plan.seeds == how_many(100, rules.germination.share, survival=(0.9,)).seeds


@pytest.mark.parametrize(
    ("key", "kind"),
    [
        ("cosmos", "propagator"),
        ("foxglove", "frame-c"),
        ("carrot", "bed-1"),
        ("cornflower", "bench-1"),
    ],
)
def test_the_place_is_of_the_kind_its_window_asks_for(key: str, kind: str) -> None:
    rules = crop(key)
    day = date(2026, 6, 1) if key == "foxglove" else SPRING
    assert plan_sowing(season(), rules, day).place == kind


def test_a_full_place_gives_way_to_the_next() -> None:
    full: list[Line] = [
        (SPRING, Kind.SOWN, f"b{number:02d}", {"crop": "zinnia", "place": "propagator"})
        for number in (1, 2)
    ]
    assert plan_sowing(season(*full[:1]), crop("cosmos"), SPRING).place == "propagator"
    assert plan_sowing(season(*full), crop("cosmos"), SPRING).place == "bench-1"


def test_the_second_sowing_is_like_the_first() -> None:
    first: dict[str, Figure] = {
        "crop": "cosmos",
        "wanted": 30,
        "seeds": 60,
        "per_cell": 2,
        "raising": "pots",
        "container": "7 cm pot",
        "place": "bench-2",
    }
    plan = plan_sowing(season((SPRING, Kind.SOWN, "b01", first)), crop("cosmos"), SPRING)
    assert (plan.like, plan.wanted, plan.raising, plan.per_cell) == ("b01", 30, "pots", 2)
    assert (plan.container, plan.place) == ("7 cm pot", "bench-2")


def test_without_a_number_wanted_one_tray_is_filled() -> None:
    plan = plan_sowing(season(), crop("cosmos"), SPRING)
    assert (plan.container, plan.cells, plan.seeds) == ("40-cell tray", 40, 40)
    assert plan.how == "one 40-cell tray, 1 to a cell"
    broadcast = plan_sowing(season(), crop("foxglove"), SPRING)
    assert (broadcast.cells, broadcast.seeds) == (None, None)


def test_depth_and_cover_are_the_crop_s() -> None:
    plan = plan_sowing(season(), crop("cosmos"), SPRING)
    germination = crop("cosmos").germination
    assert germination is not None
    assert (plan.depth_mm, plan.covering, plan.heat_c) == (
        germination.depth_mm,
        germination.covering,
        germination.heat_c,
    )
    assert plan_sowing(season(), crop("foxglove"), SPRING).covering == Covering.NONE


def test_a_day_outside_the_window_is_said_with_the_next_opening() -> None:
    """Biennials are sown May to July (Garden Answers magazine, 2018 and 2019, read)."""
    early = plan_sowing(season(), crop("foxglove"), date(2026, 3, 1))
    assert early.out_of_window == "Outside its sowing window: the next one opens Fri 15 May"
    late = plan_sowing(season(), crop("foxglove"), date(2026, 9, 1))
    assert late.out_of_window.endswith("Sat 15 May 2027")
    assert plan_sowing(season(), crop("foxglove"), date(2026, 6, 1)).out_of_window == ""


def test_containers_are_one_s_own_first_and_their_cells_are_known() -> None:
    own = season((SPRING, Kind.CONTAINER, "egg box", {"cells": 10}))
    assert containers_of(own)[0] == "egg box"
    assert cells_of(own, "egg box") == 10
    assert cells_of(own, "84-cell tray") == 84
    assert cells_of(own, "hat") is None
    plan = plan_sowing(own, crop("cosmos"), SPRING, container="egg box")
    assert (plan.cells, plan.seeds) == (10, 10)


def test_packets_of_the_crop_the_freshest_first_and_none_that_is_used_up() -> None:
    packets: list[Line] = [
        (SPRING, Kind.PACKET, "old", {"crop": "cosmos", "year": 2023, "seeds": 50}),
        (SPRING, Kind.PACKET, "new", {"crop": "cosmos", "year": 2026}),
        (SPRING, Kind.PACKET, "gone", {"crop": "cosmos", "year": 2026, "seeds": 20}),
        (SPRING, Kind.PACKET, "other", {"crop": "zinnia", "year": 2026}),
        (SPRING, Kind.SOWN, "b01", {"crop": "cosmos", "seeds": 20, "packet": "gone"}),
    ]
    found = packets_for(season(*packets), "cosmos")
    assert [packet.id for packet in found] == ["new", "old"]


def test_the_label_has_two_sides() -> None:
    front, back = label_sides(crop("cosmos"), "Paper Lantern", SPRING, "b07", 40)
    assert front == "Cosmos 'Paper Lantern'"
    assert back == "5 Apr 2026, b07, 40 seeds"
    assert label_sides(crop("cosmos"), "", SPRING, "b07", None) == ("Cosmos", "5 Apr 2026, b07")


SAMPLE = fold_season(records(), LIBRARY)


@settings(max_examples=200, deadline=None)
@given(
    st.sampled_from(KEYS),
    st.dates(date(2025, 1, 1), date(2027, 12, 31)),
    st.none() | st.integers(0, 5000),
    st.sampled_from(("", "84-cell tray", "half tray", "no such thing")),
)
def test_every_crop_has_a_plan_on_every_day(
    key: str, day: date, wanted: int | None, container: str
) -> None:
    plan = plan_sowing(SAMPLE, crop(key), day, wanted, container)
    assert plan.place == "" or SAMPLE.place(plan.place) is not None
    assert plan.cells is None or plan.seeds == plan.cells * plan.per_cell
    assert plan.how
    assert (plan.out_of_window == "") == (plan.window is None or day in plan.window)
    if container:
        assert plan.container == container


def test_the_sample_s_latest_lettuce_is_the_model_for_the_next() -> None:
    latest = max((b for b in SAMPLE.batches.values() if b.crop == "lettuce"), key=lambda b: b.begun)
    assert plan_sowing(SAMPLE, crop("lettuce"), DAY_0).like == latest.id
