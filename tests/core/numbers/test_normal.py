"""The standard normal distribution against Python's statistics.NormalDist."""

from __future__ import annotations

import math
from statistics import NormalDist

import pytest

from benchround.core.errors import OutOfRangeError
from benchround.core.numbers.normal import Normal

SHARES = (1e-300, 1e-12, 1e-4, 0.0749, 0.0751, 0.25, 0.5, 0.6, 0.9249, 0.9251, 0.999, 1 - 1e-12)


@pytest.mark.parametrize("share", SHARES)
def test_deviate_of_a_share(share: float) -> None:
    expected = NormalDist().inv_cdf(share)
    assert math.isclose(Normal.inv_cdf(share), expected, rel_tol=1e-14, abs_tol=1e-15)


@pytest.mark.parametrize("z", [-8.0, -2.5, -1.0, 0.0, 0.3, 1.96, 6.0])
def test_share_and_density_at_a_deviate(z: float) -> None:
    assert math.isclose(Normal.cdf(z), NormalDist().cdf(z), rel_tol=1e-14)
    assert math.isclose(Normal.pdf(z), NormalDist().pdf(z), rel_tol=1e-14)


@pytest.mark.parametrize("share", [-0.1, 0.0, 1.0, 1.5, math.nan])
def test_shares_without_a_deviate_are_refused(share: float) -> None:
    with pytest.raises(OutOfRangeError, match="between 0 and 1"):
        Normal.inv_cdf(share)
