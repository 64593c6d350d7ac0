"""One sitting at the desk: what the grower began it with, and the keys and the look it has."""

from __future__ import annotations

from typing import TYPE_CHECKING

from benchround.core.frozen import dataclass
from benchround.screens.keys import USUAL
from benchround.screens.palettes import LookKept

if TYPE_CHECKING:
    from benchround.clock import SampleClock
    from benchround.core.season import Season
    from benchround.screens.key_ring import KeyRing

LOOK = "look"
"""The setting that holds the grower's choice of light or dark."""


@dataclass(frozen=True, slots=True)
class Sitting:
    """What holds for a sitting besides the season.

    Attributes:
        sample: whether it is the sample season, which says so on its first lines.
        sample_kept: whether the sample lies in a folder of the grower's, and stays there.
        clock: the sample's clock, the same that gives the desk its day, stepped by a key; without
            it the day stays pinned.
        ring: the keys as the grower has them.
        look_kept: the look this computer was given, and what keeps another one.
        said: what to say first on the round.
    """

    sample: bool = False
    sample_kept: bool = False
    clock: SampleClock | None = None
    ring: KeyRing = USUAL
    look_kept: LookKept = LookKept()
    said: str = ""

    @property
    def lost_on_leaving(self) -> bool:
        """Whether all that is recorded goes when the grower leaves."""
        return self.sample and not self.sample_kept

    def look_chosen(self, season: Season) -> str:
        """The look the grower chose: for this computer, else for the season; empty for none."""
        return self.look_kept.look or season.settings.get(LOOK, "")


AS_USUAL = Sitting()
"""A season of the grower's own, the usual keys, and no look chosen."""
