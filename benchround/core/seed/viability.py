"""How seed dies in store: the viability equation of Ellis and Roberts.

v = Ki - p / sigma in normal equivalent deviates of germination, with sigma, the days in which
germination falls by one deviate, log10 sigma = KE - CW log10 m - CH t - CQ t^2
(Ellis & Roberts 1980, Ann. Bot. 45:13-30; form as in the documentation of viabilitymetrics).
m is moisture in per cent of fresh weight, t the store in C, p days in store. Fitted on sealed
seed; it says nothing of the years on an open packet, for which `SHELF_YEARS` in `viability_species`
are the better guide.
"""

from __future__ import annotations

import math

from benchround.core.errors import OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.numbers.normal import NORMAL
from benchround.core.numbers.ranges import whole, within

LEAST_MOISTURE, MOST_MOISTURE = 2.0, 25.0
COLDEST_C, WARMEST_C = -20.0, 60.0


@dataclass(frozen=True, slots=True)
class ViabilityConstants:
    """A species' constants KE, CW, CH, CQ, and the paper they come from."""

    ke: float
    cw: float
    ch: float
    cq: float
    reference: str = ""


def days_per_deviate(species: ViabilityConstants, moisture_percent: float, temp_c: float) -> float:
    """Return sigma, the days in which germination falls by one normal deviate.

    Args:
        species: Constants.
        moisture_percent: Moisture, % of fresh weight, 2 to 25.
        temp_c: Temperature of the store, -20 to 60 C.
    """
    within("seed moisture (% of fresh weight)", moisture_percent, LEAST_MOISTURE, MOST_MOISTURE)
    within("store temperature (C)", temp_c, COLDEST_C, WARMEST_C)
    return float(10.0 ** (_moisture_free(species, temp_c) - species.cw * _log(moisture_percent)))


def viability_after(
    species: ViabilityConstants,
    start_percent: float,
    days: float,
    moisture_percent: float,
    temp_c: float,
) -> float:
    """Return the germination percentage after days in store, from the one at the start."""
    within("days in store", days, 0.0)
    sigma = days_per_deviate(species, moisture_percent, temp_c)
    return 100.0 * NORMAL.cdf(normal_deviate(start_percent) - days / sigma)


def days_until(
    species: ViabilityConstants,
    start_percent: float,
    end_percent: float,
    moisture_percent: float,
    temp_c: float,
) -> float:
    """Return the days in store until germination has fallen to `end_percent`."""
    fall = _fall(start_percent, end_percent)
    return fall * days_per_deviate(species, moisture_percent, temp_c)


def half_life_days(
    species: ViabilityConstants, start_percent: float, moisture_percent: float, temp_c: float
) -> float:
    """Return P50, the days in store until half germinate."""
    return days_until(species, start_percent, 50.0, moisture_percent, temp_c)


def moisture_for(
    species: ViabilityConstants,
    start_percent: float,
    end_percent: float,
    days: float,
    temp_c: float,
) -> float:
    """Return the greatest moisture (% of fresh weight) that keeps the seed so long.

    Raises:
        OutOfRangeError: A figure is outside its range, or the moisture is outside 2 to 25 %, for
            which the equation was never fitted.
    """
    within("days in store", days, 0.0, low_open=True)
    within("store temperature (C)", temp_c, COLDEST_C, WARMEST_C)
    wanted = math.log10(days / _fall(start_percent, end_percent))
    moisture = float(10.0 ** ((_moisture_free(species, temp_c) - wanted) / species.cw))
    return _answered(
        "the seed moisture asked for", moisture, LEAST_MOISTURE, MOST_MOISTURE, "%", "more"
    )


