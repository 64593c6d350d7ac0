"""Sums in the shell: published figures come out, keys stand as documented, usage is checked."""

from __future__ import annotations

import json
from datetime import date, timedelta
from pathlib import Path

import pytest

from benchround.commands.reckon import SUBJECTS
from tests.commands.shell import reckoned, run

Capture = pytest.CaptureFixture[str]
pytestmark = pytest.mark.usefixtures("bench")

EMERGENCE_KEYS = {"median_days", "early_days", "late_days", "reason", "base_c", "source"}


def test_emergence_has_its_keys_and_agrees_with_the_table(capsys: Capture) -> None:
    # Harrington & Minges 1954: tomato 8 days at 20 C (read); the fit is within a day and a half
    found = reckoned("emergence", capsys, "tomato", "--temp", "20")
    assert set(found) >= EMERGENCE_KEYS
    assert found["median_days"] == pytest.approx(8, abs=1.5)
    assert found["early_days"] < found["median_days"] < found["late_days"]
    assert found["reason"] is None
    assert "Harrington" in found["source"]


@pytest.mark.parametrize(("temp", "word"), [("2", "cold"), ("-5", "cold"), ("45", "hot")])
def test_emergence_where_nothing_comes_up_is_null_with_a_reason(
    temp: str, word: str, capsys: Capture
) -> None:
    found = reckoned("emergence", capsys, "tomato", "--temp", temp)
    assert [found[key] for key in ("median_days", "early_days", "late_days")] == [None] * 3
    assert word in found["reason"]


@pytest.mark.parametrize(
    "name", ["snapdragon", "Snapdragon", "SNAPDRAGON", "antirrhinum", "Antirrhinum majus"]
)
def test_a_crop_is_known_by_key_name_synonym_and_latin_name(name: str, capsys: Capture) -> None:
    assert reckoned("emergence", capsys, name, "--temp", "20")["crop"] == "snapdragon"


@pytest.mark.parametrize(
    ("name", "said"), [("tomatt", "tomato"), ("snapd", "snapdragon"), ("zzzz", "look it up")]
)
def test_an_unknown_crop_names_those_near(name: str, said: str, capsys: Capture) -> None:
    ran = run(["reckon", "emergence", name, "--temp", "20"], capsys)
    assert (ran.code, ran.out) == (1, "")
    assert name in ran.err and said in ran.err


def test_bulbs_have_no_emergence(capsys: Capture) -> None:
    ran = run(["reckon", "emergence", "daffodil", "--temp", "10"], capsys)
    assert ran.code == 1
    assert "no germination figures" in ran.err


QUANTITIES = [
    ("S21", ["--chance", "0.5"], 35),
    ("S21", ["--chance", "0.8"], 38),
    ("S21", ["--chance", "0.9"], 40),
    ("S21", ["--chance", "0.95"], 42),
    ("S21", ["--chance", "0.99"], 46),
    ("S25", ["--chance", "0.8", "--per-cell", "2"], 31),
    ("S25", ["--chance", "0.9", "--per-cell", "2"], 33),
    ("S26", ["--chance", "0.8", "--tested", "20"], 40),
    ("S26", ["--chance", "0.9", "--tested", "20"], 43),
    ("S26", ["--chance", "0.95", "--tested", "20"], 47),
    ("S28", ["--chance", "0.9", "--tested", "20", "--per-cell", "3"], 32),
]


@pytest.mark.parametrize(
    ("more", "cells"),
    [row[1:] for row in QUANTITIES],
    ids=[f"{i} {' '.join(m)}: own example, two methods agree" for i, m, _ in QUANTITIES],
)
def test_quantity(more: list[str], cells: int, capsys: Capture) -> None:
    words = ["--want", "24", "--germination", "0.8", "--survival", "0.95", "--survival", "0.9"]
    found = reckoned("quantity", capsys, *words, *more)
    per_cell = int(more[more.index("--per-cell") + 1]) if "--per-cell" in more else 1
    assert (found["cells"], found["seeds"]) == (cells, cells * per_cell)
    assert found["chance"] >= float(more[1])
    # p = 0.684 for one seed a cell (own example, S20)
    assert found["expected_plants"] == pytest.approx(cells * found["p"], abs=0.01)


