"""Heat in a cold frame by day: a steady balance of sun against light, sides and moving air.

The structure is that of a greenhouse heat balance (ASABE EP406; Hanan; Aldrich & Bartok: from
memory), the wind and warmth through the opening that of Boulard & Baille 1995, Agricultural and
Forest Meteorology 76:145 (symbols read, values from memory):

    taken (1 - E) (1 - S) = (Tin - Tout) [Ul Al + Uw Aw + rho cp (V ach / 3600 + Q)]
    Q = A / 2 Cd sqrt(2 g (Tin - Tout) / T H / 4 + Cw u^2)

with taken = transmission x absorbed share x (1 - shade) x radiation x floor. H is half the height
of the frame. The balance is steady: it holds no heat from one hour to the next, so warnings come
early rather than late.
"""

from __future__ import annotations

from math import inf, sqrt

from benchround.core.errors import OutOfRangeError
from benchround.core.frame.build import FrameBuild, LidPosition
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import within

AIR_J_M3K = 1200.0
"""Heat held by air, rho cp, J m-3 K-1."""
DISCHARGE = 0.65
"""Discharge coefficient Cd of an opening; Boulard & Baille 1995, from memory."""
WIND_COEFFICIENT = 0.09
"""Wind effect coefficient Cw; Boulard & Baille 1995, from memory."""
GRAVITY_M_S2 = 9.81
AIR_K = 293.0
"""Air temperature T in the buoyancy term, K; ten degrees more or less change Q by under 2 %."""
OPEN_BED_U = 10.0
"""Heat a bed under the open sky loses by radiation and still air, W m-2 K-1; from memory. It takes
the place of the light's U when the light is off, and wind comes on top through the opening."""
EVAPORATING_SHARE = 0.2
"""Share E of the heat that trays spend on evaporation; our proposal (0.5 under a full canopy)."""
INTO_GROUND_SHARE = 0.3
"""Share S of the rest that soil and sides take in by day; our proposal."""


@dataclass(frozen=True, slots=True)
class Sunlit:
    """What the sun does to the frame, and what of its heat warms the air.

    Attributes:
        radiation_wm2: radiation on level ground, 0 to 1400 W/m2.
        wind_ms: wind over the frame at about 2 m, 0 to 60 m/s.
        evaporating_share: share of the heat spent on evaporation, 0 to 1.
        into_ground: share of the rest taken in by soil and sides, 0 to 1.
        factor: how much more of the sun this frame keeps than its build says, 0 to 5; from the
            grower's own readings.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """

    radiation_wm2: float
    wind_ms: float
    evaporating_share: float = EVAPORATING_SHARE
    into_ground: float = INTO_GROUND_SHARE
    factor: float = 1.0

    def __post_init__(self) -> None:
        within("the radiation", self.radiation_wm2, 0.0, 1400.0, "W/m2")
        within("the wind", self.wind_ms, 0.0, 60.0, "m/s")
        within("the share evaporated", self.evaporating_share, 0.0, 1.0, "")
        within("the share into the ground", self.into_ground, 0.0, 1.0, "")
        within("the frame's own sun factor", self.factor, 0.0, 5.0, "")

    def taken_w(self, build: FrameBuild, lid: LidPosition) -> float:
        """Return the sun's heat the bed keeps, W; with the light off no glazing dims it."""
        through = 1.0 if lid is LidPosition.OFF else build.cover.transmission
        share = through * build.absorbed_share * (1.0 - build.shade_share) * self.factor
        return share * self.radiation_wm2 * build.floor_m2


@dataclass(frozen=True, slots=True)
class HeatTerms:
    """Where the heat of a frame comes from and goes to, W; in minus out is `residual_w`.

    `from_ground_w` is what soil and sides give back to hold the gain; below zero the clear sky
    draws it out. A steady day has none.
    """

    taken_w: float
    from_ground_w: float
    evaporated_w: float
    into_ground_w: float
    through_light_w: float
    through_walls_w: float
    leaked_w: float
    ventilated_w: float

    @property
    def in_w(self) -> float:
        """Heat coming in, W."""
        return self.taken_w + self.from_ground_w

    @property
    def out_w(self) -> float:
        """Heat going out, W."""
        stored = self.evaporated_w + self.into_ground_w
        return stored + self.lost_w

    @property
    def lost_w(self) -> float:
        """Heat lost to the outside air, W."""
        return self.through_light_w + self.through_walls_w + self.leaked_w + self.ventilated_w

    @property
    def residual_w(self) -> float:
        """What the books do not explain, W; nothing but rounding when they close."""
        return self.in_w - self.out_w


def ventilation_m3_s(opening_m2: float, height_m: float, warmer_c: float, wind_ms: float) -> float:
    """Return the air moved through a propped light by warmth and wind, Q, m3/s.

    Boulard & Baille 1995 (see the head of this file): A/2 Cd sqrt(2 g dT/T H/4 + Cw u^2).

    Args:
        opening_m2: open area A, 0 to 200 m2.
        height_m: height H the warm air stands over, 0 to 2 m.
        warmer_c: how much warmer it is inside, dT, K; inside colder counts as much as warmer.
        wind_ms: wind u, 0 to 60 m/s.
    """
    within("the opening", opening_m2, 0.0, 200.0, "m2")
    within("the height of the opening", height_m, 0.0, 2.0, "m")
    within("the wind", wind_ms, 0.0, 60.0, "m/s")
    rising = 2.0 * GRAVITY_M_S2 * abs(warmer_c) / AIR_K * height_m / 4.0
    return opening_m2 / 2.0 * DISCHARGE * sqrt(rising + WIND_COEFFICIENT * wind_ms**2)


