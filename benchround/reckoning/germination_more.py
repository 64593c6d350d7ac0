"""More of a germination count: days by the seeds sown, another law, seeds taken away before."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.seed.germination_times import days_to_share_of_sown
from benchround.core.seed.interval_fit import TimeFit, fit_loglogistic
from benchround.core.seed.looks import Looks
from benchround.core.seed.survival import SurvivalStep, kaplan_meier
from benchround.plain import JsonValue
from benchround.reckoning.answer import rounded

SHARES = (0.1, 0.5, 0.9)
FOLLOWED = "Kaplan & Meier 1958, error Greenwood 1926 (from memory)"


@dataclass(frozen=True, slots=True)
class Further:
    """Figures beside the usual ones; what the counts do not define is None.

    Attributes:
        of_sown: days until these `SHARES` of the seeds sown are up.
        fit: log-logistic days of those that came up.
        followed: share not yet up after each day, where seeds were taken away.
    """

    of_sown: tuple[float | None, ...]
    fit: TimeFit | None
    followed: tuple[SurvivalStep, ...]

    def value(self) -> dict[str, JsonValue]:
        """Keys for JSON."""
        return {
            "days_of_sown": {
                f"{share:.0%}": rounded(days, 6)
                for share, days in zip(SHARES, self.of_sown, strict=True)
            },
            "fit_loglogistic_median_days": rounded(self.fit.medians[0], 4) if self.fit else None,
            "followed": [
                {
                    "day": step.day,
                    "at_risk": step.at_risk,
                    "not_up": rounded(step.survival, 6),
                    "error": rounded(step.error, 6),
                }
                for step in self.followed
            ],
        }

    def lines(self) -> Iterator[str]:
        """The same to read."""
        told = [
            f"{share:.0%} after {days:.1f}"
            for share, days in zip(SHARES, self.of_sown, strict=True)
            if days is not None
        ]
        if told:
            yield f"  of all sown {', '.join(told)} days"
        if self.fit is not None:
            median = self.fit.medians[0]
            yield f"  half of those that came after {median:.2f} days (log-logistic fit)"
        if self.followed:
            last = self.followed[-1]
            yield (
                f"  with the seeds taken away left out from then on {1 - last.survival:.1%} are up "
                f"by day {last.day:g}, give or take {last.error:.1%} ({FOLLOWED})"
            )


def further_figures(looks: Looks, taken: Sequence[tuple[float, int]], sown_known: bool) -> Further:
    """Reckon them.

    Raises:
        InputError: more were taken away than were left.
    """
    of_sown = tuple(days_to_share_of_sown(looks, share) if sown_known else None for share in SHARES)
    fit = fit_loglogistic(looks, count_never=False)
    return Further(of_sown, fit, _followed(looks, taken) if taken else ())


def _followed(looks: Looks, taken: Sequence[tuple[float, int]]) -> tuple[SurvivalStep, ...]:
    days, happened = [], []
    for step in looks.steps:
        days += [step.this_look_day] * step.newly_up
        happened += [True] * step.newly_up
    for day, seeds in taken:
        days += [day] * seeds
        happened += [False] * seeds
    left = looks.sown - len(days)
    if left < 0:
        raise InputError(f"{len(days)} seeds came up or were taken of {looks.sown} sown.")
    last = looks.steps[-1].this_look_day if looks.steps else 0.0
    return kaplan_meier([*days, *[last] * left], [*happened, *[False] * left])
