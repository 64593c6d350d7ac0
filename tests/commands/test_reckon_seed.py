"""Sums on seed, succession, lots, air and wind, held against published and worked figures."""

from __future__ import annotations

import math

import pytest

from tests.commands.shell import reckoned, run

Capture = pytest.CaptureFixture[str]
pytestmark = pytest.mark.usefixtures("bench")

LATE = ("late", "--median", "10", "--sigma", "0.3")
PARTIAL = (*LATE, "--looked", "14", "--germination", "80%", "--tested", "20")
CROWDER_1 = (
    "2/43 9/51 5/44 16/71 2/24 0/7",
    "17/19 43/56 79/87 50/55 9/10",
    "11/13 47/62 90/104 46/51 9/11",
)
"""Orobanche plates, Crowder 1978, table 1 (from memory; they give the proportions read)."""


def test_succession_by_heat_units(capsys: Capture) -> None:
    """Ottosson, ISHS 27_34 (rule read, numbers own): 95.2 C d; 21 days at 9 C, 12 at 13 C."""
    asked = ("--gap", "7", "--harvest-mean", "18", "--base", "4.4", "--sown", "2027-04-01")
    cool = reckoned("succession", capsys, *asked, "--mean", "9")
    warm = reckoned("succession", capsys, *asked, "--mean", "13")
    assert cool["heat"] == pytest.approx(95.2)
    assert (cool["days"], cool["next_sowing"]) == (21, "2027-04-22")
    assert (warm["days"], warm["next_sowing"]) == (12, "2027-04-13")


def test_sowing_so_as_to_be_ready_by_daily_means(capsys: Capture) -> None:
    """Own worked example on calendula, Joly et al. 2013: 89 C d above 5.5 C."""
    means = ["8", "9", "10", "11", "12", "13", "14", "15", "15", "16", "16", "17", "17", "18", "18"]
    asked = ("--heat", "89", "--base", "5.5", "--wanted", "2027-04-20", "--mean", *means)
    assert reckoned("succession", capsys, *asked)["sow_by"] == "2027-04-12"


def test_sweet_corn_is_told_its_own_rules(capsys: Capture) -> None:
    """100 F-days above 50 F: UConn IPM; 1/2 to 1 inch: Ward Upham, Kansas State (both read)."""
    out = run(["reckon", "succession", "sweetcorn", "--heat", "100"], capsys).out
    assert "56 degree-days above 10 C" in out and "13 to 25 mm high" in out
    assert "sweet corn" not in run(["reckon", "succession", "lettuce", "--heat", "9"], capsys).out


@pytest.mark.parametrize(
    ("cold", "warm", "base_c", "heat"),
    [(70, 24, 8.739, 438.3), (64, 39, -3.72, 1198.1), (96, 48, 3.0, 1152.0)],
    ids=["Coreopsis", "Gaillardia", "Rudbeckia"],
)
def test_a_base_from_two_temperatures_is_said_to_be_for_showing(
    cold: int, warm: int, base_c: float, heat: float, capsys: Capture
) -> None:
    """Days at 15 and 27 C: HortScience 30(4):861B (read; base own)."""
    found = reckoned("base", capsys, f"15:{cold}", f"27:{warm}")
    assert found["base_c"] == pytest.approx(base_c, abs=0.05)
    assert found["heat"] == pytest.approx(heat, abs=0.05)
    assert found["table"] is None and "for showing only" in found["source"]


def test_a_base_of_more_temperatures_gives_a_table(capsys: Capture) -> None:
    """Onion 80 C d above 2.5 C: Brewster, from Harrington 1962 (read)."""
    points = [f"{t}:{80 / (t - 2.5):.9f}" for t in (7.5, 12.5, 17.5, 22.5)]
    found = reckoned("base", capsys, *points, "--optimum", "25")
    assert (found["base_c"], found["heat"]) == pytest.approx((2.5, 80.0), abs=1e-3)
    assert found["table"]["base_c"] == pytest.approx(2.5, abs=1.0)
    # Rudbeckia at 18 C: 76.8 d, HortScience 30(4):861B (read)
    known = ("--base", "3", "--heat", "1152", "--at", "18", "--wanted", "2027-06-20")
    at = reckoned("base", capsys, *known)
    assert (at["days"], at["start"]) == (76.8, "2027-04-04")


def test_late_and_dead(capsys: Capture) -> None:
    """Own worked example, closed form, scipy and simulation agree: median 10 d, sigma 0.3."""
    found = reckoned(*LATE[:1], capsys, *LATE[1:], "--looked", "14", "--within", "7")
    assert found["nothing_yet"] == pytest.approx(0.131021779816, abs=1e-6)
    assert found["alive"] == pytest.approx(0.54111517, abs=1e-6)
    assert found["up_within"] == pytest.approx(0.51345732, abs=1e-6)
    assert found["late_day"] == pytest.approx(14.69, abs=0.005)
    assert found["give_up_day"] == pytest.approx(17.76, abs=0.005)
    other = reckoned(*LATE[:1], capsys, *LATE[1:], "--looked", "14", "--law", "log-logistic")
    assert other["give_up_day"] == pytest.approx(18.00, abs=0.005)