def light_u_w_m2k(build: FrameBuild, lid: LidPosition) -> float:
    """Return the heat passed upward through the light, or lost from the bare bed, W m-2 K-1."""
    return OPEN_BED_U if lid is LidPosition.OFF else build.cover.u_w_m2k


def still_loss_w_k(build: FrameBuild, lid: LidPosition) -> float:
    """Return the heat lost for each degree the frame is warmer, without the opening, W/K."""
    solid = light_u_w_m2k(build, lid) * build.light_m2 + build.wall_u_w_m2k * build.walls_m2
    return solid + AIR_J_M3K * build.volume_m3 * build.air_changes_h / 3600.0


def gain_c(
    build: FrameBuild,
    radiation_wm2: float,
    lid: LidPosition,
    wind_ms: float,
    evaporating_share: float = EVAPORATING_SHARE,
    into_ground: float = INTO_GROUND_SHARE,
) -> float:
    """Return how much warmer the frame gets than the outside air by day, K.

    The steady balance at the head of this file.

    Args:
        build: the frame.
        radiation_wm2: radiation on level ground, 0 to 1400 W/m2.
        lid: how far the light stands open.
        wind_ms: wind over the frame, 0 to 60 m/s.
        evaporating_share: share of the heat spent on evaporation, 0 to 1.
        into_ground: share of the rest taken in by soil and sides, 0 to 1.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    sun = Sunlit(radiation_wm2, wind_ms, evaporating_share, into_ground)
    return gain_through_c(build, sun, lid, build.opening_m2(lid))


def gain_through_c(build: FrameBuild, sun: Sunlit, lid: LidPosition, opening_m2: float) -> float:
    """Return the gain in K at an opening measured by the grower, otherwise as `gain_c`.

    Newton's rule from the gain without ventilation: what the frame would lose rises ever more
    steeply with the gain, so each step stays above the root and comes closer.
    """
    heat_w = sun.taken_w(build, lid) * (1.0 - sun.evaporating_share) * (1.0 - sun.into_ground)
    still_w_k = still_loss_w_k(build, lid)
    gain = heat_w / still_w_k
    if gain < 1e-100 or opening_m2 == 0.0:
        return gain
    height_m = build.height_m / 2.0
    scale = AIR_J_M3K * opening_m2 / 2.0 * DISCHARGE
    rising = 2.0 * GRAVITY_M_S2 / AIR_K * height_m / 4.0
    blowing = WIND_COEFFICIENT * sun.wind_ms**2
    for _ in range(60):
        root = sqrt(rising * gain + blowing)
        excess = gain * (still_w_k + scale * root) - heat_w
        slope = still_w_k + scale * (root + gain * rising / (2.0 * root))
        step = excess / slope
        gain -= step
        if step <= 1e-12 * gain:
            return gain
    raise OutOfRangeError(
        f"the heat balance of the frame does not settle at {sun.radiation_wm2:g} W/m2 and"
        f" {sun.wind_ms:g} m/s: check the frame's size and glazing"
    )


def sun_factor_at(build: FrameBuild, sun: Sunlit, lid: LidPosition, warmer_c: float) -> float:
    """Return the factor with which the sun keeps a frame `warmer_c` K above the outside air.

    It is `gain_through_c` the other way about: what the frame loses so warm against what this sun
    leaves the air at a factor of 1. Below zero where the frame is colder than outside; infinite
    without sun, unless the frame is colder than outside.
    """
    terms = _sun_and_losses(build, sun, lid, warmer_c)
    warming_w = terms.taken_w - terms.evaporated_w - terms.into_ground_w
    if warming_w > 0.0:
        return sun.factor * terms.lost_w / warming_w
    return inf if warmer_c >= 0.0 else -inf


def heat_terms(build: FrameBuild, sun: Sunlit, lid: LidPosition, warmer_c: float) -> HeatTerms:
    """Return where the heat goes in a frame that is `warmer_c` K above the outside air.

    What the losses need beyond the sun is booked as coming from the ground. At the gain of
    `gain_c` that is nothing but rounding.
    """
    terms = _sun_and_losses(build, sun, lid, warmer_c)
    return HeatTerms(
        terms.taken_w,
        -terms.residual_w,
        terms.evaporated_w,
        terms.into_ground_w,
        terms.through_light_w,
        terms.through_walls_w,
        terms.leaked_w,
        terms.ventilated_w,
    )


def day_terms(build: FrameBuild, sun: Sunlit, lid: LidPosition) -> HeatTerms:
    """Return the heat terms at the steady gain, nothing balanced by hand: they sum to zero."""
    gain = gain_through_c(build, sun, lid, build.opening_m2(lid))
    return _sun_and_losses(build, sun, lid, gain)


def _sun_and_losses(build: FrameBuild, sun: Sunlit, lid: LidPosition, warmer_c: float) -> HeatTerms:
    taken_w = sun.taken_w(build, lid)
    evaporated_w = taken_w * sun.evaporating_share
    moved = ventilation_m3_s(build.opening_m2(lid), build.height_m / 2.0, warmer_c, sun.wind_ms)
    return HeatTerms(
        taken_w=taken_w,
        from_ground_w=0.0,
        evaporated_w=evaporated_w,
        into_ground_w=(taken_w - evaporated_w) * sun.into_ground,
        through_light_w=light_u_w_m2k(build, lid) * build.light_m2 * warmer_c,
        through_walls_w=build.wall_u_w_m2k * build.walls_m2 * warmer_c,
        leaked_w=AIR_J_M3K * build.volume_m3 * build.air_changes_h / 3600.0 * warmer_c,
        ventilated_w=AIR_J_M3K * moved * warmer_c,
    )
