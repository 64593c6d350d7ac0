"""Every figure of the library that a published table gives too, whatever table it was taken from.

`overlapping_figures.csv` holds the rows of the tables read that name a crop of the library. One
agrees if it lies within what is printed, days if the spans meet. Where tables differ among
themselves the library follows one of them; each such row stands in `OTHERWISE` with the reason.
"""

from __future__ import annotations

import pytest

from benchround.core.crop.crop import Germination, Light
from tests.crops.published import crop, rows

PRINTED_C = 0.6
"""Whole degrees Fahrenheit, turned and rounded."""
PRINTED_DAYS = 0.5
PRINTED_BASE_C = 2.0
"""Base temperatures of varieties of one kind lie this far apart and more."""
LIGHT = {"L": Light.LIGHT, "D": Light.DARK, "LD": Light.EITHER}
ROWS = rows("overlapping_figures.csv")

IOWA_2023 = "Iowa State's newer list gives 70 to 75 F, which the library follows"
VARIETY = "another variety's base; the library's fits the emergence table of Harrington & Minges"
TROPICAL = "a tropical strain; the library's base is that of the kinds grown in cool summers"
UNDER_LIGHTS = "plugs of one variety in a germination room; the library has Iowa State's days"
COOL = "plugs in a warm germination room; the home sower's cooler bench is common practice"

OTHERWISE: dict[tuple[str, str, str], str] = {
    ("vinca", "temperature", "ISU17"): IOWA_2023,
    ("celosia", "temperature", "ISU17"): IOWA_2023,
    ("scarlet-sage", "temperature", "ISU17"): IOWA_2023,
    ("zinnia", "temperature", "CHONG"): "between this table and Iowa State's 70 F",
    ("pansy", "light", "CHONG"): "Iowa State prints light or dark, the grower guide light",
    ("nicotiana", "days", "SYN21"): UNDER_LIGHTS,
    ("wax-begonia", "days", "SYN20"): UNDER_LIGHTS,
    ("ageratum", "temperature", "SCI"): "Iowa State prints 70 to 75 F, which the library follows",
    ("aquilegia", "temperature", "SYN24"): COOL,
    ("aquilegia", "temperature", "SCI"): COOL,
    ("ladys-mantle", "temperature", "SCI"): COOL,
    ("onion", "base temperature", "Allium cepa cv. Sepidan"): VARIETY,
    ("onion", "base temperature", "Allium cepa cv. Zargan"): VARIETY,
    ("mizuna", "base temperature", "Brassica rapa subsp. chinensis"): TROPICAL,
    ("pak-choi", "base temperature", "Brassica rapa subsp. chinensis"): TROPICAL,
    ("watermelon", "base temperature", "Citrullus lanatus"): (
        "12 days at 20 C and 4 at 30 C (Harrington & Minges, read) make a base of 15"
    ),
}
"""Rows the library does not follow, and why."""


def agrees(row: dict[str, str]) -> bool:
    """Whether the library's figure is that of the row."""
    found = crop(row["key"])
    germination = found.germination
    assert germination is not None
    if row["figure"] == "light":
        return germination.light is LIGHT[row["low"]]
    low, high = float(row["low"]), float(row["high"])
    if row["figure"] == "weeks to planting":
        span = found.planting.from_sowing_days
        return span is not None and span[0] <= 7 * high and 7 * low <= span[1]
    if row["figure"] == "seeds a gram":
        each = found.seeds_per_g
        return each is None or low * 0.98 <= each <= high * 1.02
    return _warmth(row["figure"], germination, low, high)


def _warmth(figure: str, germination: Germination, low: float, high: float) -> bool:
    if figure == "days":
        first, last = germination.days_first, germination.days_last
        return first <= high + PRINTED_DAYS and low - PRINTED_DAYS <= last
    if figure == "temperature":
        return low - PRINTED_C <= germination.at_c <= high + PRINTED_C
    assert figure == "base temperature"
    return abs(germination.base_c - low) <= PRINTED_BASE_C


def place(row: dict[str, str]) -> tuple[str, str, str]:
    return row["key"], row["figure"], row["table"]


@pytest.mark.parametrize(
    "row",
    ROWS,
    ids=[f"{r['key']} {r['figure']}: {r['source']} ({r['status']})" for r in ROWS],
)
def test_a_published_figure_is_the_librarys_or_the_difference_has_a_reason(
    row: dict[str, str],
) -> None:
    assert agrees(row) == (place(row) not in OTHERWISE), OTHERWISE.get(place(row), row)


def test_every_reason_is_about_a_row() -> None:
    assert set(OTHERWISE) <= {place(row) for row in ROWS}
    assert len({row["key"] for row in ROWS}) > 30
    assert all(len(reason) > 20 for reason in OTHERWISE.values())
