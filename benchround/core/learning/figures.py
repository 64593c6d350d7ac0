"""What the grower's own records teach, always beside the library's figure.

The parts live in `share`, `days`, `losses` and `lot_spread`.
"""

from __future__ import annotations

from benchround.core.learning.days import (
    PRIOR_BATCHES,
    DaysBelief,
    middle_of_look,
    shrunk_median,
)
from benchround.core.learning.losses import LossBelief, james_stein_factor, shrink_together
from benchround.core.learning.lot_spread import LotSpread, spread_of_lots
from benchround.core.learning.share import (
    PRIOR_SEEDS,
    ShareBelief,
    belief_from_lots,
    beta_update,
    count_sd,
    old_seed_belief,
    packet_belief,
    shrunk_share,
)
from benchround.core.numbers.distributions import t_quantile

__all__ = [
    "PRIOR_BATCHES",
    "PRIOR_SEEDS",
    "DaysBelief",
    "LossBelief",
    "LotSpread",
    "ShareBelief",
    "belief_from_lots",
    "beta_update",
    "count_sd",
    "james_stein_factor",
    "middle_of_look",
    "old_seed_belief",
    "packet_belief",
    "shrink_together",
    "shrunk_median",
    "shrunk_share",
    "spread_of_lots",
    "t_quantile",
]