def test_what_a_count_so_far_comes_to(capsys: Capture) -> None:
    """Own worked examples by several methods: germination Beta(16, 4)."""
    some = reckoned(PARTIAL[0], capsys, *PARTIAL[1:],
                    "--sown", "20", "--up", "6", "--due", "50%", "--want", "12")  # fmt: skip
    assert some["final"] == pytest.approx(14.948261803477, abs=1e-6)
    assert some["final_if_known"] == pytest.approx(15.3333333, abs=1e-6)
    assert some["enough"] == pytest.approx(0.918491630743, abs=1e-6)
    assert some["alive"] is None and some["none_up"] is None
    none = reckoned(PARTIAL[0], capsys, *PARTIAL[1:],
                    "--sown", "12", "--due", "30%", "--dead", "5%")  # fmt: skip
    assert none["none_up"] == pytest.approx(0.040346992283, abs=1e-9)
    assert none["germination_after_none"] == pytest.approx(0.7600543104, abs=1e-9)
    assert none["all_dead"] == pytest.approx(0.56605, abs=5e-5)
    assert none["greatest_share"] == pytest.approx(1 - 0.05 ** (1 / 12), abs=1e-6)


def test_plates_of_a_test(capsys: Capture) -> None:
    """Range 14 at a mean of 85: 7 CFR 201.55(a), older; 4 at 94: Federal Seed Act (read)."""
    even = reckoned("trial", capsys, "78", "92", "85", "85")
    assert (even["mean_percent"], even["range"], even["allowed_printed"]) == (85.0, 14.0, 14)
    assert even["plates_agree"] is True
    assert even["error_percent"] == pytest.approx(100 * math.sqrt(0.85 * 0.15 / 400), abs=1e-4)
    wide = reckoned("trial", capsys, "77", "92", "85", "86", "--other", "75")
    assert wide["plates_agree"] is False and wide["tests_agree"] is False
    two = reckoned("trial", capsys, "96", "96", "96", "96", "--other", "92")
    assert (two["difference_allowed"], two["tests_agree"]) == (4, True)


def test_seed_by_weight(capsys: Capture) -> None:
    """Sum 1.7061 g, squares 0.36397635 g2: FRSA tutorial 2001; kg/ha: Plant Science Consulting."""
    mean, sd = 1.7061 / 8, math.sqrt((8 * 0.36397635 - 1.7061**2) / 56)
    hundreds = [f"{mean + sign * sd * math.sqrt(7 / 8):.12f}" for sign in (1, -1) * 4]
    found = reckoned("weight", capsys, "--hundreds", *hundreds, "--seeds", "2500")
    assert found["mean_g"] == pytest.approx(0.2132625, abs=1e-7)
    assert found["variance"] == pytest.approx(1.8457e-05, abs=5e-9)
    assert found["variation_percent"] == pytest.approx(2.0145, abs=5e-5)
    assert found["even"] is True
    assert found["grams"] == pytest.approx(5.33156, abs=1e-4)
    rate = ("--thousand", "40", "--plants-per-m2", "150", "--germination", "80%")
    assert reckoned("weight", capsys, *rate)["kg_per_ha"] == pytest.approx(75.0)
    # Sidalcea 4547 an ounce, sample 16 g: AOSA 2019 proposals (read)
    sidalcea = reckoned("weight", capsys, "--per-ounce", "4547")
    assert sidalcea["seeds_per_gram"] == pytest.approx(160, abs=0.6)
    assert sidalcea["working_sample_g"] == 16


@pytest.mark.parametrize(
    ("lots", "share"), list(zip(CROWDER_1, (0.142, 0.872, 0.842), strict=True)), ids=("1", "2", "3")
)
def test_lots_pooled(lots: str, share: float, capsys: Capture) -> None:
    """Crowder 1978, table 1 (read): proportions of the groups, without any belief before."""
    found = reckoned("lots", capsys, *lots.split(), "--packet", "50%", "--worth", "0.0001")
    assert found["with_packet"] == pytest.approx(share, abs=5e-4)


