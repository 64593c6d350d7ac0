import math
from typing import Any

import numpy as np
import pytest
from scipy import optimize, stats

from benchround.core.errors import OutOfRangeError
from benchround.core.seed.hill import HillCurve, fit_hill
from benchround.core.seed.interval_fit import TimeFit, fit_loglogistic, fit_lognormal
from benchround.core.seed.looks import Looks
from benchround.core.seed.survival import kaplan_meier
from tests.core.published import Figure, Seen, figure_cases
from tests.core.samples import LOBELIA, LOBELIA_15, LOBELIA_25, REFERENCE, SAMPLES

HILL = "germinationmetrics test-FourPHFfit.R; vignette pp. 45-46; model El-Kassaby et al. 2008"


def hill(looks: Looks) -> HillCurve:
    curve = fit_hill(looks)
    assert curve is not None
    return curve


def fitted(fit: TimeFit | None) -> TimeFit:
    assert fit is not None
    return fit


def number(value: float | None) -> float:
    assert value is not None
    return value


CURVE = hill(REFERENCE)
BOTH = fitted(fit_lognormal(LOBELIA_15, LOBELIA_25))
# the null model: one median for both temperatures
POOLED = fitted(
    fit_lognormal(
        Looks.on_days(
            LOBELIA_15.times(),
            [a.newly_up + b.newly_up
             for a, b in zip(LOBELIA_15.steps, LOBELIA_25.steps, strict=True)],
            200,
        )
    )
)  # fmt: skip
ALONE = fitted(fit_lognormal(LOBELIA_15))
LOGISTIC = fitted(fit_loglogistic(LOBELIA_15))
OWN = f"own worked example on data of {LOBELIA}, two methods"

FIGURES = (
    Figure("G60 b", HILL, Seen.READ, 9.881936892198, 2e-6, lambda: CURVE.steepness),
    Figure("G60 c", HILL, Seen.READ, 6.034953554235, 2e-6, lambda: CURVE.half_day),
    Figure("G61 10 %", HILL, Seen.READ, 4.956264309947, 2e-6,
           lambda: number(CURVE.day_of_percent_sown(10))),
    Figure("G61 50 %", HILL, Seen.READ, 6.355121497386, 2e-6,
           lambda: number(CURVE.day_of_percent_sown(50))),
    Figure("G61 60 %", HILL, Seen.READ, 6.744598346331, 2e-6,
           lambda: number(CURVE.day_of_percent_sown(60))),
    Figure("G62 10 %", HILL, Seen.READ, 4.83180737938, 2e-6, lambda: CURVE.day_of_percent_up(10)),
    Figure("G62 60 %", HILL, Seen.READ, 6.287723573675, 2e-6, lambda: CURVE.day_of_percent_up(60)),
    Figure("G62 90 %", HILL, Seen.READ, 7.537689634979, 2e-6, lambda: CURVE.day_of_percent_up(90)),
    Figure("G62 t90-t10", HILL, Seen.READ, 2.705882255599, 2e-6, CURVE.uniform_days),
    Figure("G63", HILL, Seen.READ, 5.912194404649, 2e-6, CURVE.fastest_day),
    Figure("G64", HILL, Seen.READ, 1108.97550938733, 0.001, lambda: CURVE.area_to(20)),
    Figure("G65", "own worked example", Seen.DERIVED, 6.137822, 1e-5,
           lambda: number(CURVE.mean_day())),
    Figure("T01 mu 15", LOBELIA, Seen.READ, 2.2415, 5e-5, lambda: BOTH.mus[0]),
    Figure("T01 difference", LOBELIA, Seen.READ, -0.6221, 5e-5, lambda: BOTH.mus[1] - BOTH.mus[0]),
    Figure("T01 ln sigma", LOBELIA, Seen.READ, 0.1453, 5e-5, lambda: math.log(BOTH.scale)),
    Figure("T02 mu 15", LOBELIA, Seen.READ, 0.1173, 5.1e-5, lambda: BOTH.mu_errors[0]),
    Figure("T02 difference", LOBELIA, Seen.READ, 0.1666, 5.1e-5,
           lambda: BOTH.difference_error(0, 1)),
    Figure("T02 ln sigma", LOBELIA, Seen.READ, 0.0563, 5.1e-5, lambda: BOTH.log_scale_error),
    Figure("T03 logL", LOBELIA, Seen.READ, -525.3, 0.05, lambda: BOTH.log_likelihood),
    Figure("T03 sigma", LOBELIA, Seen.READ, 1.16, 0.05, lambda: BOTH.scale),
    Figure("T04 15 C", LOBELIA, Seen.READ, 9.407324, 2e-6, lambda: BOTH.medians[0]),
    Figure("T04 25 C", LOBELIA, Seen.READ, 5.05011, 2e-6, lambda: BOTH.medians[1]),
    Figure("T05 15 C", LOBELIA, Seen.READ, 1.1034551, 2e-6, lambda: BOTH.median_errors[0]),
    Figure("T05 25 C", LOBELIA, Seen.READ, 0.5974451, 2e-6, lambda: BOTH.median_errors[1]),
    Figure("T06 chi-square", LOBELIA, Seen.READ, 13.57, 0.05,
           lambda: 2 * (BOTH.log_likelihood - POOLED.log_likelihood)),
    Figure("T06 null logL", LOBELIA, Seen.READ, -532.1, 0.05, lambda: POOLED.log_likelihood),
    Figure("T07 b", LOBELIA, Seen.READ, 0.864686, 0.001, lambda: 1 / BOTH.scale),
    Figure("T07 15 C", LOBELIA, Seen.READ, 9.407667, 0.001, lambda: BOTH.medians[0]),
    Figure("T07 25 C", LOBELIA, Seen.READ, 5.05097, 0.001, lambda: BOTH.medians[1]),
    Figure("T10 T11 mu", OWN, Seen.DERIVED, 2.239960877421, 2e-4, lambda: ALONE.mus[0]),
    Figure("T10 T11 sigma", OWN, Seen.DERIVED, 1.047518195768, 2e-4, lambda: ALONE.scale),
    Figure("T10 logL", OWN, Seen.DERIVED, -273.8565, 2e-4, lambda: ALONE.log_likelihood),
    Figure("T12 alpha", OWN, Seen.DERIVED, 9.45455, 3e-4, lambda: LOGISTIC.medians[0]),
    Figure("T12 beta", OWN, Seen.DERIVED, 1.63927, 3e-4, lambda: 1 / LOGISTIC.scale),
    Figure("T12 logL", OWN, Seen.DERIVED, -274.0467, 3e-4, lambda: LOGISTIC.log_likelihood),
)  # fmt: skip


