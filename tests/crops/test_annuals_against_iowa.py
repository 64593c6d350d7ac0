"""Annuals against the weeks, days, temperatures and light of Iowa State University Extension."""

import math

import pytest

from benchround.core.crop.crop import Anchor, Covering, Light
from tests.crops.published import cases, crop, rows

LIGHT = {"L": Light.LIGHT, "D": Light.DARK, "LD": Light.EITHER, "cover": Light.EITHER}
ONE_FIGURE_WITHIN = 0.03
"""A single printed figure of days is the middle of our two; both are rounded."""


@pytest.mark.parametrize("row", cases("iowa_weeks.csv"))
def test_weeks_from_sowing_to_planting(row: dict[str, str]) -> None:
    planting = crop(row["key"]).planting
    weeks = int(row["weeks_min"]), int(row["weeks_max"])
    assert planting.from_sowing_days == (weeks[0] * 7, weeks[1] * 7)
    assert "Iowa State" in crop(row["key"]).source("planting.from_sowing_days")


@pytest.mark.parametrize("row", cases("iowa_weeks.csv"))
def test_light(row: dict[str, str]) -> None:
    germination = crop(row["key"]).germination
    assert germination is not None
    assert germination.light is LIGHT[row["light"]]
    assert (germination.covering is Covering.NONE) == (row["light"] == "L")


@pytest.mark.parametrize("row", cases("iowa_weeks.csv"))
def test_days_and_temperature(row: dict[str, str]) -> None:
    germination = crop(row["key"]).germination
    assert germination is not None
    if not row["days_min"]:
        assert "Iowa State" not in crop(row["key"]).sources.get("germination.days_first", "")
        return
    low, high = float(row["temp_min_c"]), float(row["temp_max_c"])
    assert low - 0.05 <= germination.at_c <= high + 0.05
    first, last = float(row["days_min"]), float(row["days_max"])
    if first < last:
        assert (germination.days_first, germination.days_last) == (first, last)
    else:
        middle = math.sqrt(germination.days_first * germination.days_last)
        assert middle == pytest.approx(first, rel=ONE_FIGURE_WITHIN)
    assert "Iowa State" in crop(row["key"]).source("germination.days_first")


RANGED = [
    row for row in rows("iowa_weeks.csv")
    if row["weeks_min"] != row["weeks_max"] and row["key"] not in ("cornflower", "pansy")
]  # fmt: skip


@pytest.mark.parametrize("row", RANGED, ids=[f"{r['key']}: {r['source']} (read)" for r in RANGED])
def test_the_spring_window_is_the_weeks_counted_back_from_the_last_frost(
    row: dict[str, str],
) -> None:
    window = crop(row["key"]).windows[0]
    assert window.opens.anchor in (Anchor.LAST_FROST, Anchor.LAST_FROST_SAFE)
    assert window.closes.anchor is window.opens.anchor
    assert window.opens.days == -7 * int(row["weeks_max"])
    assert window.closes.days == -7 * int(row["weeks_min"])