def test_quantity_says_what_the_cells_take(capsys: Capture) -> None:
    words = ["--want", "24", "--germination", "80%", "--survival", "95%", "--survival", "90%"]
    found = reckoned("quantity", capsys, *words, "--container", "40-cell tray")
    assert found["trays"] == 1
    assert found["compost_l"] == pytest.approx(40 * 72 / 1000, abs=0.01)
    assert found["bench_m2"] == pytest.approx(0.37 * 0.23, abs=0.001)
    assert found["vermiculite_l"] == pytest.approx(370 * 230 * 4 / 1e6, abs=0.01)
    alone = reckoned("quantity", capsys, *words, "--cells-per-tray", "24", "--seeds-per-g", "330")
    assert (alone["trays"], alone["compost_l"]) == (2, None)
    assert alone["grams"] == pytest.approx(40 / 330, abs=0.001)


def test_germination_gives_the_published_indices(capsys: Capture) -> None:
    # germinationmetrics 0.1.10.9000, tests/testthat (read): G01, G05, G13-G15, G20, G21
    found = reckoned("germination", capsys, "0 0 0 0 4 17 10 7 1 0 1 0 0 0", "--sown", "50")
    assert found["final_share"] == pytest.approx(0.80)
    assert found["mean_days"] == pytest.approx(6.7)
    assert found["t50_coolbear"] == pytest.approx(5.97058823529412, abs=1e-6)
    assert found["t50_farooq"] == pytest.approx(5.94117647058824, abs=1e-6)
    assert found["t50_days"] == found["t50_farooq"]
    assert found["speed"] == pytest.approx(6.13892496392496, abs=1e-6)
    assert found["uniformity"] == pytest.approx(0.709219858156028, abs=1e-6)
    assert found["synchrony"] == pytest.approx(0.266666666666667, abs=1e-6)
    assert found["low"] < 0.8 < found["high"]
    assert found["fit_median_se_days"] > 0


LOBELIA = "2 12 11 13 14 4 6 4 5 5 2 1 2 1 3 2 2 2 0 1"


def test_germination_in_pairs_reads_any_days(capsys: Capture) -> None:
    pairs = [f"{day}:{n}" for day, n in zip(range(1, 40, 2), LOBELIA.split(), strict=True)]
    found = reckoned("germination", capsys, *pairs, "--sown", "100")
    # Lobelia erinus at 15 C, agriCensData Example2 (read): 92 of 100 up
    assert (found["up"], found["final_share"]) == (92, 0.92)
    reversed_order = reckoned("germination", capsys, *reversed(pairs), "--sown", "100")
    assert reversed_order == found


def test_germination_without_the_number_sown_has_no_share(capsys: Capture) -> None:
    ran = run(["reckon", "germination", "0 4 6", "--json"], capsys)
    assert ran.code == 0
    assert [ran.value[key] for key in ("sown", "final_share", "low", "high")] == [None] * 4
    assert ran.value["mean_days"] == pytest.approx(2.6)
    assert "number sown" in ran.err


@pytest.mark.parametrize(
    ("counts", "sown", "said"),
    [
        ("4 x 5", "20", "'x' is no count"),
        ("4 -1 5", "20", "'-1' is no count"),
        ("5:4 6", "20", "no day:count pair"),
        ("5:4 5:6", "20", "day of the look"),
        ("30", "20", "30 are up of 20"),
        ("", "20", "0 counts"),
        ("0 0", "0", "seeds sown"),
    ],
)
def test_counts_that_cannot_be(counts: str, sown: str, said: str, capsys: Capture) -> None:
    ran = run(["reckon", "germination", counts, "--sown", sown], capsys)
    assert (ran.code, ran.out) == (1, "")
    assert said in ran.err


