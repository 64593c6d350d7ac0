"""How late a sowing still counts in a cool temperate climate.

Tomato on heat to mid April, pepper on heat to early April, sweet pea in spring to April: common
practice in the south of England, no source.
"""

from __future__ import annotations

from datetime import date

import pytest

from benchround.core.site import Site
from tests.crops.published import crop

SOUTH = Site(lat_deg=51.2, last_frost=(4, 25), last_frost_safe=(5, 15), first_frost=(10, 25))


@pytest.mark.parametrize(
    ("key", "still", "over"),
    [
        ("tomato", date(2026, 4, 15), date(2026, 5, 5)),
        ("pepper", date(2026, 4, 5), date(2026, 4, 20)),
        ("sweet-pea", date(2026, 4, 5), date(2026, 5, 1)),
    ],
)
def test_it_may_be_sown_again_as_late_as_growers_do(key: str, still: date, over: date) -> None:
    def open_on(day: date) -> bool:
        spans = [SOUTH.year.span(window, date(2026, 1, 1)) for window in crop(key).windows]
        return any(span is not None and span.opens <= day <= span.closes for span in spans)

    assert open_on(still)
    assert not open_on(over)