@pytest.mark.parametrize("figure", figure_cases(FIGURES))
def test_fitted_figures(figure: Figure) -> None:
    figure.assert_reproduced()


@pytest.mark.parametrize(
    ("sample", "b", "c"),
    [
        pytest.param(sample, b, c, id=f"{check}: {HILL} ({Seen.READ})")
        for check, sample, b, c in (
            ("G701", "G1 rep 1", 9.881937, 6.034954),
            ("G702", "G2 rep 1", 9.227666, 6.175193),
            ("G703", "G3 rep 1", 7.793051, 6.13811),
            ("G704", "G4 rep 1", 8.925655, 6.125173),
            ("G705", "G5 rep 1", 9.419181, 6.049642),
            ("G706", "G1 rep 2", 9.450149, 6.097415),
            ("G707", "G2 rep 2", 10.172459, 6.029851),
            ("G708", "G3 rep 2", 8.940696, 6.189774),
            ("G709", "G4 rep 2", 8.617391, 6.125122),
            ("G710", "G5 rep 2", 9.608844, 6.109504),
            ("G711", "G1 rep 3", 9.400212, 6.01876),
            ("G712", "G2 rep 3", 9.162526, 6.108452),
            ("G713", "G3 rep 3", 8.99521, 6.149012),
            ("G714", "G4 rep 3", 10.391845, 6.01591),
            ("G715", "G5 rep 3", 9.136744, 6.121579),
        )
    ],
)
def test_hill_pairs(sample: str, b: float, c: float) -> None:
    curve = hill(SAMPLES[sample])
    assert (curve.steepness, curve.half_day) == pytest.approx((b, c), abs=1e-6)


@pytest.mark.parametrize("sample", ["G5 rep 2", "G1 rep 3", "G2 rep 3", "G3 rep 3", "G4 rep 3"])
def test_one_seedling_a_day_later_would_not_give_the_printed_hill_pair(sample: str) -> None:
    """What confirms counts from memory: no neighbour of them has the same curve."""
    printed, days = hill(SAMPLES[sample]), range(1, 15)
    counts = [step.newly_up for step in SAMPLES[sample].steps]
    for day, newly in enumerate(counts[:-1]):
        if newly:
            moved = [*counts[:day], newly - 1, counts[day + 1] + 1, *counts[day + 2 :]]
            other = hill(Looks.on_days(days, moved, 50))
            apart = max(
                abs(other.steepness - printed.steepness), abs(other.half_day - printed.half_day)
            )
            assert apart > 1e-3


def test_g65_trap_the_printed_mean_is_not_the_mean_of_the_curve() -> None:
    assert CURVE.mean_day() != pytest.approx(6.632252, abs=0.1)


def test_t08_t09_trap_a_curve_fit_is_overconfident_and_shows_no_error_here() -> None:
    # least squares on cumulative shares: b 0.871778, T50 9.106622 and 5.429718 (read), whose
    # claimed error of T50 is 6.2 times too small
    days = np.array(LOBELIA_15.times())
    up15, up25 = (np.array(x.cumulative) / 100 for x in (LOBELIA_15, LOBELIA_25))

    def residuals(p: Any) -> Any:
        both = [stats.norm.cdf(p[0] * np.log(days / median)) for median in p[1:]]
        return np.concatenate([both[0] - up15, both[1] - up25])

    found = optimize.least_squares(residuals, [0.9, 9.0, 5.0], xtol=1e-12, ftol=1e-12)
    assert found.x == pytest.approx([0.871778, 9.106622, 5.429718], abs=2e-4)
    spread = found.cost * 2 / (len(found.fun) - 3)
    assert math.sqrt(spread) == pytest.approx(0.02043963, abs=2e-4)
    claimed = math.sqrt(spread * float(np.linalg.inv(found.jac.T @ found.jac)[1, 1]))
    assert claimed == pytest.approx(0.1789, abs=2e-3)
    assert BOTH.median_errors[0] / 0.1789 == pytest.approx(6.17, abs=0.01)
    assert not any("error" in name for name in dir(CURVE))