PLAN = ["--want", "24", "--site", "42,-93.6", "--last-frost", "05-10", "--today", "2027-01-01"]
IOWA = "Iowa State University Extension, Germination Requirements, 2023 (read)"


@pytest.mark.parametrize(
    ("crop", "first", "last"),
    [
        ("snapdragon", "2027-03-06", "2027-03-20"),
        ("wax begonia", "2027-02-20", "2027-03-06"),
        ("cosmos", "2027-04-03", "2027-04-17"),
        ("lisianthus", "2027-02-06", "2027-02-06"),
    ],
    ids=[f"D13 {key}: {IOWA}" for key in ("snapdragon", "begonia", "cosmos", "lisianthus")],
)
def test_plan_gives_iowas_weeks(crop: str, first: str, last: str, capsys: Capture) -> None:
    found = reckoned("plan", capsys, crop, "--by", "2027-05-15", *PLAN)
    assert (found["sow_from"], found["sow_by"], found["possible"]) == (first, last, True)
    assert found["ready_from"] <= "2027-05-15" <= found["ready_by"]
    assert found["cells"] >= 24
    assert "Iowa State" in found["source"]
    assert found["reason"]


def test_plan_too_late_names_the_earliest_day(capsys: Capture) -> None:
    found = reckoned("plan", capsys, "snapdragon", "--by", "2027-05-15", *PLAN[:-1], "2027-04-01")
    assert found["possible"] is False
    assert found["reason"].startswith("not possible any more, earliest is")
    assert found["earliest"] == "2027-05-27"


def test_plan_asks_the_computers_day_if_none_is_given(capsys: Capture) -> None:
    by = (date.today() - timedelta(days=300)).isoformat()
    found = reckoned("plan", capsys, "snapdragon", "--by", by, *PLAN[:-2])
    assert found["possible"] is False
    assert found["earliest"] > date.today().isoformat()


def test_plan_refuses_a_biennial_another_flowering_day_and_explains(capsys: Capture) -> None:
    words = ["canterbury-bell", "--flower", *PLAN]
    found = reckoned("plan", capsys, *words, "--by", "2028-09-20")
    assert (found["possible"], found["sow_from"]) == (False, None)
    assert "biennial" in found["reason"] and "Jul 2028" in found["reason"]
    inside = reckoned("plan", capsys, *words, "--by", "2028-06-20")
    assert inside["possible"] is True
    assert inside["sow_from"][:4] == "2027"


def test_plan_by_temperature_place_and_again(capsys: Capture) -> None:
    words = ["lettuce", "--by", "2027-06-20", "--pick", *PLAN]
    usual = reckoned("plan", capsys, *words)
    cold = reckoned("plan", capsys, *words, "--temp", "8")
    frame = reckoned("plan", capsys, *words, "--place", "frame", "--again", "14")
    assert cold["sow_by"] < usual["sow_by"]
    assert "frame" in frame["reason"]
    assert frame["next_sowing"] > frame["sow_best"]
    none = reckoned("plan", capsys, *words, "--temp", "0")
    assert (none["sow_from"], none["possible"]) == (None, False)
    assert "too cold" in none["reason"]


def test_frost_days_that_were_not_given_are_named_as_days(capsys: Capture) -> None:
    words = ["cosmos", "--want", "10", "--by", "2027-06-01", "--site", "52,0"]
    said = run(["reckon", "plan", *words, "--today", "2027-01-01"], capsys).err
    assert "last frost not given: 10 May is assumed" in said
    assert "first frost not given: 20 Oct is assumed" in said


