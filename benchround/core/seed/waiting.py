"""What to expect of seed not yet up: from when to look, when late, when to give up.

The seed's clock is the heat it really had: degree-days above the crop's base at the place it stood,
by day. Warmth above the optimum counts as the optimum, so that a cooked tray is found late and
its cause named, instead of being excused by the heat that stalled it. Looking starts by the likely
warmth; late and given up it is only by the warmth it had for sure.
"""

from __future__ import annotations

from datetime import date, timedelta
from itertools import islice

from benchround.core.batch.batch import Batch, Part
from benchround.core.batch.nouns import Moves
from benchround.core.crop.crop import Crop, Germination, PlantClass
from benchround.core.dates import say_day
from benchround.core.frozen import dataclass
from benchround.core.learning.learned import left_out_words
from benchround.core.lifecycle import Stage
from benchround.core.record import Kind
from benchround.core.season import Season
from benchround.core.seed.emergence import EARLY_SHARE, give_up_heat, late_heat
from benchround.core.seed.heat import (
    felt_since,
    heat_felt,
    place_on,
    places_of,
    thermal_model,
)
from benchround.core.seed.lateness import chance_alive, chance_up_within
from benchround.core.seed.stall import COLD_DAYS, Stall, too_cold, too_hot
from benchround.core.seed.thermal_model import (
    ThermalModel,
    chance_nothing,
    emerged_share,
    heat_for_share,
)
from benchround.core.sky.warmth import Warmth

__all__ = [
    "Stall",
    "Waiting",
    "forecast",
    "heat_by",
    "place_on",
    "places_of",
    "thermal_model",
]

HALF_SHARE = 0.50
PERENNIAL_PATIENCE = 4.0
"""Perennials are given up at this many times the median heat (our proposal)."""
FURTHEST_DAYS = 400
HEAT_MARGIN = 1e-6
SOON_DAYS = 7
"""So far ahead the chance that it comes up is told."""


@dataclass(frozen=True, slots=True)
class Waiting:
    """The forecast for one sowing, seen on the morning of `day`.

    Attributes:
        look_from, half_by: mornings when a tenth and half of such batches are up.
        late_from: first morning after nine in ten of them.
        give_up_on: morning when, with nothing up, the chance that it is alive falls to 0.20.
        heat: degree-days had by the morning of `day`; `heat_half` what half emergence needs.
        share: share that should be up by now.
        last_look: the last day somebody looked and saw nothing.
        alive: chance that the sowing is alive, given nothing at the last look.
        up_soon: chance, given the same, that something is up by `soon`, a week from the day.
        basis: where the day's temperature comes from.
        had: where those of the days since sowing come from, each with its number of days; empty
            where all are known as the day's is.
        taught: what own sowings taught of the time, and which of them taught nothing; empty where
            no own sowing stands behind the forecast.
    """

    since: date
    look_from: date | None
    half_by: date | None
    late_from: date | None
    give_up_on: date | None
    heat: float
    heat_half: float
    share: float
    last_look: date | None
    alive: float
    up_soon: float
    soon: date
    stall: Stall | None
    basis: str
    had: str = ""
    taught: str = ""

    @property
    def seen_dead(self) -> bool:
        """Whether a look that showed nothing came late enough to give it up on."""
        given_up, look = self.give_up_on, self.last_look
        return given_up is not None and look is not None and look >= given_up

    @property
    def soon_words(self) -> str:
        """The chance that it comes up within the week, in words."""
        return f"{self.up_soon:.0%} that it is up by {say_day(self.soon)}"


def forecast(season: Season, batch: Batch, part: Part, crop: Crop, day: date) -> Waiting | None:
    """What to expect of a sown part on the morning of `day`, by what own sowings taught.

    None where the crop has no germination figures or nothing was sown.
    """
    if crop.germination is None or batch.sowing is None:
        return None
    model, taught = _model(season, crop, crop.germination, batch.id)
    sown = batch.sowing.again_on or batch.sowing.day
    last_look = _last_look(part, sown)
    wait = _Wait(model, _needs(model, crop), last_look, day)
    moves = places_of(batch, part)
    days = islice(felt_since(moves, sown, season.warmth_of), FURTHEST_DAYS)
    for number, warm in enumerate(days, start=sown.toordinal()):
        if wait.take(number, warm):
            break
    mornings = [date.fromordinal(number) if number else None for number in wait.mornings]
    late = mornings[2]
    stall = wait.stall or (
        _cold_stall(season, batch, part, model, day, moves) if late is None or late > day else None
    )
    seen = 1.0 if wait.heat_at_look is None else chance_nothing(model, wait.heat_at_look)
    later = min(seen, chance_nothing(model, wait.heat_soon))
    return Waiting(
        since=sown,
        look_from=mornings[0],
        half_by=mornings[1],
        late_from=late,
        give_up_on=mornings[3],
        heat=wait.heat_now,
        heat_half=model.theta50,
        share=emerged_share(model, wait.heat_now),
        last_look=last_look,
        alive=chance_alive(seen),
        up_soon=chance_up_within(seen, later),
        soon=day + timedelta(days=SOON_DAYS),
        stall=stall,
        basis=wait.basis,
        had=wait.had,
        taught=taught,
    )


