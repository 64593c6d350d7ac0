import math

import pytest

from benchround.core.errors import OutOfRangeError
from benchround.core.sky import chill
from tests.core.published import Seen

UTAH = "Richardson, Seeley & Walker 1974, HortScience 9:331"
UTAH_HOURS = {0.0: 0.0, 2.0: 0.5, 5.0: 1.0, 10.0: 0.5, 13.0: 0.0, 17.0: -0.5, 20.0: -1.0}
UTAH_EDGES = {1.4: 0.0, 2.4: 0.5, 9.1: 1.0, 12.4: 0.5, 15.9: 0.0, 18.0: -0.5, 18.1: -1.0}


@pytest.mark.parametrize(
    ("temp_c", "units"),
    UTAH_HOURS.items(),
    ids=[f"D11 {temp} degC: {UTAH} ({Seen.READ})" for temp in UTAH_HOURS],
)
def test_utah_units_of_single_hours(temp_c: float, units: float) -> None:
    assert chill.utah_units([temp_c]) == units


@pytest.mark.parametrize(
    ("temp_c", "units"),
    UTAH_EDGES.items(),
    ids=[f"D11 edge {temp} degC: {UTAH} ({Seen.READ})" for temp in UTAH_EDGES],
)
def test_utah_steps_end_at_the_printed_limits(temp_c: float, units: float) -> None:
    assert chill.utah_units([temp_c]) == units


def test_utah_units_add_up() -> None:
    # D11: the seven hours together give 0.5
    assert chill.utah_units(UTAH_HOURS) == 0.5
    assert chill.utah_units([]) == 0.0


def test_chill_hours_count_both_limits() -> None:
    # 0 to 7.2 degC (from memory)
    assert chill.chill_hours([-0.1, 0.0, 3.0, 7.2, 7.3]) == 3


def test_cold_days_count_both_limits() -> None:
    # 1 to 5 degC, to 8 by some growers (from memory)
    means = [0.9, 1.0, 3.0, 5.0, 5.1, 8.0]
    assert chill.cold_days(means) == 3
    assert chill.cold_days(means, warmest_c=8.0) == 5


@pytest.mark.parametrize("temp_c", [80.0, math.nan])
def test_bad_temperatures_are_named(temp_c: float) -> None:
    with pytest.raises(OutOfRangeError, match=r"hour's temperature is .* outside -60 to 60"):
        chill.utah_units([5.0, temp_c])
    with pytest.raises(OutOfRangeError, match=r"hour's temperature is .* outside -60 to 60"):
        chill.chill_hours([5.0, temp_c])
    with pytest.raises(OutOfRangeError, match=r"day's mean is .* outside -60 to 60"):
        chill.cold_days([5.0, temp_c])


def test_swapped_limits_are_named() -> None:
    with pytest.raises(OutOfRangeError, match="cold limit 8 degC must not lie above"):
        chill.cold_days([3.0], coldest_c=8.0, warmest_c=1.0)