def test_plan_sows_in_turn_as_often_as_asked(capsys: Capture) -> None:
    words = ("lettuce", "--by", "2027-06-20", "--pick", *PLAN, "--again", "14")
    found = reckoned("plan", capsys, *words, "--times", "8")
    turns = found["sowings"]
    assert [turn["wanted"] for turn in turns] == [
        (date(2027, 6, 20) + timedelta(days=14 * number)).isoformat() for number in range(1, 8)
    ]
    days = [turn["sow"] for turn in turns]
    assert days == sorted(days) and days[0] == found["next_sowing"]
    assert "vining peas" in found["succession_source"]
    ran = run(["reckon", "plan", *words, "--times", "20"], capsys)
    assert ran.code == 1 and "from the first harvest to the last" in ran.err


def test_plan_does_not_promise_tender_plants_after_the_first_frost(capsys: Capture) -> None:
    words = ("tomato", "--by", "2027-12-01", "--pick", *PLAN, "--first-frost", "10-12")
    found = reckoned("plan", capsys, *words)
    assert (found["possible"], found["sow_from"]) == (False, None)
    assert "dies of the site's first frost, Tue 12 Oct 2027" in found["reason"]
    assert found["earliest"][:4] == "2028"


def test_plan_in_the_south_and_below_zero_figures_stand_as_they_are(capsys: Capture) -> None:
    words = ["cosmos", "--want", "9", "--by", "2027-12-01", "--today", "2027-08-01"]
    found = reckoned("plan", capsys, *words, "--site", "-45.9,170.5", "--last-frost", "11-11")
    joined = reckoned("plan", capsys, *words, "--site=-45.9,170.5", "--last-frost", "11-11")
    assert found == joined
    assert found["sow_from"] == "2027-10-20"  # six weeks before


def test_frost_gives_the_dates_of_the_open_data(capsys: Capture) -> None:
    # physics notes 5.3 on NOAA GHCN-Daily USC00010655, derived by a second way
    found = reckoned("frost", capsys, "minima.csv", "--lat", "34")
    keys = ("p10", "p50", "p90")
    assert [found["last_spring"][key] for key in keys] == ["03-17", "03-31", "04-17"]
    assert [found["first_autumn"][key] for key in keys] == ["10-19", "10-31", "11-14"]
    assert (found["last_spring"]["years"], found["first_autumn"]["years"]) == (22, 21)
    assert found["void_years"] == [2007]
    assert len(found["per_year"]) == 22
    assert found["per_year"][0]["year"] == 2003
    assert [found["last_spring"][f"normal_{key}"] for key in keys] == ["03-16", "04-01", "04-18"]


def test_frost_takes_another_threshold_column_and_unit(bench: Path, capsys: Capture) -> None:
    text = (bench / "minima.csv").read_text(encoding="utf-8").splitlines()
    lines = ["DAY;NIGHT"]
    for line in text[1:]:
        day, low = line.split(",")
        lines.append(f"{day};{float(low) * 1.8 + 32:.2f}" if low else f"{day};")
    (bench / "f.csv").write_text("\n".join(lines), encoding="utf-8")
    plain = reckoned("frost", capsys, "minima.csv", "--lat", "34", "--threshold", "-2.2")
    words = ["f.csv", "--lat", "34", "--threshold", "-2.2", "--column", "NIGHT", "--units", "F"]
    assert reckoned("frost", capsys, *words) == plain
    assert plain["last_spring"]["p50"] < "03-31"  # a harder frost ends earlier


def test_sun_agrees_with_the_almanac(capsys: Capture) -> None:
    # USNO annual table 2023, 36.95 N 112.52 W, UTC-7 (read): 1 Jan rise 07:43, set 17:24
    found = reckoned(
        "sun", capsys, "--lat", "36.95", "--lon", "-112.52", "--on", "2023-01-01", "--tz", "-7"
    )
    assert abs(minutes(found["sunrise"]) - minutes("07:43")) <= 1
    assert abs(minutes(found["sunset"]) - minutes("17:24")) <= 1
    assert found["day_length_h"] == pytest.approx(9.68, abs=0.03)