def heat_by(season: Season, moves: Moves, model: ThermalModel, since: date, days: float) -> float:
    """Degree-days a sowing had in so many days, parts of days included, where it stood."""
    if days <= 0.0:
        return 0.0
    felt, whole, total = felt_since(moves, since, season.warmth_of), int(days), 0.0
    for warm in islice(felt, whole):
        total += heat_felt(model, warm.mean_c)
    return total + heat_felt(model, next(felt).mean_c) * (days - whole)


def _model(
    season: Season, crop: Crop, germination: Germination, batch: str
) -> tuple[ThermalModel, str]:
    """The learned model and the words for it; the library's own for a crop not in the season."""
    time, library = season.learned(crop.key).time, thermal_model(germination)
    if time is None or time.library != library:
        return library, ""
    if not time.own:
        return time.model, ""
    others = left_out_words(left for left in time.left_out if left.batch != batch)
    return time.model, f"{time}" + (f"; left out: {others}" if others else "")


def _needs(model: ThermalModel, crop: Crop) -> tuple[float, float, float, float]:
    """Heat at which looking begins, half is up, it is late, and it is given up."""
    return (
        heat_for_share(model, EARLY_SHARE),
        heat_for_share(model, HALF_SHARE),
        late_heat(model) + HEAT_MARGIN,
        _give_up_heat(model, crop),
    )


def _give_up_heat(model: ThermalModel, crop: Crop) -> float:
    by_chance = give_up_heat(model)
    if crop.plant_class is PlantClass.HARDY_PERENNIAL:
        return max(by_chance, PERENNIAL_PATIENCE * model.theta50)
    return by_chance


class _Wait:
    """Heat added up day by day, and the mornings on which it passes what is needed.

    Days go by their number (`date.toordinal`); `mornings` holds numbers, in the order of `needs`.
    """

    def __init__(
        self,
        model: ThermalModel,
        needs: tuple[float, float, float, float],
        last_look: date | None,
        day: date,
    ) -> None:
        self.model = model
        self.last_look = last_look.toordinal() if last_look is not None else 0
        self.today = day.toordinal()
        self.soon = self.today + SOON_DAYS
        self.mornings: list[int | None] = [None, None, None, None]
        self.likely = sorted((0, 1), key=needs.__getitem__, reverse=True)
        self.surely = sorted((2, 3), key=needs.__getitem__, reverse=True)
        self.lines = [need - HEAT_MARGIN / 2 for need in needs]
        self.total = self.sure = self.heat_now = self.heat_soon = 0.0
        self.heat_at_look: float | None = None
        self.stall: Stall | None = None
        self.basis = ""
        self.bases: dict[str, int] = {}

    def take(self, number: int, warm: Warmth) -> bool:
        """Take one day in; True where nothing more is to be found out."""
        likely, surely = self.likely, self.surely
        while likely and self.total >= self.lines[likely[-1]]:
            self.mornings[likely.pop()] = number
        while surely and self.sure >= self.lines[surely[-1]]:
            self.mornings[surely.pop()] = number
        if number == self.last_look:
            self.heat_at_look = self.sure
        if number <= self.soon:
            self.heat_soon = self.sure
            if number <= self.today:
                self._take_past(number, warm)
        felt = heat_felt(self.model, warm.mean_c)
        self.total += felt
        self.sure += felt if warm.sure_c is None else heat_felt(self.model, warm.sure_c)
        return not surely and not likely and number >= self.soon

    def _take_past(self, number: int, warm: Warmth) -> None:
        self.heat_now, self.basis = self.total, warm.basis
        if number == self.today:
            return
        self.bases[warm.basis] = self.bases.get(warm.basis, 0) + 1
        if too_hot(self.model, warm):
            day = date.fromordinal(number)
            self.stall = Stall("heat", day, warm.max_c, self.model.ceiling_c)

    @property
    def had(self) -> str:
        """How the days since sowing are known; empty where all are known as today is."""
        if self.bases.keys() <= {self.basis}:
            return ""
        return "; ".join(
            f"{days} day{'' if days == 1 else 's'} {basis}" for basis, days in self.bases.items()
        )


def _last_look(part: Part, sown: date) -> date | None:
    days = [
        record.day
        for kind in (Kind.LOOKED, Kind.STALLED)
        if (record := part.last.get(kind)) is not None and record.day >= sown
    ]
    return max(days) if days else None


def _cold_stall(
    season: Season, batch: Batch, part: Part, model: ThermalModel, day: date, moves: Moves
) -> Stall | None:
    if part.stage not in (Stage.SOWN, Stage.STALLED):
        return None
    days = [day - timedelta(days=back) for back in range(1, COLD_DAYS + 1)]
    if days[-1] < batch.begun:
        return None
    felt = [season.warmth_at(place_on(moves, at), at) for at in days]
    if all(too_cold(model, warm) for warm in felt):
        return Stall("cold", days[0], felt[0].mean_c, model.base_c)
    return None
