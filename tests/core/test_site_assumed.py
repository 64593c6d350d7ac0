"""What is taken for a site's frosts where the grower told only some of them."""

from __future__ import annotations

from datetime import date

import pytest

from benchround.core.record import Figure, Kind, Record
from benchround.core.site import Site, site_from


def told(**figures: Figure) -> Site:
    return site_from(Record("01", date(2026, 1, 1), Kind.SITE, "", figures))


@pytest.mark.parametrize(
    ("last_frost", "safe"),
    [
        # twenty days on, our proposal; counted on a calendar of a plain year
        ("04-15", (5, 5)),
        ("05-10", (5, 30)),
        ("06-20", (7, 10)),
        ("12-20", (1, 9)),
    ],
)
def test_the_safe_day_follows_the_last_frost_that_was_told(
    last_frost: str, safe: tuple[int, int]
) -> None:
    site = told(lat_deg=50.0, last_frost=last_frost)
    assert site.last_frost_safe == safe
    said = next(words for words in site.assumed if words.startswith("day safe from frost"))
    assert said.endswith("20 days after the last frost")


def test_what_was_told_is_not_assumed() -> None:
    site = told(lat_deg=-40.0, last_frost="10-01", last_frost_safe="10-12", first_frost="04-20")
    assert site.last_frost_safe == (10, 12)
    assert site.assumed == ()


def test_in_the_south_it_follows_the_southern_spring() -> None:
    site = told(lat_deg=-40.0)
    assert (site.last_frost, site.last_frost_safe) == ((11, 10), (11, 30))