def minutes(clock: str) -> int:
    return int(clock[:2]) * 60 + int(clock[3:])


def test_sun_radiation_is_that_of_fao_example_10(capsys: Capture) -> None:
    # FAO-56 Example 10 (read second-hand): 22.9 S, 15 May, n 7.1 h: Ra 25.1, N 10.9, Rs 14.45
    words = ["--lat", "-22.9", "--lon", "-43.2", "--on", "2025-05-15"]
    found = reckoned("sun", capsys, *words, "--sun-hours", "7.1")
    assert found["above_air_mj"] == pytest.approx(25.1, abs=0.05)
    assert found["longest_sun_hours"] == pytest.approx(10.9, abs=0.05)
    assert found["radiation_mj"] == pytest.approx(14.45, abs=0.05)
    clear = reckoned("sun", capsys, *words)
    assert clear["radiation_mj"] == clear["clear_sky_mj"] == pytest.approx(0.75 * 25.1, abs=0.05)


def test_sun_at_midnight_sun_and_polar_night(capsys: Capture) -> None:
    words = ["--lat", "70", "--lon", "20", "--on"]
    up = reckoned("sun", capsys, *words, "2026-06-21")
    assert (up["sunrise"], up["sunset"], up["day_length_h"]) == (None, None, 24.0)
    assert "up all day" in up["reason"]
    down = reckoned("sun", capsys, *words, "2026-12-21")
    assert down["day_length_h"] == 0.0
    assert "down all day" in down["reason"]


def test_frame_gains_are_those_of_the_worked_balance(capsys: Capture) -> None:
    # physics notes G01: 1.2 x 0.6 m at 600 W/m2, shut +22 K; a wider lid is never warmer
    found = reckoned("frame", capsys, "--radiation", "600", "--wind", "2")
    assert found["gain_c"] == pytest.approx(22.2, abs=0.2)
    gains = list(found["gains_c"].values())
    assert gains == sorted(gains, reverse=True)
    crack = reckoned("frame", capsys, "--radiation", "600", "--wind", "2", "--lid", "crack")
    assert crack["gain_c"] == found["gains_c"]["crack"]


DAY = ["--min", "5", "--max", "23", "--sun-hours", "12", "--lat", "52.5", "--lon", "-1"]


def test_frame_through_a_day_has_hours_and_advice(capsys: Capture) -> None:
    words = [*DAY, "--on", "2026-05-27", "--tz", "Europe/London"]
    found = reckoned("frame", capsys, *words)
    assert [hour["hour"] for hour in found["hours"]] == list(range(24))
    assert max(hour["shut_c"] for hour in found["hours"]) == found["shut_max_c"]
    assert found["shut_max_c"] > 35
    assert max(hour["advised_c"] for hour in found["hours"]) < found["shut_max_c"]
    kinds = [step["kind"] for step in found["advice"]]
    assert "open" in kinds and "lower" in kinds
    assert all(step["source"] for step in found["advice"])
    windy = reckoned("frame", capsys, *words, "--gust", "68", "--rain", "22", "--next-min", "2")
    assert "shut and strap" in [step["kind"] for step in windy["advice"]]


def test_water_days_are_those_of_the_balance(capsys: Capture) -> None:
    # 128 cells of 25 ml hold 25 % of 3.2 l in peat: 800 ml (physics notes W02, derived)
    words = ["--container", "128-cell tray", "--tmin", "8", "--tmax", "18", "--lat", "52"]
    found = reckoned(
        "water", capsys, *words, "--on", "2026-05-15", "--compost", "peat", "--roots",
        "roots throughout",
    )  # fmt: skip
    assert found["capacity_ml"] == pytest.approx(800)
    # 15 May at 52 N, 18/8 C: 3.5 mm by eq. 52 (physics notes 2.3, derived)
    assert found["et0_mm"] == pytest.approx(3.5, abs=0.1)
    assert found["loss_ml"] == pytest.approx(found["et0_mm"] * 177, rel=0.01)
    assert found["days_left"] == pytest.approx(800 / found["loss_ml"], abs=0.01)
    shut = reckoned("water", capsys, *words, "--on", "2026-05-15", "--exposure", "lid shut")
    assert shut["days_left"] > 10 * found["days_left"]
    sky = reckoned("water", capsys, *words, "--on", "2026-05-15", "--sun-share", "1")
    assert "Penman" in sky["method"] and sky["stand_ins"]