def temperature_for(
    species: ViabilityConstants,
    start_percent: float,
    end_percent: float,
    days: float,
    moisture_percent: float,
) -> float:
    """Return the warmest store (C) that keeps the seed so long.

    Raises:
        OutOfRangeError: A figure is outside its range, no temperature does, or the one that does is
            outside -20 to 60 C, for which the equation was never fitted.
    """
    within("days in store", days, 0.0, low_open=True)
    within("seed moisture (% of fresh weight)", moisture_percent, LEAST_MOISTURE, MOST_MOISTURE)
    wanted = math.log10(days / _fall(start_percent, end_percent))
    spare = species.ke - species.cw * _log(moisture_percent) - wanted
    inside = species.ch**2 + 4.0 * species.cq * spare
    if inside < 0.0 or species.cq <= 0.0:
        raise OutOfRangeError(
            f"no temperature keeps this seed {days:g} days at {moisture_percent:g} % moisture: "
            "dry it further or ask for fewer days."
        )
    temp_c = (math.sqrt(inside) - species.ch) / (2.0 * species.cq)
    return _answered("the store temperature asked for", temp_c, COLDEST_C, WARMEST_C, "C", "warmer")


def normal_deviate(percent: float) -> float:
    """Return the normal equivalent deviate of a percentage (probit is 5 more)."""
    within("germination (%)", percent, 0.0, 100.0, low_open=True, high_open=True)
    return NORMAL.inv_cdf(percent / 100.0)


def adjusted_percent(percent: float, tested: int) -> float:
    """Return a test's 0 or 100 % moved inside by a quarter of a seed, 100 (n - 1/4) / n."""
    within("germination (%)", percent, 0.0, 100.0)
    whole("seeds tested", tested, 1)
    edge = 25.0 / tested
    return min(max(percent, edge), 100.0 - edge)


def dry_basis(wet_percent: float) -> float:
    """Return moisture in % of dry weight from % of fresh weight."""
    within("moisture (% of fresh weight)", wet_percent, 0.0, 100.0, high_open=True)
    return 100.0 * wet_percent / (100.0 - wet_percent)


def wet_basis(dry_percent: float) -> float:
    """Return moisture in % of fresh weight from % of dry weight."""
    within("moisture (% of dry weight)", dry_percent, 0.0)
    return 100.0 * dry_percent / (100.0 + dry_percent)


def equilibrium_moisture(oil_percent: float, humidity_percent: float, temp_c: float) -> float:
    """Return the moisture (% of dry weight) seed takes on in air of a humidity.

    (1 - oil) sqrt(-440 ln(1 - RH)) / (1.1 + t / 90), Cromarty, Ellis & Roberts 1982 (formula
    from memory, checked against the worked value of viabilitymetrics).
    """
    within("oil in the seed (%)", oil_percent, 0.0, 70.0)
    within("relative humidity (%)", humidity_percent, 0.0, 95.0)
    within("air temperature (C)", temp_c, 0.0, 50.0)
    dryness = -440.0 * math.log1p(-humidity_percent / 100.0)
    return (1.0 - oil_percent / 100.0) * math.sqrt(dryness) / (1.1 + temp_c / 90.0)


def _moisture_free(species: ViabilityConstants, temp_c: float) -> float:
    """Return KE - CH t - CQ t^2."""
    return species.ke - species.ch * temp_c - species.cq * temp_c * temp_c


def _log(moisture_percent: float) -> float:
    """Return log10 of the moisture."""
    return math.log10(moisture_percent)


def _answered(what: str, value: float, low: float, high: float, unit: str, beyond: str) -> float:
    """Return what was reckoned, or refuse it where the equation was not fitted."""
    if value > high:
        raise OutOfRangeError(
            f"{what} comes to {beyond} than {high:g} {unit}, outside {low:g} to {high:g} {unit}: "
            "the seed keeps longer than that even there; ask for more days."
        )
    if value < low:
        raise OutOfRangeError(
            f"{what} comes to less than {low:g} {unit}, outside {low:g} to {high:g} {unit}: "
            "the seed does not keep so long even there; ask for fewer days."
        )
    return value


def _fall(start_percent: float, end_percent: float) -> float:
    """Return how many deviates germination falls."""
    fall = normal_deviate(start_percent) - normal_deviate(end_percent)
    if fall <= 0.0:
        raise OutOfRangeError(
            f"germination cannot fall from {start_percent:g} to {end_percent:g} %: give a lower "
            "end."
        )
    return fall
