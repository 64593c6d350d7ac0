"""Where a batch stands: the stops of the sample's story, at most three lines."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from benchround.core.season import Season
from benchround.drawing.canvas import ASCII, UNICODE
from benchround.drawing.lifecycle import lifecycle_lines
from benchround.drawing.way import Stop, Way, When, way_of
from tests.drawing.checks import must_hold, text_of
from tests.drawing.fixed import HOSTILE, TODAY, WAY
from tests.sample.story import DAY_0


def way(season: Season, name: str, part: str = "") -> Way:
    batch = season.batches[name]
    return way_of(season, batch, batch.part(part), DAY_0)


def test_past_and_now_are_the_story(sample: Season) -> None:
    found = way(sample, "b01")
    told = [(stop.name, stop.when, (stop.day - DAY_0).days) for stop in found.stops]
    assert told[:4] == [
        ("sown", When.PAST, -48),
        ("emerging", When.PAST, -43),
        ("potted on", When.PAST, -22),
        ("hardening", When.NOW, -11),
    ]
    assert [name for name, when, _ in told if when is When.AHEAD] == ["plant out", "in flower"]


def test_days_ahead_never_lie_behind(sample: Season) -> None:
    for batch in sample.batches.values():
        for part in batch.parts:
            stops = way_of(sample, batch, part, DAY_0).stops
            assert all(stop.day >= DAY_0 for stop in stops if stop.when is When.AHEAD)
            assert sum(stop.when is When.NOW for stop in stops) == 1


def test_what_has_ended_has_nothing_ahead(sample: Season) -> None:
    assert [stop.name for stop in way(sample, "b31").stops] == ["sown", "emerging", "lost"]


def test_spares_have_a_way_of_their_own(sample: Season) -> None:
    assert [stop.name for stop in way(sample, "b03", "spares").stops] == ["hardening"]


@pytest.mark.parametrize("width", [20, 24, 40, 60, 80, 120, 200])
def test_at_most_three_lines_with_the_present_in_brackets(width: int) -> None:
    for glyphs in (UNICODE, ASCII):
        lines = lifecycle_lines(WAY, width, glyphs)
        assert len(lines) == 3
        assert "[hardening]" in text_of(lines)[1]
        must_hold(lines, width, glyphs)


def test_each_day_stands_under_its_stage() -> None:
    _, names, days = text_of(lifecycle_lines(WAY, 120, ASCII))
    for name, day in (("sown", "9 Apr"), ("potted on", "5 May"), ("plant out", "~3 Jun")):
        assert names.index(name) == days.index(day)
    assert names.index("hardening") == days.index("16 May")


def test_what_does_not_fit_is_cut_off_at_the_far_ends_and_shown_so() -> None:
    names = text_of(lifecycle_lines(WAY, 60, UNICODE))[1]
    assert names.startswith("…") and "in flower" in names
    assert "…" not in text_of(lifecycle_lines(WAY, 80, UNICODE))[1]


def test_headline_says_what_is_next() -> None:
    head = text_of(lifecycle_lines(WAY, 80))[0]
    assert head == "b01 Cosmos: hardening since 16 May; next plant out 3 Jun"
    late = replace(WAY, stops=(*WAY.stops[:4], replace(WAY.stops[4], day=TODAY)))
    assert text_of(lifecycle_lines(late, 80))[0].endswith("next plant out now")


def test_odd_ways_can_be_drawn() -> None:
    ways = (
        Way(HOSTILE, TODAY),
        Way(HOSTILE, TODAY, (Stop(HOSTILE, TODAY, When.NOW),)),
        Way("x", TODAY, (Stop("sow", TODAY + timedelta(days=900), When.AHEAD),)),
        Way("x", TODAY, tuple(Stop("s" * 30, TODAY, When.PAST) for _ in range(30))),
    )
    for one in ways:
        for width in (20, 60):
            lines = lifecycle_lines(one, width, UNICODE)
            assert len(lines) <= 3
            must_hold(lines, width, UNICODE)
