"""When the next sowing of a crop is due that is sown again and again.

Two sowings are parted by the heat that lies between the two harvests wanted, as many days apart as
the crop's table says; where its days to harvest or its base temperature are not known, by the days
themselves. So it is as well with flowers that would open after the first autumn frost: they wait
for spring, and the heat of that cold month says nothing. Towards autumn the heat of a cold harvest
is soon had in a warm week; two sowings are never put closer than half the table's days. The offer
ends with the last window of the year, and with the last sowing that still pays before frost.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, timedelta

from benchround.core.crop.crop import Crop
from benchround.core.dates import Span, Year
from benchround.core.frozen import dataclass
from benchround.core.planning.again import RULE, sow_again
from benchround.core.planning.last_sowing import (
    days_to_reward,
    first_frost_from,
    last_sowing,
    window_span,
)

MeanOn = Callable[[date], float]
CLOSEST_SHARE = 2
"""Sowings counted by heat stand no closer than the table's days over this (our proposal)."""


@dataclass(frozen=True, slots=True)
class NextSowing:
    """The next sowing of a succession.

    Attributes:
        first, best: from the least and from the most days between sowings.
        closes: the last day it still makes sense; None where nothing ends it.
        fades: the day from which a grower who left it is not reminded any more.
        how: what the days rest on, in words.
        source: where the rule comes from.
    """

    first: date
    best: date
    closes: date | None
    fades: date
    how: str
    source: str

    def offered_on(self, day: date) -> bool:
        """Whether it is time, and not too late."""
        return self.first <= day < self.fades and (self.closes is None or day <= self.closes)


def next_in_turn(crop: Crop, sown: date, year: Year, mean_c: MeanOn) -> NextSowing | None:
    """The next sowing after one of them; None where the crop is sown once or the year is over.

    Args:
        crop: its rules.
        sown: day of the last sowing.
        year: the site's year.
        mean_c: day -> mean outside temperature, measured, expected or usual.
    """
    if crop.succession_days is None:
        return None
    reminded = timedelta(days=crop.succession_days[1])
    first, best, how, source = gap(crop, sown, year, mean_c)
    if not crop.windows:
        return NextSowing(first, best, None, best + reminded, how, source)
    span = _window(crop, sown, first, year)
    if span is None:
        return None
    first, best = max(first, span.opens), min(max(best, span.opens), span.closes)
    return NextSowing(first, best, span.closes, best + reminded, how, source)


def gap(crop: Crop, sown: date, year: Year, mean_c: MeanOn) -> tuple[date, date, str, str]:
    """The first and the best day of the next sowing by heat, else by days; how, and the source."""
    assert crop.succession_days is not None
    least, most = crop.succession_days
    first, best = sown + timedelta(days=least), sown + timedelta(days=most)
    days = f"{least} to {most} days" if least != most else f"{least} days"
    plain = f"every {days}", crop.source("succession_days")
    reward, germination = days_to_reward(crop), crop.germination
    if reward is None or germination is None:
        return first, best, *plain
    harvest = sown + timedelta(days=sum(reward) // 2)
    if not crop.edible and harvest > first_frost_from(year, sown):
        return first, best, *plain
    early = sow_again(sown, harvest, least, germination.base_c, mean_c)
    late = sow_again(sown, harvest, most, germination.base_c, mean_c)
    if early.next_sowing is None or late.next_sowing is None:
        return first, best, *plain
    how = (
        f"harvests {days} apart: {early.heat:.0f} to {late.heat:.0f} degree-days above "
        f"{germination.base_c:g} C between the sowings"
    )
    source = f"{crop.source('succession_days')}; {RULE}"
    closest = sown + timedelta(days=-(-least // CLOSEST_SHARE))
    farther = sown + timedelta(days=-(-most // CLOSEST_SHARE))
    return max(early.next_sowing, closest), max(late.next_sowing, farther), how, source


def _window(crop: Crop, sown: date, first: date, year: Year) -> Span | None:
    """The days of this growing year left for the next sowing; None where there are none.

    Windows that touch are one; what is cut off by the last sowing before frost is left off.
    """
    found = (window_span(crop, year, window, first) for window in crop.windows)
    known = (span for span in found if span is not None and span.opens < turn_of(year, sown))
    in_order = sorted(known, key=lambda span: (span.opens, span.closes))
    if not in_order:
        return None
    opens, closes = max(first, in_order[0].opens), in_order[0].closes
    for span in in_order[1:]:
        if span.opens <= closes + timedelta(days=1):
            closes = max(closes, span.closes)
    last = last_sowing(crop, year, opens)
    closes = closes if last is None else min(closes, last)
    return Span(opens, closes) if opens <= closes else None


def turn_of(year: Year, sown: date) -> date:
    """The first midwinter after a sowing, which parts one growing year from the next."""
    this = year.midwinter(sown.year)
    return this if this > sown else year.midwinter(sown.year + 1)
