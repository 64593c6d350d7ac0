"""What a frame without heat gains over the outside air by night: little, and sometimes less.

Means of trials: Oregon State University 1988, row covers, +1.4 to +1.8 K in one year and +0.2 to
+0.4 K in the next, single clear nights 0 to -1 K; Savage 1980, Agrochemophysica 12:5, tunnels
+1.3 K; University of Missouri Extension G6965, a shut frame 5 to 10 degF at most (all read). On
clear late nights tunnel air has been colder than the air outside (Sugiyama et al. 1967, read).
"""

from enum import StrEnum

from benchround.core.frame.build import FrameBuild, Glazing, LidPosition
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import within

LEAST_GAIN_C = -3.0
MOST_GAIN_C = 10.0
"""Night gains outside these are taken for a mistake; below the floor of every trial read."""

_KEPT_BY_LID = {
    LidPosition.SHUT: 1.0,
    LidPosition.CRACK: 0.7,
    LidPosition.FIRST_NOTCH: 0.5,
    LidPosition.SECOND_NOTCH: 0.3,
    LidPosition.OFF: 0.0,
}
# Share of the night gain kept: our proposal. Guttormsen 1972, J. agric. Engng Res. 17:172 (read):
# openings of 0.65-6.5 % of the cover lowered night minima by 1 K at most.


class NightSky(StrEnum):
    """The two kinds of night that matter to a frame."""

    CLOUDY_OR_WINDY = "cloudy or windy"
    CLEAR_CALM = "clear and calm"


def require_night_gain(figure: str, gain_c: float) -> float:
    """Return a night gain in K, or refuse one outside -3 to 10 K.

    Raises:
        OutOfRangeError: outside that range, or not a number.
    """
    return within(figure, gain_c, LEAST_GAIN_C, MOST_GAIN_C, "K")


@dataclass(frozen=True, slots=True)
class NightGains:
    """What a shut frame gains by night, K; each may be set by the grower, below zero too.

    The defaults are our proposal within the trials named at the head of this file.

    Attributes:
        cloudy_c: cloudy or windy night, any glazing.
        clear_plastic_c: clear calm night, film or twin-wall.
        clear_glass_c: clear calm night, glass.
        mat_c: what a mat over the light adds.

    Raises:
        OutOfRangeError: a gain is outside -3 to 10 K.
    """

    cloudy_c: float = 1.5
    clear_plastic_c: float = 0.5
    clear_glass_c: float = 2.0
    mat_c: float = 2.5

    def __post_init__(self) -> None:
        for name, gain in (
            ("the gain of a cloudy night", self.cloudy_c),
            ("the gain of a clear night under plastic", self.clear_plastic_c),
            ("the gain of a clear night under glass", self.clear_glass_c),
            ("the gain from a mat", self.mat_c),
        ):
            require_night_gain(name, gain)


USUAL_NIGHT_GAINS = NightGains()


def night_gain_c(
    glazing: Glazing,
    sky: NightSky,
    mat: bool = False,
    gains: NightGains = USUAL_NIGHT_GAINS,
) -> float:
    """Return how much warmer than outside a shut frame stays by night, K.

    Slats and an open frame gain nothing by themselves; a mat counts on any frame.

    Args:
        glazing: what the light is made of.
        sky: the kind of night.
        mat: whether a mat, carpet or sacking lies over the light.
        gains: the figures to use.
    """
    return _light_gain_c(glazing, sky, gains) + (gains.mat_c if mat else 0.0)


def _light_gain_c(glazing: Glazing, sky: NightSky, gains: NightGains) -> float:
    if glazing in (Glazing.SLATS, Glazing.NONE):
        return 0.0
    if sky is NightSky.CLOUDY_OR_WINDY:
        return gains.cloudy_c
    return gains.clear_glass_c if glazing is Glazing.GLASS else gains.clear_plastic_c


def kept_at_night(build: FrameBuild, lid: LidPosition) -> float:
    """Return the share of the night gain a frame keeps at a lid position, 0 to 1."""
    return 0.0 if build.glazing is Glazing.NONE else _KEPT_BY_LID[lid]
