"""A place is shaded or not, whoever asks: from a fifth of the sun kept off (our proposal)."""

from __future__ import annotations

import pytest

from benchround.core.seed.sowing_plan import plan_sowing
from benchround.core.site import Place, PlaceKind
from benchround.core.water.place import Exposure
from benchround.core.water.tray_outlook import tray_outlook
from benchround.crops.library import load_library
from tests.rounds.small_season import DAY, begin, place, sown

LIBRARY = load_library()
VIOLA = LIBRARY["viola"]


@pytest.mark.parametrize(("share", "shaded"), [(0.1, False), (0.2, True), (0.3, True)])
def test_sowing_and_watering_agree_on_shade(share: float, shaded: bool) -> None:
    told = begin()
    place(told, "sun", name="Bench 1", kind="bench", order=1)
    place(told, "other", name="Bench 2", kind="bench", order=2, shade_share=share)
    sown(told, "b1", "hardling", DAY, "other", container="40-cell tray")
    season = told.season()
    spot = season.place("other")
    assert spot is not None
    assert spot.shaded is shaded
    found = tray_outlook(season, season.batches["b1"], season.batches["b1"].main, DAY)
    assert found is not None
    assert (found.today.exposure is Exposure.SHADED) is shaded
    window = next(w for w in VIOLA.windows if w.where == "shade")
    span = season.site.year.span(window, DAY)
    assert span is not None
    plan = plan_sowing(season, VIOLA, span.opens, None)
    assert (plan.place == "other") is shaded


def test_slats_are_shade() -> None:
    assert Place("f", "Frame", PlaceKind.FRAME, 1, glazing="slats").shaded
    assert not Place("f", "Frame", PlaceKind.FRAME, 1, glazing="glass").shaded