def test_lots_and_packet(capsys: Capture) -> None:
    """Own worked examples: 28 of 40 with a packet's 85 % worth 30 seeds; five lots by moments."""
    one = reckoned("lots", capsys, "28/40", "--packet", "85%", "--worth", "30")
    assert one["share"] == one["with_packet"] == pytest.approx(0.764286, abs=1e-6)
    assert (one["low"], one["high"]) == pytest.approx((0.677249, 0.842682), abs=1e-6)
    assert one["lot_worth_seeds"] is None
    five = reckoned("lots", capsys, "90/100", "80/100", "70/100", "85/100", "75/100")
    assert (five["moments_share"], five["moments_seeds"]) == pytest.approx((0.8, 24.6), abs=1e-3)
    old = reckoned("lots", capsys, "8/10", "18/20", "27/30", "--ages", "0", "1", "2")
    assert old["share"] == pytest.approx(0.861864, abs=1e-6)


def test_lots_drawn_together_and_losses(capsys: Capture) -> None:
    """18 batters: 0.294 and 0.242, Efron & Morris 1977; losses by Berry's slides (read)."""
    hits = (18, 17, 16, 15, 14, 14, 13, 12, 11, 11, 10, 10, 10, 10, 10, 9, 8, 7)
    asked = (*(f"{hit}/45" for hit in hits), "--losses", "3/4", "--losses-before", "2/4")
    found = reckoned("lots", capsys, *asked)
    drawn = found["drawn_together"]
    assert (drawn[0], drawn[-1]) == pytest.approx((0.294, 0.242), abs=1e-3)
    assert found["losses_a_week"] == 0.625
    assert found["no_loss_next_week"] == pytest.approx(0.554929, abs=1e-6)


def test_air_by_wet_bulb_and_humidity(capsys: Capture) -> None:
    """FAO-56 example 4: 1.91 kPa; 31 C and 24 %: deficit 3.42; the leak is a worked example."""
    wet = reckoned("air", capsys, "--temp", "25.6", "--wet", "19.5", "--altitude", "1200")
    assert wet["vapour_kpa"] == pytest.approx(1.91, abs=0.005)
    dry = reckoned("air", capsys, "--temp", "31", "--humidity", "24")
    assert dry["deficit_kpa"] == pytest.approx(3.42, abs=0.01)
    back = reckoned("air", capsys, "--temp", "31", "--dew", str(dry["dew_point_c"]))
    assert back["humidity_percent"] == pytest.approx(24.0, abs=0.01)
    shut = ("--temp", "20", "--humidity", "100", "--outside", "10,80", "--volume", "0.216")
    assert reckoned("air", capsys, *shut)["lost_g_h"] == pytest.approx(4.2, abs=0.1)


def test_evaporation_of_a_published_day(capsys: Capture) -> None:
    """Uccle, 6 July, FAO-56 example 18: 3.88 mm; sun 9.25 of 16.1 h, wind 2.78 m/s at 10 m."""
    found = reckoned(
        "evaporation", capsys, "--tmin", "12.3", "--tmax", "21.5", "--lat", "50.8", "--on",
        "2027-07-06", "--altitude", "100", "--sun-share", str(9.25 / 16.1), "--humidities",
        "84,63", "--wind", "2.78", "--wind-height", "10",
    )  # fmt: skip
    assert found["grass_mm"] == pytest.approx(3.88, abs=0.02)
    assert found["wind_2m_ms"] == pytest.approx(2.078, abs=0.002)
    assert found["open_water_mm"] > found["grass_mm"]
    bare = reckoned(
        "evaporation", capsys, "--tmin", "12.3", "--tmax", "21.5", "--lat", "50.8", "--on",
        "2027-07-06", "--cover", "70%",
    )  # fmt: skip
    assert bare["turc_mm"] is None
    assert 0.0 < bare["under_cover_mm"] < found["grass_mm"]


@pytest.mark.parametrize(
    ("asked", "force"),
    [(("--ms", "10.8"), 6), (("--ms", "10.7"), 5), (("--knots", "16"), 4), (("--kmh", "45"), 6)],
    ids=["lower limit of 6", "just below", "16 knots", "45 km/h"],
)
def test_wind_of_a_force(asked: tuple[str, str], force: int, capsys: Capture) -> None:
    """Beaufort table with m/s limits (read)."""
    assert reckoned("wind", capsys, *asked)["force"] == force
    assert reckoned("wind", capsys, "--force", "6")["mean_ms"] == pytest.approx(12.3, abs=0.05)


def test_a_pot_of_ones_own(capsys: Capture) -> None:
    """125 x 30 mm: 29 ml as a cone, 88 ml as a cylinder (plain geometry)."""
    asked = ("pot", "--round", "30", "--depth", "125", "--taper")
    assert reckoned(asked[0], capsys, *asked[1:], "0")["cell_ml"] == pytest.approx(29.5, abs=0.1)
    assert reckoned(asked[0], capsys, *asked[1:], "1")["cell_ml"] == pytest.approx(88.4, abs=0.1)