DEGREE_DAYS = [
    ("single-sine", "7", "40", 10.94),
    ("single-triangle", "7", "40", 11.14),
    ("average", "7", "40", 11.5),
    ("single-sine", "13", "40", 12.94),
    ("single-sine", "35", "40", 21.0),
]


@pytest.mark.parametrize(
    ("method", "low", "high", "expected"),
    DEGREE_DAYS,
    ids=[f"D05 {low}/{high} {m}: TrenchR (read second-hand)" for m, low, high, _ in DEGREE_DAYS],
)
def test_degree_days_of_a_day(
    method: str, low: str, high: str, expected: float, capsys: Capture
) -> None:
    words = ["--min", low, "--max", high, "--base", "12", "--ceiling", "33", "--method", method]
    assert reckoned("degreedays", capsys, *words)["degree_days"] == pytest.approx(
        expected, abs=0.01
    )


@pytest.mark.parametrize(
    ("method", "total"),
    [("single-sine", 2095.99), ("single-triangle", 2026.76)],
    ids=["UC IPM, Ojai 2016, single sine (read)", "UC IPM, Ojai 2016, single triangle (read)"],
)
def test_degree_days_of_a_year(method: str, total: float, capsys: Capture) -> None:
    words = ["ojai.csv", "--base", "12", "--ceiling", "33", "--method", method]
    found = reckoned("degreedays", capsys, *words)
    assert found["degree_days"] == pytest.approx(total, abs=0.3)  # theirs adds rounded days
    assert (found["days"], found["missing_days"]) == (366, 0)


def test_degree_days_by_the_other_methods(capsys: Capture) -> None:
    met = reckoned(
        "degreedays", capsys, "--min", "2", "--max", "12", "--base", "5.5", "--method", "met-office"
    )
    assert met["degree_days"] == pytest.approx(2.375)  # Met Eireann page, four cases (read)
    double = reckoned(
        "degreedays", capsys, "ojai.csv", "--base", "12", "--ceiling", "33", "--method",
        "double-sine",
    )  # fmt: skip
    # UC IPM 2096.13 for the year (read); no night is known after the last day, worth about 2
    assert double["degree_days"] == pytest.approx(2096.13, abs=5)
    assert (double["days"], double["missing_days"]) == (365, 1)
    truncated = reckoned(
        "degreedays", capsys, "--min", "5", "--max", "25", "--base", "10", "--ceiling", "30",
        "--method", "truncated",
    )  # fmt: skip
    assert truncated["degree_days"] == pytest.approx(7.5)  # (10 + 25) / 2 - 10, by the rule


