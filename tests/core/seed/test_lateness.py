import math
import random

import pytest
from scipy import stats

from benchround.core.errors import OutOfRangeError
from benchround.core.seed.lateness import (
    chance_alive,
    chance_up_within,
    loglogistic_day_when,
    loglogistic_nothing,
    loglogistic_steepness,
    lognormal_day_when,
    lognormal_nothing,
    survival_at_which_alive_is,
)

# Good batches log-normal, median 10 d, sigma 0.30, prior chance of a dead one 0.10: own worked
# example; formula = mixture cure model (read in the curesurv documentation).
MEDIAN, SIGMA, DEAD = 10.0, 0.30, 0.10
DAYS = (10, 12, 14, 16, 18, 21)
NOTHING = (0.5, 0.271680454527, 0.131021779816, 0.058594898468, 0.025039482469, 0.006696874026)
ALIVE = (0.81818182, 0.70973469, 0.54111517, 0.34527297, 0.1839102, 0.05684565)


@pytest.mark.parametrize(
    ("day", "nothing", "alive"),
    list(zip(DAYS, NOTHING, ALIVE, strict=True)),
    ids=[f"T20 T21 day {day}: own worked example, two methods" for day in DAYS],
)
def test_chance_of_nothing_and_of_life(day: int, nothing: float, alive: float) -> None:
    s = lognormal_nothing(day, MEDIAN, SIGMA)
    assert s == pytest.approx(nothing, abs=1e-12)
    assert s == pytest.approx(float(stats.lognorm.sf(day, SIGMA, scale=MEDIAN)), abs=1e-12)
    assert chance_alive(s, DEAD) == pytest.approx(alive, abs=1e-7)


def test_t23_chance_up_within_a_week() -> None:
    now, later = (lognormal_nothing(d, MEDIAN, SIGMA) for d in (14, 21))
    assert chance_up_within(now, later, DEAD) == pytest.approx(0.51345732, abs=1e-7)


def test_t22_t24_simulation_agrees() -> None:
    chance = random.Random(20260402)
    still = alive = soon = 0
    for _ in range(200_000):
        day = math.inf if chance.random() < DEAD else chance.lognormvariate(math.log(10.0), 0.30)
        if day > 14.0:
            still += 1
            alive += day < math.inf
            soon += day <= 21.0
    assert alive / still == pytest.approx(0.5411, abs=0.01)
    assert soon / still == pytest.approx(0.5135, abs=0.01)


def test_t25_late_day() -> None:
    assert lognormal_day_when(0.10, MEDIAN, SIGMA) == pytest.approx(14.69, abs=0.005)


def test_t26_t27_give_up_day() -> None:
    s = survival_at_which_alive_is(0.20, DEAD)
    assert lognormal_day_when(s, MEDIAN, SIGMA) == pytest.approx(17.76, abs=0.005)
    k = loglogistic_steepness(SIGMA)
    assert loglogistic_day_when(s, MEDIAN, k) == pytest.approx(18.00, abs=0.005)


def test_t28_the_last_look_counts_not_today() -> None:
    last_look, today = (lognormal_nothing(d, MEDIAN, SIGMA) for d in (12, 16))
    assert chance_alive(last_look, DEAD) == pytest.approx(0.7097, abs=5e-5)
    assert chance_alive(today, DEAD) == pytest.approx(0.3453, abs=5e-5)


@pytest.mark.parametrize("day", [1.0, 5.0, 10.0, 17.3, 60.0])
def test_log_logistic_agrees_with_scipy(day: float) -> None:
    k = loglogistic_steepness(SIGMA)
    expected = float(stats.fisk.sf(day, k, scale=MEDIAN))
    assert loglogistic_nothing(day, MEDIAN, k) == pytest.approx(expected, abs=1e-12)


@pytest.mark.parametrize("s", [0.01, 0.1, 0.5, 0.9])
def test_days_invert_the_chance_of_nothing(s: float) -> None:
    day = lognormal_day_when(s, MEDIAN, SIGMA)
    assert lognormal_nothing(day, MEDIAN, SIGMA) == pytest.approx(s, abs=1e-12)
    other = loglogistic_day_when(s, MEDIAN, 6.0)
    assert loglogistic_nothing(other, MEDIAN, 6.0) == pytest.approx(s, abs=1e-12)


@pytest.mark.parametrize("q", [0.05, 0.2, 0.5, 0.9])
def test_survival_inverts_the_chance_of_life(q: float) -> None:
    assert chance_alive(survival_at_which_alive_is(q, DEAD), DEAD) == pytest.approx(q)


def test_edges() -> None:
    assert lognormal_nothing(0.0, MEDIAN, SIGMA) == 1.0
    assert loglogistic_nothing(0.0, MEDIAN, 6.0) == 1.0
    assert loglogistic_nothing(1e300, MEDIAN, 50.0) == 0.0
    assert chance_alive(0.0, DEAD) == 0.0
    assert chance_alive(1.0, DEAD) == pytest.approx(0.9)


def test_impossible_inputs_are_refused() -> None:
    with pytest.raises(OutOfRangeError, match="prior chance"):
        chance_alive(0.5, 0.0)
    with pytest.raises(OutOfRangeError, match="nothing yet"):
        chance_alive(1.2)
    with pytest.raises(OutOfRangeError, match="nothing later"):
        chance_up_within(0.2, 0.3)
    with pytest.raises(OutOfRangeError, match=r"starts at 0\.9"):
        survival_at_which_alive_is(0.95, 0.10)
    with pytest.raises(OutOfRangeError, match="days since sowing"):
        lognormal_nothing(-1.0, MEDIAN, SIGMA)
    with pytest.raises(OutOfRangeError, match="median"):
        lognormal_day_when(0.1, 0.0, SIGMA)