def test_germination_by_the_seeds_sown_and_with_seeds_taken(capsys: Capture) -> None:
    """Lobelia at 15 C (Onofri et al., read): 38 up by day 7 and 52 by day 9; arithmetic."""
    newly = (2, 12, 11, 13, 14, 4, 6, 4, 5, 5, 2, 1, 2, 1, 3, 2, 2, 2, 0, 1)
    pairs = [f"{1 + 2 * number}:{count}" for number, count in enumerate(newly)]
    found = reckoned("germination", capsys, *pairs, "--sown", "100")
    assert found["up"] == 92
    assert found["days_of_sown"]["50%"] == pytest.approx(7 + 2 * 12 / 14, abs=1e-5)
    assert found["days_of_sown"]["90%"] == pytest.approx(35.0, abs=2.0)
    taken = reckoned("germination", capsys, "0 0 0 0 40", "--sown", "50", "--taken", "4:3")
    (step,) = taken["followed"]
    assert (step["day"], step["at_risk"]) == (5.0, 47)
    assert step["not_up"] == pytest.approx(7 / 47, abs=1e-6)
    ran = run(["reckon", "germination", "40", "--sown", "50", "--taken", "1:20"], capsys)
    assert ran.code == 1 and "60 seeds came up or were taken of 50 sown" in ran.err


def test_more_of_the_older_subjects(capsys: Capture) -> None:
    """Wet 5.66 % is dry 6 %; (1 - 0.8)^2; two seeds fill 95 %, 1 - 0.05^(1/2) (arithmetic)."""
    kept = reckoned("storage", capsys, "lettuce", "--moisture", "6", "--temp", "5")
    assert kept["moisture_dry_percent"] == pytest.approx(100 * 6 / 94, abs=0.01)
    cells = ("--want", "24", "--germination", "80%", "--per-cell", "2", "--fill", "95%")
    filled = reckoned("quantity", capsys, *cells)
    assert (filled["blank_share"], filled["seeds_to_fill"]) == pytest.approx((0.04, 2))
    assert filled["least_germination"] == pytest.approx(1 - math.sqrt(0.05), abs=1e-6)
    # NOAA's thresholds, 36 to 16 F: NCEI normals methodology 2020 (read)
    frost = reckoned("frost", capsys, "minima.csv", "--lat", "34")
    degrees_f = sorted(32 + 1.8 * one["threshold_c"] for one in frost["by_threshold"])
    assert degrees_f == pytest.approx([16, 20, 24, 28, 32, 36], abs=0.09)
    # 58.8 deg: 90 - 52.5 + 21.3 of declination (arithmetic)
    sun = reckoned("sun", capsys, "--lat", "52.5", "--lon", "-1", "--on", "2026-05-27")
    assert sun["highest_deg"] == pytest.approx(58.8, abs=0.3)
    # library's 10 d drawn to 7, 8, 9 d: 9.07 (own worked example), here by its ratio
    own = reckoned("emergence", capsys, "tomato", "--temp", "18", "--own", "7", "8", "9")
    assert own["own_median_days"] == pytest.approx(
        math.exp((4 * math.log(own["median_days"]) + math.log(7 * 8 * 9)) / 7), abs=1e-3
    )
    heat = reckoned("frame", capsys, "--radiation", "600", "--wind", "2")["heat_w"]
    assert sum(heat.values()) == pytest.approx(2 * heat["taken in"], abs=0.1)
    tray = ("--container", "40-cell tray", "--tmin", "8", "--tmax", "20", "--lat", "52")
    weighed = reckoned("water", capsys, *tray, "--on", "2026-05-15", "--weighed", "3000,2750")
    area = 0.37 * 0.23
    assert weighed["own_factor"] == pytest.approx(250 / (1000 * area * weighed["et0_mm"]), abs=1e-3)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("succession", "--gap", "7"), "give --base"),
        (("succession", "--base", "5"), "give --heat"),
        (("base", "15:70"), "give two temperatures"),
        (("base", "15"), "no temperature and days"),
        (("trial", "86"), "two plates or more"),
        (("lots", "28"), "no count such as 28/40"),
        (("lots", "28/40", "--ages", "1", "2"), "2 ages for 1 counts"),
        (("wind", "--force", "13"), "does not exist"),
        (("air", "--temp", "20", "--wet", "21"), "wet bulb"),
        (("pot", "--round", "0", "--depth", "5"), "the diameter"),
        ((*LATE, "--looked", "-1"), "days since sowing"),
    ],
    ids=lambda value: " ".join(value) if isinstance(value, tuple) else "",
)
def test_what_cannot_be_is_named(words: tuple[str, ...], said: str, capsys: Capture) -> None:
    ran = run(["reckon", *words], capsys)
    assert ran.code in (1, 2)
    assert said in ran.err
    assert ran.out == ""