USAGE = [
    ["reckon"],
    ["reckon", "tea-leaves"],
    ["reckon", "emergence", "tomato"],
    ["reckon", "emergence", "tomato", "--temp", "warm"],
    ["reckon", "emergence", "tomato", "--temp", "nan"],
    ["reckon", "emergence", "tomato", "--temp", "1e999"],
    ["reckon", "quantity", "--want", "2.5", "--germination", "0.8"],
    ["reckon", "quantity", "--want", "24"],
    ["reckon", "quantity", "--want", "24", "--germination", "x%"],
    ["reckon", "plan", "cosmos", "--want", "9", "--by", "15.5.2027", "--site", "52,0"],
    ["reckon", "plan", "cosmos", "--want", "9", "--by", "2027-02-30", "--site", "52,0"],
    ["reckon", "plan", "cosmos", "--want", "9", "--by", "2027-05-15", "--site", "52"],
    ["reckon", "plan", "cosmos", *PLAN, "--by", "2027-05-15", "--last-frost", "02-29"],
    ["reckon", "plan", "cosmos", *PLAN, "--by", "2027-05-15", "--flower", "--pick"],
    ["reckon", "plan", "cosmos", *PLAN, "--by", "2027-05-15", "--temp", "5", "--place", "frame"],
    ["reckon", "plan", "cosmos", *PLAN, "--by", "2027-05-15", "--place", "cellar"],
    ["reckon", "sun", "--lat", "52", "--lon", "0", "--on", "3000-01-01"],
    ["reckon", "frame"],
    ["reckon", "frame", "--radiation", "600", "--min", "5"],
    ["reckon", "frame", "--min", "5", "--max", "15"],
    ["reckon", "frame", "--radiation", "600", "--lid", "ajar"],
    ["reckon", "frame", "--radiation", "600", "--size", "1.2"],
    ["reckon", "water", "--container", "40-cell tray"],
    ["reckon", "degreedays", "--base", "5"],
    ["reckon", "degreedays", "ojai.csv", "--min", "5", "--max", "9", "--base", "5"],
    ["reckon", "degreedays", "--min", "5", "--max", "9", "--base", "5", "--method", "double-sine"],
    ["reckon", "degreedays", "--min", "5", "--max", "9", "--base", "5", "--method", "truncated"],
    [
        "reckon", "degreedays", "--min", "5", "--max", "9", "--base", "5", "--method", "met-office",
        "--ceiling", "30",
    ],
    ["reckon", "frost", "minima.csv"],
]  # fmt: skip


@pytest.mark.parametrize("words", USAGE, ids=[" ".join(words[1:])[:70] for words in USAGE])
def test_wrong_usage_ends_with_2_and_says_how(words: list[str], capsys: Capture) -> None:
    ran = run(words, capsys)
    assert (ran.code, ran.out) == (2, "")
    assert "usage:" in ran.err