@pytest.mark.parametrize("law", ["norm", "logistic"])
def test_scipy_finds_the_same_maximum(law: str) -> None:
    looks = LOBELIA_25
    ours = fitted((fit_lognormal if law == "norm" else fit_loglogistic)(looks))
    cdf = getattr(stats, law).cdf

    def minus(point: Any) -> float:
        mu, scale = point[0], math.exp(point[1])
        total = 0.0
        for left, right, n in looks.steps:
            low = cdf((math.log(left) - mu) / scale) if left > 0 else 0.0
            total += n * math.log(cdf((math.log(right) - mu) / scale) - low) if n else 0.0
        end = looks.steps[-1].this_look_day
        return -total - looks.never * math.log(1 - cdf((math.log(end) - mu) / scale))

    best = optimize.minimize(minus, [1.5, 0.0], method="BFGS")
    assert ours.log_likelihood == pytest.approx(-float(best.fun), abs=1e-6)
    assert ours.mus[0] == pytest.approx(float(best.x[0]), abs=1e-4)


@pytest.mark.parametrize(
    "looks",
    [
        Looks((), 10),
        Looks.on_days([5], [4], 10),
        Looks.on_days([5, 6], [4, 4], 8),
        Looks.on_days([5, 6, 7], [0, 0, 0], 8),
    ],
    ids=["no looks", "one look", "two looks, all up", "nothing up"],
)
def test_looks_that_tell_no_spread_give_no_fit(looks: Looks) -> None:
    assert fit_lognormal(looks) is None
    assert fit_loglogistic(looks) is None
    assert fit_hill(looks) is None


def test_a_fit_of_many_seeds_and_of_hours_stays_sound() -> None:
    many = Looks.on_days([1, 2, 3, 4, 6], [2000, 9000, 6000, 2000, 900], 20_000)
    assert fitted(fit_lognormal(many)).medians[0] == pytest.approx(2.0, abs=0.3)
    quick = Looks.on_days([0.01, 0.02, 0.03, 0.05], [3, 9, 5, 2], 20)
    assert fitted(fit_lognormal(quick)).medians[0] == pytest.approx(0.018, abs=0.004)


def test_hill_curve_refuses_and_leaves_out() -> None:
    assert CURVE.day_of_percent_sown(80.0) is None
    assert CURVE.percent_at(0.0) == 0.0
    assert HillCurve(80.0, 0.9, 5.0).mean_day() is None
    assert HillCurve(80.0, 0.9, 5.0).fastest_day() == 0.0
    with pytest.raises(OutOfRangeError):
        CURVE.day_of_percent_up(100.0)
    with pytest.raises(OutOfRangeError):
        CURVE.percent_at(-1.0)


NAG = "NAG Library Manual Mk 27, g12aac example results; data Freireich et al. 1963 from memory"
DURATIONS = [6, 6, 6, 6, 7, 9, 10, 10, 11, 13, 16, 17, 19, 20, 22, 23, 25, 32, 32, 34, 35]
EVENTS = [1, 1, 1, 0, 1, 0, 1, 0, 0, 1, 1, 0, 0, 0, 1, 1, 0, 0, 0, 0, 0]


@pytest.mark.parametrize(
    ("place", "day", "survival", "error"),
    [
        pytest.param(i, *row, id=f"T13 T14 day {row[0]}: {NAG} ({Seen.READ})")
        for i, row in enumerate(
            zip(
                (6, 7, 10, 13, 16, 22, 23),
                (0.857, 0.807, 0.753, 0.69, 0.627, 0.538, 0.448),
                (0.076, 0.087, 0.096, 0.107, 0.114, 0.128, 0.135),
                strict=True,
            )
        )
    ],
)
def test_kaplan_meier(place: int, day: float, survival: float, error: float) -> None:
    step = kaplan_meier(DURATIONS, [bool(e) for e in EVENTS])[place]
    assert step.day == day
    assert step.survival == pytest.approx(survival, abs=5e-4)
    assert step.error == pytest.approx(error, abs=5e-4)


def test_kaplan_meier_edges() -> None:
    assert kaplan_meier([3, 4], [False, False]) == ()
    last = kaplan_meier([3, 4], [True, True])[-1]
    assert (last.survival, last.error) == (0.0, 0.0)
    with pytest.raises(OutOfRangeError, match="one outcome for each"):
        kaplan_meier([1, 2], [True])
