"""How long a crop takes from sowing: the weeks published for it, else its own steps added up.

Published weeks hold for the warmth they were found at. Where trays stand colder, seedlings come up
later by thermal time, and the weeks are moved by that difference (our proposal).
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, timedelta
from functools import cached_property

from benchround.core.crop.crop import Crop, Raising
from benchround.core.frozen import dataclass
from benchround.core.seed.emergence import EARLY_SHARE, LATE_SHARE, days_at
from benchround.core.seed.thermal_model import ThermalModel, heat_for_share, heat_of_day
from benchround.core.seed.waiting import thermal_model
from benchround.core.site import Place, PlaceKind, Site
from benchround.core.sky.warmth import warmth
from benchround.core.sky.weather import Weather

LONGEST_WAIT_DAYS = 200
"""Seed that needs longer than this to come up is not planned with (our proposal)."""
OWN_STEPS = "emergence by thermal time, then the crop's own days; common practice, no source"


@dataclass(frozen=True, slots=True)
class RaisedAt:
    """How warm the trays stand.

    Attributes:
        words: the same in words.
        mean_c: day -> mean temperature; None for the warmth the crop's days are given for.
    """

    words: str
    mean_c: Callable[[date], float] | None = None


AS_GIVEN = RaisedAt("at the warmth its days are given for")


def steady(temp_c: float) -> RaisedAt:
    """A thermostat or a room: the same temperature every day."""
    return RaisedAt(f"at a steady {temp_c:g} C", lambda _: temp_c)


def usual_in(kind: PlaceKind, site: Site) -> RaisedAt:
    """A kind of place through the site's usual year."""
    place = Place(code=str(kind), name=str(kind), kind=kind, order=1, glazing="glass")
    nothing = Weather()
    return RaisedAt(
        f"in a {kind} through the site's usual year",
        lambda day: warmth(place, nothing, site, day).mean_c,
    )


@dataclass(frozen=True, slots=True)
class Days:
    """Days from sowing: least, usual and most."""

    least: int
    usual: int
    most: int


@dataclass(frozen=True)
class Course:
    """From sowing to a goal, for one crop at one warmth.

    Attributes:
        crop: its rules.
        raised: how warm the trays stand.
        span: published least and most days from sowing; None adds up the crop's own steps.
        source: where the days come from.
    """

    crop: Crop
    raised: RaisedAt
    span: tuple[int, int] | None
    source: str

    @cached_property
    def model(self) -> ThermalModel | None:
        """Emergence of the crop; None where it has no germination figures."""
        found = self.crop.germination
        return None if found is None else thermal_model(found)

    @cached_property
    def _heat_on(self) -> dict[date, float]:
        return {}

    def _heat(self, day: date) -> float:
        mean_c, model = self.raised.mean_c, self.model
        if mean_c is None or model is None:
            return 0.0
        if day not in self._heat_on:
            self._heat_on[day] = heat_of_day(model, mean_c(day))
        return self._heat_on[day]

    def days_up(self, sown: date, share: float = 0.5) -> float | None:
        """Days until this share is up, part days included; None where it does not come up."""
        model = self.model
        if model is None or self.crop.germination is None:
            return None
        if self.raised.mean_c is None:
            return days_at(model, self.crop.germination.at_c, share)
        needed, had = heat_for_share(model, share), 0.0
        for passed in range(LONGEST_WAIT_DAYS):
            daily = self._heat(sown + timedelta(days=passed))
            if had + daily >= needed:
                return passed + (needed - had) / daily
            had += daily
        return None

    def days(self, sown: date) -> Days | None:
        """Days from a sowing to the goal; None where it does not come up at this warmth."""
        if self.span is None:
            return self._own_steps(sown)
        later = self._later_by(sown)
        if later is None:
            return None
        least, most = (max(1, days + later) for days in self.span)
        return Days(least, (least + most) // 2, most)

    def _later_by(self, sown: date) -> int | None:
        """Days by which emergence here is later than at the warmth the days are given for."""
        given, model = self.crop.germination, self.model
        if self.raised.mean_c is None or given is None or model is None:
            return 0
        here, there = self.days_up(sown), days_at(model, given.at_c)
        return None if here is None or there is None else round(here - there)

    def _own_steps(self, sown: date) -> Days | None:
        up = [self.days_up(sown, share) for share in (EARLY_SHARE, 0.5, LATE_SHARE)]
        after = sum(days for _, days in steps_after_up(self.crop))
        least, usual, most = (None if days is None else round(days) + after for days in up)
        if least is None or usual is None or most is None:
            return None
        return Days(least, usual, most)


def steps_after_up(crop: Crop) -> tuple[tuple[str, int], ...]:
    """The steps between first up and planting out, each with the days it comes after the last."""
    growing, steps = crop.growing, [("first true leaves", crop.growing.true_leaf_days)]
    tray = crop.raising is Raising.TRAY and growing.prick_out
    if tray:
        steps = [("prick out", growing.true_leaf_days)]
    if growing.pot_on and tray:
        steps.append(("pot on", growing.pot_on_days))
    elif growing.pot_on:
        waited = max(0, growing.pot_on_days_from_up - growing.true_leaf_days)
        steps.append(("pot on", waited))
    course = crop.hardening
    if course is not None:
        settling = course.after_potting_days if tray or growing.pot_on else 0
        steps += [("start hardening", settling), ("plant out", course.days)]
    else:
        steps.append(("plant out", 0))
    return tuple(steps)