IMPOSSIBLE = [
    (["emergence", "tomato", "--temp", "90"], "-60 to 60"),
    (["quantity", "--want", "0", "--germination", "0.8"], "plants wanted is 0"),
    (["quantity", "--want", "24", "--germination", "80"], "above 0 and up to 1"),
    (["quantity", "--want", "24", "--germination", "0"], "above 0 and up to 1"),
    (["quantity", "--want", "24", "--germination", "0.8", "--chance", "1"], "above 0 and below 1"),
    (["quantity", "--want", "24", "--germination", "0.8", "--survival", "1.2"], "survival"),
    (["quantity", "--want", "9", "--germination", "0.8", "--container", "bath"], "40-cell tray"),
    (["plan", "cosmos", *PLAN, "--by", "2027-05-15", "--site", "95,0"], "-90 to 90"),
    (["plan", "tomato", *PLAN, "--by", "2027-05-15", "--flower"], "another goal"),
    (["plan", "nosuch", *PLAN, "--by", "2027-05-15"], "No crop is called"),
    (["frost", "nosuch.csv", "--lat", "52"], "cannot be read"),
    (["frost", "minima.csv", "--lat", "99"], "-90 to 90"),
    (["frost", "minima.csv", "--lat", "52", "--threshold", "99"], "-60 to 60"),
    (["frost", "minima.csv", "--lat", "52", "--column", "tmax"], "is not in the file"),
    (["sun", "--lat", "99", "--lon", "0", "--on", "2026-05-27"], "-90 to 90"),
    (["sun", "--lat", "52", "--lon", "200", "--on", "2026-05-27"], "-180 to 180"),
    (["sun", "--lat", "52", "--lon", "0", "--on", "2026-05-27", "--tz", "Mars/Base"], "time zone"),
    (["sun", "--lat", "52", "--lon", "0", "--on", "2026-05-27", "--tz", "15"], "-14 to 14"),
    (["sun", "--lat", "52", "--lon", "0", "--on", "2026-05-27", "--sun-hours", "20"], "length of"),
    (["frame", "--radiation", "5000"], "0 to 1400"),
    (["frame", "--radiation", "600", "--wind", "-1"], "0 to 60"),
    (["frame", "--radiation", "600", "--size", "50,1"], "0.3 to 20"),
    (["frame", *DAY, "--on", "2026-05-27", "--gust", "400"], "0 to 300"),
    (["frame", *DAY, "--on", "2026-05-27", "--max", "2"], "swapped"),
    (["frame", *DAY, "--on", "2026-05-27", "--tz", "Mars/Base"], "time zone"),
    (
        ["water", "--container", "bath", "--tmin", "5", "--tmax", "9", "--lat", "52", "--on",
         "2026-05-27"],
        "no container",
    ),
    (
        ["water", "--container", "9 cm pot", "--tmin", "15", "--tmax", "9", "--lat", "52", "--on",
         "2026-05-27"],
        "swapped",
    ),
    (["degreedays", "--min", "9", "--max", "5", "--base", "5"], "swapped"),
    (["degreedays", "--min", "5", "--max", "9", "--base", "30", "--ceiling", "5"], "swapped"),
    (["degreedays", "minima.csv", "--base", "5"], "--map"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("words", "said"), IMPOSSIBLE, ids=[" ".join(words)[:70] for words, _ in IMPOSSIBLE]
)
def test_figures_that_cannot_be_end_with_1_and_name_the_range(
    words: list[str], said: str, capsys: Capture
) -> None:
    ran = run(["reckon", *words, "--json"], capsys)
    assert (ran.code, ran.out) == (1, "")
    assert said in ran.err
    assert ran.err.count("benchround:") == 1


def test_every_subject_prints_text_and_json_with_its_source(capsys: Capture) -> None:
    words = {
        "emergence": ["tomato", "--temp", "18"],
        "quantity": ["--want", "24", "--germination", "0.8"],
        "germination": ["0 4 6", "--sown", "20"],
        "plan": ["cosmos", "--by", "2027-05-15", *PLAN],
        "frost": ["minima.csv", "--lat", "34"],
        "sun": ["--lat", "52", "--lon", "0", "--on", "2026-05-27"],
        "frame": ["--radiation", "600"],
        "water": ["--container", "9 cm pot", "--tmin", "5", "--tmax", "15", "--lat", "52", "--on",
                  "2026-05-27"],
        "degreedays": ["--min", "5", "--max", "15", "--base", "5"],
        "tonight": ["--max", "12", "--dew", "4", "--sky", "light wind, little cloud"],
        "storage": ["lettuce", "--moisture", "6", "--temp", "5"],
        "late": ["--median", "10", "--sigma", "0.3", "--looked", "14"],
        "base": ["15:70", "27:24"],
        "weight": ["--thousand", "2.1"],
        "trial": ["86", "92", "84", "90"],
        "lots": ["28/40", "35/40"],
        "succession": ["lettuce", "--heat", "100"],
        "pot": ["--round", "90", "--depth", "85"],
        "evaporation": ["--tmin", "5", "--tmax", "15", "--lat", "52", "--on", "2026-05-27"],
        "air": ["--temp", "20", "--dew", "10"],
        "wind": ["--ms", "5"],
    }  # fmt: skip
    assert set(words) == set(SUBJECTS)
    for subject, more in words.items():
        text = run(["reckon", subject, *more], capsys)
        assert text.code == 0
        assert len(text.out.splitlines()) >= 2
        value = json.loads(run(["reckon", subject, *more, "--json"], capsys).out)
        assert value["source"]
        assert value["source"].split(";")[0][:20] in text.out
