"""Germination pictures, held against published counts and the sample's story."""

from __future__ import annotations

from datetime import timedelta

import pytest

from benchround.core.season import Season
from benchround.core.seed.germination import germination_summary
from benchround.core.seed.hill import fit_hill
from benchround.core.seed.looks import Look
from benchround.core.seed.looks_of import germination_of
from benchround.drawing.canvas import ASCII, UNICODE
from benchround.drawing.germination import germination_lines
from benchround.drawing.germination_curve import (
    GerminationCurve,
    germination_curve_of,
    share_at,
)
from tests.core.samples import REFERENCE
from tests.drawing.checks import must_hold, text_of
from tests.drawing.fixed import GERMINATION
from tests.sample.story import DAY_0


def told(curve: GerminationCurve) -> str:
    """The words above, below and beside the picture."""
    return " ".join(text_of(germination_lines(curve, 200)))


def curve_of(season: Season, name: str) -> GerminationCurve:
    batch = season.batches[name]
    found = germination_curve_of(season, batch, season.crop(batch.crop), DAY_0)
    assert found is not None
    return found


def chart(curve: GerminationCurve, width: int = 105) -> list[str]:
    """The rows of the chart without their axis, 100 % first."""
    lines = text_of(germination_lines(curve, width, ASCII))
    return [line[5:] for line in lines if line[4:5] == "|"]


def published() -> GerminationCurve:
    """40 of 50 up; germinationmetrics 0.1.10.9000 gives t50 (Farooq) 5.9412 days (read)."""
    hill = fit_hill(REFERENCE)
    assert hill is not None
    return GerminationCurve(
        "G1",
        REFERENCE.sown,
        looks=REFERENCE.steps,
        curve=tuple((0.1 * n, hill.percent_at(0.1 * n) / 100) for n in range(141)),
        curve_name="Hill",
        half_day=germination_summary(REFERENCE).t50_days,
    )


def test_half_of_those_up_stands_at_the_published_day() -> None:
    curve = published()
    assert curve.half_day == pytest.approx(5.9412, abs=5e-4)
    assert "half of them by day 5.9" in told(curve)
    foot = chart(curve)[-1]
    # 100 cells from day 0 to day 14: day 5.9412 is cell round(5.9412 / 14 * 99) = 42
    assert foot.index("|") == 42


def test_the_last_count_stands_at_the_published_share() -> None:
    rows = chart(published())
    assert "O" in rows[2]  # 40 of 50 is 80 %, the third row of eleven from 100 % down
    assert not any("O" in row for row in rows[:2])


def test_fitted_curve_runs_through_half_the_final_share_at_its_half_day() -> None:
    curve, hill = published(), fit_hill(REFERENCE)
    assert hill is not None
    assert share_at(curve.curve, hill.half_day) == pytest.approx(0.4, abs=2e-3)
    assert share_at(curve.curve, 14.5) is None
    assert share_at((), 1.0) is None


def test_between_two_looks_there_is_a_band_and_where_none_came_a_line() -> None:
    looks = (Look(0.0, 5.0, 0), Look(5.0, 10.0, 10))
    rows = chart(GerminationCurve("x", 10, looks=looks), 106)  # 101 cells, ten a day
    assert rows[-1][:50] == "-" * 50
    for row in rows[1:-1]:
        assert row == " " * 50 + ":" * 51
    assert rows[0] == " " * 50 + ":" * 50 + "O"


def test_first_seedlings_nobody_counted_make_no_share() -> None:
    looks = (Look(0.0, 14.0, 1),)
    curve = GerminationCurve("x", None, looks=looks, counted=False)
    rows = chart(curve)
    assert rows[-1].strip() == "O" and not "".join(rows[:-1]).strip()
    assert "not counted" in told(curve)


def test_looks_of_the_sample_are_the_story(sample: Season) -> None:
    # b06: sown -9, first up -4, 22 counted on -3, 35 on -1; b14: sown -5, nothing on -2
    zinnia = curve_of(sample, "b06")
    assert (zinnia.sown, zinnia.up, zinnia.today) == (40, 35, 9.0)
    assert {5.0, 6.0, 8.0} <= {look.this_look_day for look in zinnia.looks}
    lettuce = curve_of(sample, "b14")
    assert (lettuce.up, lettuce.half_day) == (0, None)
    assert "none up of 80 seeds sown at the last look" in "\n".join(
        text_of(germination_lines(lettuce, 100))
    )


def test_looks_and_half_day_are_those_the_figures_are_reckoned_from(sample: Season) -> None:
    for batch in sample.batches.values():
        figures = germination_of(batch)
        if batch.sowing is None:
            continue
        curve = curve_of(sample, batch.id)
        assert curve.half_day == figures.t50_days
        assert curve.because == figures.because and curve.notes == figures.notes
        if figures.summary is not None:
            assert (curve.up, curve.sown) == (figures.summary.up, figures.summary.sown)


def test_why_nothing_can_be_reckoned_is_said(sample: Season) -> None:
    beans = curve_of(sample, "b21")  # eaten by mice and sown again
    assert beans.because and beans.half_day is None
    assert beans.because[1:] in told(beans)


def test_library_curve_where_too_few_looks_tell_one(sample: Season) -> None:
    bell = curve_of(sample, "b13")
    assert bell.looks == () and "crop" in bell.curve_name
    shares = [share for _, share in bell.curve]
    assert shares == sorted(shares) and shares[0] == 0.0
    germination = sample.crop("canterbury-bell").germination
    assert germination is not None
    assert shares[-1] <= germination.share
    assert curve_of(sample, "b25").curve_name.endswith("counts")


def test_what_was_never_sown_has_no_curve(sample: Season) -> None:
    tulip = sample.batches["b30"]
    assert germination_curve_of(sample, tulip, sample.crop(tulip.crop), DAY_0) is None


def test_every_batch_of_the_sample_can_be_drawn_on_any_day(sample: Season) -> None:
    for batch in sample.batches.values():
        for ahead in (-400, -20, 0, 90):
            day = DAY_0 + timedelta(days=ahead)
            found = germination_curve_of(sample, batch, sample.crop(batch.crop), day)
            if found is not None:
                must_hold(germination_lines(found, 60, UNICODE), 60, UNICODE)


def test_nothing_known_is_still_a_sentence() -> None:
    empty = GerminationCurve("x", None)
    assert "nobody has looked yet" in text_of(germination_lines(empty, 40))
    for width in (20, 60, 200):
        must_hold(germination_lines(GERMINATION, width, ASCII), width, ASCII)
