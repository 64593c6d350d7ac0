import math

import pytest

from benchround.core.errors import OutOfRangeError
from benchround.core.sky import beaufort
from tests.core.published import Seen

METRES = "Beaufort table at delta-s.org/weer/beaufort.html"
KNOTS = "UK Met Office knots table"

WINDS_MS = (0.2, 0.3, 1.6, 3.4, 5.5, 8.0, 10.8, 13.9, 17.2, 20.8, 24.5, 28.5, 32.7)
KNOT_CLASSES = {1: (1, 3), 2: (4, 6), 3: (7, 10), 4: (11, 16), 5: (17, 21), 6: (22, 27),
                7: (28, 33), 8: (34, 40), 9: (41, 47), 10: (48, 55), 11: (56, 63)}  # fmt: skip


@pytest.mark.parametrize(
    ("force", "wind_ms"),
    list(enumerate(WINDS_MS)),
    ids=[f"R04 {wind} m/s: {METRES} ({Seen.READ})" for wind in WINDS_MS],
)
def test_force_of_a_wind(force: int, wind_ms: float) -> None:
    assert beaufort.beaufort_force(wind_ms) == force


@pytest.mark.parametrize(
    ("force", "wind_ms"),
    list(enumerate(WINDS_MS))[2:],
    ids=[f"R04 just under {wind} m/s: {METRES} ({Seen.READ})" for wind in WINDS_MS[2:]],
)
def test_just_under_a_limit_is_the_force_below(force: int, wind_ms: float) -> None:
    assert beaufort.beaufort_force(wind_ms - 0.01) == force - 1


@pytest.mark.parametrize(
    "force",
    KNOT_CLASSES,
    ids=[f"R04 force {force}: {KNOTS} ({Seen.READ})" for force in KNOT_CLASSES],
)
def test_force_of_knots(force: int) -> None:
    least, most = KNOT_CLASSES[force]
    assert beaufort.beaufort_force_from_knots(least) == force
    assert beaufort.beaufort_force_from_knots(most) == force


def test_calm_and_hurricane_in_knots() -> None:
    assert beaufort.beaufort_force_from_knots(0.0) == 0
    assert beaufort.beaufort_force_from_knots(64.0) == 12
    assert beaufort.beaufort_force_from_knots(120.0) == 12


@pytest.mark.parametrize("force", range(13))
def test_both_tables_tell_the_same_story(force: int) -> None:
    # One knot is 1852 m an hour. The published tables part by up to 1.5 knots (force 5 begins at
    # 8.0 m/s, 15.6 knots, against 17); a slip of one class would be 3 knots or more from force 2.
    in_knots = beaufort.LOWER_LIMITS_MS[force] * 3600.0 / 1852.0
    assert -0.1 <= beaufort.LOWER_LIMITS_KNOTS[force] - in_knots <= 1.5


def test_the_tables_part_at_sixteen_knots() -> None:
    # R04: force 4 is 11 to 16 knots, force 5 begins at 8.0 m/s; 16 knots are 8.2 m/s (read)
    assert beaufort.beaufort_force_from_knots(16.0) == 4
    assert beaufort.beaufort_force(16.0 * 1852.0 / 3600.0) == 5


def test_mean_wind_of_force_six() -> None:
    # R06: WMO Code 1100, 0.836 B^1.5 (from memory), 12.3 m/s
    assert beaufort.mean_wind_ms(6) == pytest.approx(12.3, abs=0.05)


@pytest.mark.parametrize("force", range(13))
def test_mean_wind_lies_in_its_own_class(force: int) -> None:
    assert beaufort.beaufort_force(beaufort.mean_wind_ms(force)) == force


def test_a_force_gives_its_range_back() -> None:
    # R04 and R06: force 6 is 10.8 to 13.8 m/s (read)
    assert beaufort.wind_range_ms(6) == (10.8, 13.9)
    assert beaufort.wind_range_ms(0) == (0.0, 0.3)
    assert beaufort.wind_range_ms(12) == (32.7, None)


@pytest.mark.parametrize(
    ("force", "sign"),
    [(3, "twigs"), (4, "paper"), (5, "small trees"), (6, "umbrella"), (7, "walk against")],
    ids=[f"land sign of force {force} ({Seen.READ})" for force in (3, 4, 5, 6, 7)],
)
def test_land_signs(force: int, sign: str) -> None:
    assert sign in beaufort.wind_force(force).sign
    assert beaufort.wind_force(force).force == force


@pytest.mark.parametrize("wind_ms", [-0.1, 200.0, math.nan])
def test_impossible_winds_are_named(wind_ms: float) -> None:
    with pytest.raises(OutOfRangeError, match=r"wind is .* outside 0 to 120 m/s"):
        beaufort.beaufort_force(wind_ms)


def test_impossible_knots_and_forces_are_named() -> None:
    with pytest.raises(OutOfRangeError, match="wind is -3 knots, outside 0 to 240 knots"):
        beaufort.beaufort_force_from_knots(-3.0)
    for force in (-1, 13):
        with pytest.raises(OutOfRangeError, match=f"force {force} does not exist: give 0 to 12"):
            beaufort.mean_wind_ms(force)
        with pytest.raises(OutOfRangeError, match="does not exist"):
            beaufort.wind_range_ms(force)
