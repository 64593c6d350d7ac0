"""Windows: never a month, and where published dates stand behind them, those dates at 50-55 N."""

import re
from datetime import date, timedelta

import pytest

from benchround.core.crop.crop import Anchor, Edge, Hardiness, PlantClass, SowingWindow
from benchround.core.site import Site
from tests.crops.published import KEYS, cases, crop

MIDSUMMER, MIDWINTER = date(2026, 6, 21), date(2026, 12, 21)
MONTHS = re.compile(
    r"\b(jan|feb|mar|apr|may|jun|jul|aug|sep|sept|oct|nov|dec|january|february|march|april|june"
    r"|july|august|september|october|november|december)\b",
    re.IGNORECASE,
)


def _on(edge: Edge) -> date:
    start = {Anchor.MIDSUMMER: MIDSUMMER, Anchor.MIDWINTER: MIDWINTER}[edge.anchor]
    return start + timedelta(days=edge.days)


def _windows(key: str) -> list[SowingWindow]:
    one = crop(key)
    inner = [one.planting.window, one.flowering.window if one.flowering else None]
    return [*one.windows, *(window for window in inner if window is not None)]


@pytest.mark.parametrize("key", KEYS)
def test_no_window_names_a_month(key: str) -> None:
    for window in _windows(key):
        assert not MONTHS.search(window.name), window.name


def test_the_month_pattern_finds_months() -> None:
    assert MONTHS.search("sown in May") and not MONTHS.search("in autumn, for mayweed")


@pytest.mark.parametrize("row", cases("biennial_windows.csv"))
def test_biennial_windows(row: dict[str, str]) -> None:
    window = crop(row["key"]).windows[0]
    assert (_on(window.opens), _on(window.closes)) == (
        date.fromisoformat(row["opens"]),
        date.fromisoformat(row["closes"]),
    )


BIENNIALS = [key for key in KEYS if crop(key).plant_class is PlantClass.BIENNIAL]


@pytest.mark.parametrize("key", BIENNIALS)
def test_biennials_are_planted_from_the_first_of_september_to_the_twentieth_of_october(
    key: str,
) -> None:
    """BIE-20: Garden Answers 2019 and a garden centre note (months read; days our proposal)."""
    window = crop(key).planting.window
    assert window is not None
    assert (_on(window.opens), _on(window.closes)) == (date(2026, 9, 1), date(2026, 10, 20))


@pytest.mark.parametrize("key", ["cornflower", "larkspur", "ammi", "nigella", "calendula"])
def test_autumn_sowing_of_hardy_annuals(key: str) -> None:
    """BIE-21: Shields Gazette gardening column 2015 (September read; days from memory)."""
    autumn = next(w for w in crop(key).windows if w.opens.anchor is Anchor.MIDSUMMER)
    assert (_on(autumn.opens), _on(autumn.closes)) == (date(2026, 8, 25), date(2026, 9, 30))


@pytest.mark.parametrize(
    ("key", "autumn"),
    [
        *((key, True) for key in ("baby-blue-eyes", "poached-egg-plant", "nigella", "larkspur")),
        *((key, True) for key in ("californian-poppy", "field-poppy", "clarkia", "godetia")),
        *((key, True) for key in ("candytuft", "phacelia", "cornflower")),
        ("sweet-alyssum", False),
    ],
)
def test_hardy_annuals_are_filed_as_such_and_sown_in_place(key: str, autumn: bool) -> None:
    """In place from March to May, the hardiest in September too (common practice, no source)."""
    found = crop(key)
    assert found.plant_class is PlantClass.HARDY_ANNUAL
    assert found.hardiness is Hardiness.HARDY
    outdoors = [window for window in found.windows if window.where == "outdoors"]
    spring = next(window for window in outdoors if "spring" in window.name)
    span = Site(lat_deg=52.5).year.span(spring, date(2027, 1, 1))
    assert span is not None
    assert 3 <= span.opens.month <= span.closes.month <= 6
    assert any("autumn" in window.name for window in found.windows) is autumn
    assert not any(window.where == "heat" for window in found.windows)


def test_autumn_sowing_of_sweet_peas() -> None:
    """BIE-23: The Telegraph and Irish Times garden columns (months read; days our proposal)."""
    autumn = next(w for w in crop("sweet-pea").windows if w.opens.anchor is Anchor.MIDWINTER)
    assert (_on(autumn.opens), _on(autumn.closes)) == (date(2026, 10, 1), date(2026, 11, 15))


@pytest.mark.parametrize("key", ["snapdragon", "sweet-alyssum"])
def test_tough_half_hardies_go_to_the_frame_up_to_five_weeks_before_the_last_frost(
    key: str,
) -> None:
    """HAR-05: Which? Gardening trial of hardening off, four to five weeks (read)."""
    hardening = crop(key).hardening
    assert hardening is not None and hardening.starts is not None
    assert hardening.starts == Edge(Anchor.LAST_FROST, -35)


@pytest.mark.parametrize(
    "key", ["wax-begonia", "busy-lizzie", "petunia", "geranium", "scarlet-sage", "dahlia"]
)
def test_tender_stock_does_not_harden_before_the_last_frost(key: str) -> None:
    """HAR-06: Which? Gardening trial of hardening off (read)."""
    hardening = crop(key).hardening
    assert hardening is not None
    assert hardening.starts == Edge(Anchor.LAST_FROST_SAFE, 0)
