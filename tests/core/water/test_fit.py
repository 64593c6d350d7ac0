"""Learning a place's drying from weights and looks."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import OutOfRangeError
from benchround.core.water.balance import daily_loss_ml
from benchround.core.water.fit import (
    LARGEST_STEP,
    Moisture,
    PlaceFactor,
    after_look,
    after_weighing,
    loss_factor_from_weights,
)

PLACES = st.builds(PlaceFactor, st.floats(0.2, 4.0), st.integers(0, 40), st.integers(0, 5))
SHARES = st.floats(0.0, 5.0)


@given(st.floats(0.5, 8.0), st.floats(0.2, 2.0), st.floats(0.01, 0.4))
def test_two_weighings_give_back_the_factor_behind_them(et0: float, k: float, area: float) -> None:
    loss = daily_loss_ml(et0, k, area)
    assert loss_factor_from_weights(9000.0, 9000.0 - loss, et0, area) == pytest.approx(k)


def test_two_weighings_by_hand() -> None:
    """2400 g to 2046 g over 2 mm on 0.177 m2: 354 g are 2 mm, so k is 1."""
    assert loss_factor_from_weights(2400.0, 2046.0, 2.0, 0.177) == pytest.approx(1.0)


def test_the_first_pair_of_weighings_overrules_looks() -> None:
    place = PlaceFactor(2.0, looks=3)
    assert after_weighing(place, 350.0, 500.0) == PlaceFactor(0.7, 0, 1)


def test_later_weighings_are_averaged() -> None:
    place = after_weighing(after_weighing(PlaceFactor(), 350.0, 500.0), 450.0, 500.0)
    assert place.factor == pytest.approx(0.8)
    assert place.weighings == 2


@given(PLACES, SHARES)
def test_still_wet_never_speeds_a_place_up(place: PlaceFactor, share: float) -> None:
    after = after_look(place, Moisture.STILL_WET, share)
    assert place.factor / LARGEST_STEP - 1e-9 <= after.factor <= place.factor
    assert after.looks == place.looks + 1


@given(PLACES, SHARES)
def test_already_dry_never_slows_a_place_down(place: PlaceFactor, share: float) -> None:
    after = after_look(place, Moisture.ALREADY_DRY, share)
    assert place.factor <= after.factor <= place.factor * LARGEST_STEP + 1e-9


@pytest.mark.parametrize(
    ("said", "share"),
    [
        pytest.param(Moisture.STILL_WET, 0.5, id="wet with half gone is no news"),
        pytest.param(Moisture.ALREADY_DRY, 1.3, id="dry when overdue is no news"),
    ],
)
def test_a_look_that_agrees_changes_nothing(said: Moisture, share: float) -> None:
    assert after_look(PlaceFactor(0.9), said, share).factor == 0.9


def test_looks_count_less_as_they_add_up() -> None:
    fresh = after_look(PlaceFactor(), Moisture.STILL_WET, 1.0).factor
    seasoned = after_look(PlaceFactor(1.0, looks=12), Moisture.STILL_WET, 1.0).factor
    weighed = after_look(PlaceFactor(1.0, weighings=2), Moisture.STILL_WET, 1.0).factor
    assert fresh == pytest.approx(0.8)
    assert fresh < weighed < 1.0
    assert fresh < seasoned < 1.0


def test_a_place_that_truly_dries_at_half_the_rate_is_found_by_looks() -> None:
    """Looks made whenever the model calls the tray due: a tray then at most half empty is wet."""
    place = PlaceFactor()
    for _ in range(30):
        truly_used = 0.5 / place.factor
        if truly_used >= 0.8:
            break
        place = after_look(place, Moisture.STILL_WET, 1.0)
    assert 0.45 < place.factor < 0.65


@pytest.mark.parametrize(("wet", "later"), [(2000.0, 2100.0), (2000.0, 0.0), (2.0, 1.0)])
def test_weights_that_cannot_be_are_refused(wet: float, later: float) -> None:
    with pytest.raises(OutOfRangeError):
        loss_factor_from_weights(wet, later, 2.0, 0.177)


def test_a_factor_beyond_belief_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="factor"):
        after_weighing(PlaceFactor(), 5000.0, 500.0)
    with pytest.raises(OutOfRangeError, match="share"):
        after_look(PlaceFactor(), Moisture.STILL_WET, -0.1)
