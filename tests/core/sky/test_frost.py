import math
from itertools import pairwise

import pytest

from benchround.core.errors import OutOfRangeError
from benchround.core.sky import frost
from benchround.core.sky.frost import FrostSeverity, FrostTolerance, UsFreeze
from tests.core.published import Seen

MET_OFFICE = "UK Met Office classes, BBC Weather"
GLOSSARY = "UK Met Office glossary"
NWS = "US National Weather Service, Jackson"
REVIEW = "review PMC10202904, table 2"

SEVERITY = {
    0.0: FrostSeverity.NONE,
    -0.1: FrostSeverity.SLIGHT,
    -3.5: FrostSeverity.SLIGHT,
    -3.6: FrostSeverity.MODERATE,
    -6.5: FrostSeverity.MODERATE,
    -6.6: FrostSeverity.SEVERE,
    -11.5: FrostSeverity.SEVERE,
    -11.6: FrostSeverity.VERY_SEVERE,
}


@pytest.mark.parametrize(
    ("tmin_c", "word"),
    SEVERITY.items(),
    ids=[f"F06 {temp} degC: {MET_OFFICE} ({Seen.READ})" for temp in SEVERITY],
)
def test_severity_words(tmin_c: float, word: FrostSeverity) -> None:
    assert frost.frost_severity(tmin_c) is word


@pytest.mark.parametrize(
    ("temp_c", "frosty"),
    [(0.0, False), (-0.1, True)],
    ids=[f"F07 {temp} degC: {GLOSSARY} ({Seen.READ})" for temp in (0.0, -0.1)],
)
def test_frost_is_below_zero_not_at_it(temp_c: float, frosty: bool) -> None:
    assert frost.is_air_frost(temp_c) is frosty
    assert frost.is_ground_frost(temp_c) is frosty


US = {2.3: UsFreeze.NONE, 2.2: UsFreeze.FROST, 0.1: UsFreeze.FROST, 0.0: UsFreeze.FREEZE,
      -2.1: UsFreeze.FREEZE, -2.2: UsFreeze.HARD_FREEZE}  # fmt: skip


@pytest.mark.parametrize(
    ("tmin_c", "word"), US.items(), ids=[f"{temp} degC: {NWS} ({Seen.READ})" for temp in US]
)
def test_us_words(tmin_c: float, word: UsFreeze) -> None:
    assert frost.us_freeze(tmin_c) is word


def test_published_us_thresholds() -> None:
    # F14: NCEI, Normals Calculation Methodology 2020 (read), 16 to 36 degF
    ours = list(frost.FREEZE_THRESHOLDS_C)
    assert ours == pytest.approx([-8.9, -6.7, -4.4, -2.2, 0.0, 2.2], abs=0.05)


FIRST_HARM = {
    FrostTolerance.CHILL_SENSITIVE: 5.0,
    FrostTolerance.VERY_SENSITIVE: 0.0,
    FrostTolerance.SENSITIVE: -2.0,
    FrostTolerance.MODERATE: -4.0,
    FrostTolerance.REASONABLE: -7.0,
    FrostTolerance.GOOD: -10.0,
}


@pytest.mark.parametrize(
    ("tolerance", "limit_c"),
    FIRST_HARM.items(),
    ids=[f"H03 {name}: {REVIEW} ({Seen.READ})" for name in FIRST_HARM],
)
def test_harm_begins_at_the_band(tolerance: FrostTolerance, limit_c: float) -> None:
    assert frost.is_harmed(tolerance, limit_c)
    assert not frost.is_harmed(tolerance, limit_c + 0.1)


def test_bands_join_without_a_gap() -> None:
    bands = [frost.DAMAGE_BAND_C[tolerance] for tolerance in FrostTolerance]
    assert all(above[1] == below[0] for above, below in pairwise(bands))
    assert bands[-1][1] == -15.0  # H03 (read)


def test_severity_is_not_defined_in_a_wind() -> None:
    # F06: the words hold below 10 knots (read)
    with pytest.raises(OutOfRangeError, match="wind of the night is 15 knots, outside 0 to 10"):
        frost.frost_severity(-5.0, wind_knots=15.0)


@pytest.mark.parametrize("tmin_c", [80.0, math.nan])
def test_bad_minima_are_named(tmin_c: float) -> None:
    for ask in (frost.is_air_frost, frost.is_ground_frost, frost.frost_severity, frost.us_freeze):
        with pytest.raises(OutOfRangeError, match=r"minimum is .* outside -60 to 60 degC"):
            ask(tmin_c)
