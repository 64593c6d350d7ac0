"""Sums on the coming night, on seed in store, and the indices of trials."""

from __future__ import annotations

import pytest

from tests.commands.shell import reckoned, run

Capture = pytest.CaptureFixture[str]
pytestmark = pytest.mark.usefixtures("bench")


def test_the_coming_night_by_the_published_rules(capsys: Capture) -> None:
    # weatherfaqs.org.uk, node 149: (12 + 4) / 2 - K, K 6 to 8; 2.54 by noon
    night = ("--sky", "light wind, little cloud")
    found = reckoned("tonight", capsys, "--max", "12", "--dew", "4", *night, "--noon", "12")
    assert found["screen"] == {"coldest_c": 0.0, "warmest_c": 2.0}
    assert found["rules"][1]["coldest_c"] == pytest.approx(2.54, abs=0.01)
    # grass and trays 2 to 4 C colder on a clear night (from memory): hurt from there on
    assert found["trays"] == {"coldest_c": -4.0, "warmest_c": 0.0}
    assert (found["word"], found["us_word"]) == ("no frost", "freeze")
    assert "very sensitive" in found["harmed"] and "hardy" not in found["harmed"]


def test_grass_after_smith_is_not_taken_for_the_screen(capsys: Capture) -> None:
    # wiki.crowe.co.nz, worked example: (6 + 3 / 2) / 3 - 8 = -5.5
    given = ("--max", "12", "--dew", "3", "--three", "6", "--month", "9", "--sky", "brisk wind")
    found = reckoned("tonight", capsys, *given)
    assert found["rules"][1]["coldest_c"] == found["coldest_c"] == -5.5
    assert found["word"] == "no frost"


def test_a_dew_point_nobody_read_lowers_the_night(capsys: Capture) -> None:
    read = reckoned("tonight", capsys, "--max", "12", "--dew", "3")
    guessed = reckoned("tonight", capsys, "--max", "12", "--last-min", "3")
    assert guessed["dew_point_guessed"] and not read["dew_point_guessed"]
    assert guessed["screen"]["coldest_c"] == read["screen"]["coldest_c"] - 2.0
    ran = run(["reckon", "tonight", "--max", "3", "--dew", "4"], capsys)
    assert ran.code == 1 and "above the air" in ran.err


def test_the_store_told_keeps_the_seed_as_long_as_asked(capsys: Capture) -> None:
    """The moisture and the warmth answered, put back in, give the years asked for."""
    given = ("lettuce", "--from", "95%", "--to", "80%", "--years", "5")
    found = reckoned("storage", capsys, *given, "--moisture", "6", "--temp", "5")
    for moisture, temp_c in ((found["most_moisture_percent"], 5), (6, found["warmest_c"])):
        back = ("--moisture", str(moisture), "--temp", str(temp_c))
        assert reckoned("storage", capsys, *given, *back)["years_to_share"] == pytest.approx(
            5.0, abs=0.02
        )


def test_where_the_viability_equation_does_not_reach_it_says_so(capsys: Capture) -> None:
    given = ("lettuce", "--from", "95%", "--to", "90%", "--years", "0.003")
    found = reckoned("storage", capsys, *given, "--moisture", "6", "--temp", "-20")
    assert found["most_moisture_percent"] is None
    assert "25 %" in found["most_moisture_reason"]
    ran = run(["reckon", "storage", "zinnia", "--moisture", "6", "--temp", "5"], capsys)
    assert ran.code == 1 and "no viability constants" in ran.err


def test_indices_of_trials_are_told_by_name(capsys: Capture) -> None:
    # documentation output of germinationmetrics (read), as in tests of the indices
    counts = "0 0 0 0 4 17 10 7 1 0 1 0 0 0"
    found = reckoned("germination", capsys, counts, "--sown", "50")["indices"]
    assert found["kotowski_velocity"] == pytest.approx(14.92537, abs=1e-5)
    assert found["uncertainty_bits"] == pytest.approx(2.062987, abs=1e-6)
    unknown = reckoned("germination", capsys, counts)["indices"]
    assert unknown["peak_value"] is None and unknown["variance_days"] == found["variance_days"]


@pytest.mark.parametrize("given", ["off", "fully open"])
def test_a_lid_goes_by_the_word_in_records_or_the_one_that_is_said(
    given: str, capsys: Capture
) -> None:
    """It is told by the word the round says, whichever was typed."""
    where = ["--size", "1.2,0.6", "--glazing", "glass", "--radiation", "600"]
    ran = run(["reckon", "frame", *where, "--lid", given], capsys)
    assert "lid fully open:" in ran.out and ", fully open " in ran.out
    day = ["--min", "5", "--max", "23", "--sun-hours", "12", "--lat", "52.5", "--lon", "-1"]
    ran = run(["reckon", "frame", *day, "--on", "2026-05-27", "--lid", given], capsys)
    assert "fully open" in ran.out
    assert not [line for line in ran.out.splitlines() if line.endswith(" off")]


def test_the_plan_of_a_deadly_plant_carries_its_caution(capsys: pytest.CaptureFixture[str]) -> None:
    """Monkshood kills, through broken skin too (reference/cautions.csv, C17)."""
    words = ("--want", "5", "--by", "2028-07-15", "--site", "52,0", "--today", "2026-11-10")
    said = run(["reckon", "plan", "monkshood", "--flower", *words], capsys).out
    assert "caution: Monkshood: deadly" in said
    harmless = run(["reckon", "plan", "cosmos", *words], capsys).out
    assert "caution" not in harmless
    food = run(["reckon", "plan", "asparagus", *words], capsys).out
    assert "never eat" not in food, "it is raised to be eaten"


def test_a_plan_gives_one_answer_for_planting_out(capsys: pytest.CaptureFixture[str]) -> None:
    """Courgettes are planted when frosts are over (common practice, no source)."""
    words = ("--want", "5", "--by", "2027-04-01", "--site", "52,0", "--today", "2026-11-10")
    said = run(["reckon", "plan", "courgette", *words], capsys).out
    assert "ready to plant out" not in said
    assert "planted out 2027-05-30 when frosts are over" in said


def test_what_is_sown_in_a_drill_takes_no_cells(capsys: pytest.CaptureFixture[str]) -> None:
    words = ("--want", "20", "--by", "2027-11-01", "--site", "52,0", "--today", "2026-11-10")
    said = run(["reckon", "plan", "parsnip", "--pick", *words], capsys).out
    assert "seeds in the drill" in said
    assert "cells," not in said


def test_a_share_typed_as_a_whole_number_is_told_how_to_write_it(
    capsys: pytest.CaptureFixture[str],
) -> None:
    ran = run(["reckon", "quantity", "--want", "24", "--germination", "80"], capsys)
    assert ran.code == 1
    assert "write 80% or 0.8" in ran.err
