"""Learned figures, each beside the one it started from, and the sowings left out of it."""

from __future__ import annotations

from collections.abc import Iterable

from benchround.core.frozen import dataclass
from benchround.core.learning.share import ShareBelief
from benchround.core.seed.heat import heat_felt
from benchround.core.seed.thermal_model import ThermalModel

LEFT_OUT_SAID = 3
"""How many of the sowings left out are named in a sentence."""


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A sowing nothing is learned from, and why."""

    batch: str
    because: str

    def __str__(self) -> str:
        return f"{self.batch} ({self.because})"


@dataclass(frozen=True, slots=True)
class LearnedShare:
    """Germination share.

    Attributes:
        prior: the share before own counts; `of` says whose it is: "library" or "packet".
        prior_seeds: seeds it is worth.
        belief: the share after own counts.
        up, sown: own counts behind it, of `batches`.
        left_out: own sowings that teach no share.
    """

    prior: float
    of: str
    prior_seeds: float
    belief: ShareBelief
    up: int = 0
    sown: int = 0
    batches: tuple[str, ...] = ()
    left_out: tuple[LeftOut, ...] = ()

    @property
    def share(self) -> float:
        """The learned share; the prior itself where there is no own count."""
        return self.belief.mean if self.batches else self.prior

    @property
    def tested(self) -> float | None:
        """Seeds behind the share: None where no own count is, and it is taken as it stands."""
        return self.belief.seeds if self.batches else None

    def __str__(self) -> str:
        if not self.batches:
            return f"{self.of} {self.prior:.0%}, none of your own counts"
        return (
            f"{self.of} {self.prior:.0%}, yours {self.share:.0%} from {self.sown} seeds "
            f"in {_sowings(len(self.batches))}"
        )


@dataclass(frozen=True, slots=True)
class LearnedTime:
    """Heat, and days at one temperature, from sowing to the first seedling.

    Attributes:
        library: the library's model.
        model: the learned one; the library's itself where there is no own sowing.
        at_c: the temperature the library gives its days for.
        own: (batch, days, degree-days) of each own sowing behind it.
        left_out: own sowings that teach no time.
    """

    library: ThermalModel
    model: ThermalModel
    at_c: float
    own: tuple[tuple[str, float, float], ...] = ()
    left_out: tuple[LeftOut, ...] = ()

    @property
    def library_days(self) -> float:
        """The library's median in days at `at_c`."""
        return self.library.theta50 / heat_felt(self.library, self.at_c)

    @property
    def days(self) -> float:
        """The learned median in days at `at_c`."""
        return self.model.theta50 / heat_felt(self.model, self.at_c)

    @property
    def batches(self) -> tuple[str, ...]:
        """The own sowings behind it."""
        return tuple(name for name, _, _ in self.own)

    def __str__(self) -> str:
        library, own = self.library_days, self.days
        places = 1 if self.own and f"{library:.0f}" == f"{own:.0f}" else 0
        said = f"library {library:.{places}f} days at {self.at_c:g} C"
        if not self.own:
            return said
        return f"{said}, yours {own:.{places}f} from {_sowings(len(self.own))}"


def left_out_words(left_out: Iterable[LeftOut]) -> str:
    """Which sowings taught nothing and why, the first few by name; empty where none."""
    found = [str(left) for left in left_out]
    more = len(found) - LEFT_OUT_SAID
    return ", ".join(found[:LEFT_OUT_SAID]) + (f" and {more} more" if more > 0 else "")


def _sowings(number: int) -> str:
    return f"{number} sowing" if number == 1 else f"{number} sowings"
