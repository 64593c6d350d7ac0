"""Containers: volumes by geometry and by what was read, and the grower's own."""

import pytest

from benchround.core.containers import (
    USUAL_CONTAINERS,
    Container,
    container,
    prism_ml,
    round_cell_ml,
    tapered_ml,
    tray_of_cells,
)
from benchround.core.errors import OutOfRangeError, UnknownNameError


@pytest.mark.parametrize(
    ("width", "length", "depth", "prism", "tapered"),
    [
        pytest.param(30, 30, 45, 40.5, 26.5, id="128 cells, Japanese standard [read]"),
        pytest.param(25, 25, 45, 28.1, 18.4, id="200 cells, Japanese standard [read]"),
        pytest.param(20, 20, 40, 16.0, 10.5, id="288 cells, Japanese standard [read]"),
        pytest.param(69, 69, 90, 428.5, 279.9, id="15 cells, tray maker's page [read]"),
        pytest.param(42, 42, 55, 97.0, 63.4, id="40 cells, tray maker's page [read]"),
        pytest.param(38, 61, 58, 134.4, 87.8, id="48 cells, forum measurement [read]"),
    ],
)
def test_cell_volumes_by_geometry(
    width: float, length: float, depth: float, prism: float, tapered: float
) -> None:
    """Sizes read; volumes worked out elsewhere with the bottom at 60 % of the top."""
    assert prism_ml(width, length, depth) == pytest.approx(prism, abs=0.06)
    assert tapered_ml(width, length, depth) == pytest.approx(tapered, abs=0.06)


@pytest.mark.parametrize(
    ("name", "low", "high"),
    [
        pytest.param("full tray", 3500, 4500, id="full tray 3.5-4.5 L [from memory]"),
        pytest.param("24-cell tray", 80, 105, id="24 cells 80-100 ml [from memory]"),
        pytest.param("60-cell tray", 35, 40, id="60 cells 35-40 ml [from memory]"),
        pytest.param("128-cell tray", 21, 25, id="128 cells 21-25 ml [from memory]"),
        pytest.param("7 cm pot", 200, 250, id="7 cm pot 200-250 ml [from memory]"),
        pytest.param("9 cm pot", 350, 400, id="9 cm round pot 350-400 ml [from memory]"),
        pytest.param("9 cm square pot", 450, 500, id="9 cm square pot 450-500 ml [from memory]"),
    ],
)
def test_recalled_volumes_lie_within_their_bands(name: str, low: float, high: float) -> None:
    assert low <= container(name).cell_ml <= high


@pytest.mark.parametrize(
    ("name", "litres"),
    [("full tray", 3.7), ("24-cell tray", 2.5), ("40-cell tray", 2.9), ("84-cell tray", 1.8)],
)
def test_litres_of_a_tray(name: str, litres: float) -> None:
    """Worked out elsewhere from assumed tapers; the full tray from its size, 14 x 8 x 2 in."""
    assert container(name).volume_l == pytest.approx(litres, abs=0.06)


def test_the_full_tray_s_litres_follow_from_its_inches() -> None:
    assert prism_ml(14 * 25.4, 8 * 25.4, 2 * 25.4) == pytest.approx(3700, rel=0.01)


def test_a_round_pot_is_smaller_than_its_square() -> None:
    assert round_cell_ml(90, 80) < tapered_ml(90, 90, 80)


def test_every_usual_container_says_where_its_volume_comes_from() -> None:
    assert len(USUAL_CONTAINERS) >= 15
    for usual in USUAL_CONTAINERS.values():
        assert usual.source and usual.status in {"read", "derived", "from memory"}


def test_the_grower_s_own_container_comes_first() -> None:
    mine = Container("7 cm pot", 1, 210.0, 0.07, 0.07)
    assert container("7 cm pot", {"7 cm pot": mine}).cell_ml == 210.0


def test_an_unknown_container_is_named_in_the_refusal() -> None:
    with pytest.raises(UnknownNameError, match="egg box"):
        container("egg box")


@pytest.mark.parametrize(("cells", "ml", "side"), [(0, 20.0, 0.3), (40, 0.0, 0.3), (40, 20.0, 0.0)])
def test_a_container_of_nothing_is_refused(cells: int, ml: float, side: float) -> None:
    with pytest.raises(OutOfRangeError):
        Container("odd", cells, ml, side, side)


@pytest.mark.parametrize(
    ("cells", "tray"),
    [
        pytest.param(24, "24-cell tray", id="the tray of that number"),
        pytest.param(200, "200-cell tray", id="before five of forty"),
        pytest.param(240, "240-cell tray", id="before six of forty"),
        pytest.param(80, "40-cell tray", id="two of forty"),
        pytest.param(120, "40-cell tray", id="three of forty"),
        pytest.param(50, "60-cell tray", id="the smallest that takes them"),
        pytest.param(210, "240-cell tray", id="not a larger one"),
        pytest.param(300, "40-cell tray", id="more than any tray takes"),
    ],
)
def test_the_tray_taken_for_a_number_of_cells(cells: int, tray: str) -> None:
    """Forty is the common tray, and several stand side by side (common practice, no source)."""
    assert tray_of_cells(cells) == tray
    assert USUAL_CONTAINERS[tray].cells == int(tray.partition("-")[0])
