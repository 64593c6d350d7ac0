import math

import pytest

from benchround.core.errors import BenchroundError, OutOfRangeError
from benchround.core.numbers.ranges import require_air_temp, require_min_max, whole, within


def test_a_figure_within_its_range_comes_back() -> None:
    assert within("the depth", 3.0, 0.0, 5.0, "mm") == 3.0
    assert within("the depth", 0.0, 0.0, 5.0, "mm") == 0.0
    assert within("the depth", 5.0, 0.0, 5.0, "mm") == 5.0


@pytest.mark.parametrize("value", [-0.1, 5.1, math.nan, math.inf, -math.inf])
def test_a_figure_outside_is_named_with_range_and_unit(value: float) -> None:
    with pytest.raises(OutOfRangeError) as caught:
        within("the depth", value, 0.0, 5.0, "mm")
    message = str(caught.value)
    assert message == f"the depth is {value:g} mm, outside 0 to 5 mm: check the figure"


def test_an_open_range_is_said_in_words() -> None:
    assert within("the share", 1.0, 0.0, 1.0, low_open=True) == 1.0
    with pytest.raises(OutOfRangeError) as caught:
        within("the share", 0.0, 0.0, 1.0, low_open=True)
    assert str(caught.value) == (
        "the share is 0, which cannot be used: give a figure above 0 and up to 1."
    )
    with pytest.raises(OutOfRangeError, match=r"is inf, which .* give a figure from 2\."):
        within("the days", math.inf, 2.0)


@pytest.mark.parametrize("value", [-1, 0, 2.5, math.nan, math.inf, True, 10**400])
def test_a_count_must_be_whole_and_finite(value: int) -> None:
    assert whole("cells", 3, 1) == 3
    with pytest.raises(OutOfRangeError, match="cells is"):
        whole("cells", value, 1, 1_000_000)


def test_a_plain_number_has_no_unit() -> None:
    with pytest.raises(OutOfRangeError, match="the share is 2, outside 0 to 1: check"):
        within("the share", 2.0, 0.0, 1.0, "")


def test_temperatures_no_garden_has_seen_are_refused() -> None:
    # The warmest shade temperature ever measured is 56.7 degC (from memory)
    assert require_air_temp("the maximum", 56.7) == 56.7
    with pytest.raises(BenchroundError, match="the maximum is 80 degC, outside -60 to 60 degC"):
        require_air_temp("the maximum", 80.0)


def test_min_above_max_is_named_with_both() -> None:
    require_min_max(4.0, 4.0)
    with pytest.raises(OutOfRangeError, match="minimum 9 degC is above the maximum 4 degC"):
        require_min_max(9.0, 4.0)


def test_a_count_beyond_all_counting_is_refused_with_its_limit() -> None:
    with pytest.raises(OutOfRangeError, match="seeds is 100000001, outside 1 to 100000000"):
        whole("seeds", 100_000_001, 1)
