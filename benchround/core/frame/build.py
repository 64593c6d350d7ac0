"""What a cold frame is made of, and how far its light stands open."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from functools import lru_cache
from types import MappingProxyType

from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import within

W_M2K_PER_BTU = 5.678
"""1 BTU per hour, square foot and degF, in W m-2 K-1."""
TIMBER_WALL_U = 3.0
"""Heat passed by a timber side, W m-2 K-1; our proposal, no source."""
BED_ABSORBS = 0.9
"""Share of the sun through the light that trays and soil keep; from memory."""
AIR_CHANGES_SHUT = 2.0
"""How often an hour a shut frame changes its air; our proposal, no source."""
LIGHT_OVER_FLOOR = 10.0 / 9.0
"""A light sloped at about 26 degrees is larger than the ground under it by 1 / cos 26."""


class Glazing(StrEnum):
    """What the light is made of."""

    GLASS = "glass"
    TWIN_WALL = "twin-wall"
    FILM = "film"
    SLATS = "slats"
    NONE = "none"


@dataclass(frozen=True, slots=True)
class Cover:
    """What a light does to sun and heat.

    Attributes:
        transmission: share of the sun let through, 0 to 1.
        u_w_m2k: heat passed, W m-2 K-1.
        gap_share: share of the light that is always open.
        source: where the figures come from.
        status: how far the source was read.
    """

    transmission: float
    u_w_m2k: float
    gap_share: float
    source: str
    status: str


_EXTENSION = "eXtension, greenhouse glazing page (U 1.0-1.2 single, 0.6-0.7 double, BTU/h ft2 degF)"

COVERS: Mapping[Glazing, Cover] = MappingProxyType(
    {
        Glazing.GLASS: Cover(
            0.85, 1.1 * W_M2K_PER_BTU, 0.0, f"{_EXTENSION}; glass passes 0.85-0.90", "read"
        ),
        Glazing.TWIN_WALL: Cover(
            0.80, 0.65 * W_M2K_PER_BTU, 0.0, f"{_EXTENSION}; twin-wall passes 0.78-0.82", "read"
        ),
        Glazing.FILM: Cover(
            0.85, 1.1 * W_M2K_PER_BTU, 0.0, f"{_EXTENSION}; one film passes 0.80-0.90", "read"
        ),
        Glazing.SLATS: Cover(
            0.50, 1.1 * W_M2K_PER_BTU, 0.5, "half slats, half gaps", "our proposal"
        ),
        Glazing.NONE: Cover(1.0, 1.1 * W_M2K_PER_BTU, 1.0, "nothing over it", "our proposal"),
    }
)
"""Transmission and heat loss by glazing: middle of the band read, the lower edge for glass, since
lights in use are seldom clean."""


class LidPosition(StrEnum):
    """How far the light stands open, from least to most."""

    SHUT = "shut"
    CRACK = "crack"
    FIRST_NOTCH = "first notch"
    SECOND_NOTCH = "second notch"
    OFF = "off"

    @property
    def words(self) -> str:
        """How it is said; "off" alone reads like a light that was taken away for good."""
        return "fully open" if self is LidPosition.OFF else str(self)


LID_ORDER: tuple[LidPosition, ...] = tuple(LidPosition)
"""The positions from least to most open."""

LIFT_M: Mapping[LidPosition, float] = MappingProxyType(
    {
        LidPosition.SHUT: 0.0,
        LidPosition.CRACK: 0.02,
        LidPosition.FIRST_NOTCH: 0.05,
        LidPosition.SECOND_NOTCH: 0.10,
    }
)
"""How high the front edge is lifted, m; the usual wedge and notches, common practice."""


@dataclass(frozen=True, slots=True)
class FrameBuild:
    """One cold frame: its size, its light and its sides. Missing figures follow the glazing.

    Attributes:
        length_m: along the hinge, 0.3 to 20 m.
        width_m: from back to front, 0.3 to 5 m.
        height_m: mean inside height, 0.1 to 2 m.
        glazing: what the light is made of.
        transmission: share of the sun let through, 0 to 1; None takes the glazing's.
        light_u_w_m2k: heat passed by the light, 0.5 to 10 W m-2 K-1; None takes the glazing's.
        wall_u_w_m2k: heat passed by the sides, 0.1 to 10 W m-2 K-1 (brick, timber, boards).
        wall_area_m2: area of the sides; None takes all four at the mean height.
        light_area_m2: area of the light; None takes the floor, sloped.
        shade_share: share of the sun kept off by netting or whitening, 0 to 1.
        absorbed_share: share of what comes through that is kept, 0 to 1.
        air_changes_h: air changes an hour when shut, 0 to 200.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """

    length_m: float
    width_m: float
    height_m: float
    glazing: Glazing
    transmission: float | None = None
    light_u_w_m2k: float | None = None
    wall_u_w_m2k: float = TIMBER_WALL_U
    wall_area_m2: float | None = None
    light_area_m2: float | None = None
    shade_share: float = 0.0
    absorbed_share: float = BED_ABSORBS
    air_changes_h: float = AIR_CHANGES_SHUT

    def __post_init__(self) -> None:
        within("the frame's length", self.length_m, 0.3, 20.0, "m")
        within("the frame's width", self.width_m, 0.3, 5.0, "m")
        within("the frame's height", self.height_m, 0.1, 2.0, "m")
        within("the light's transmission", self.cover.transmission, 0.0, 1.0, "")
        within("the light's U value", self.cover.u_w_m2k, 0.5, 10.0, "W/m2K")
        within("the walls' U value", self.wall_u_w_m2k, 0.1, 10.0, "W/m2K")
        within("the area of the walls", self.walls_m2, 0.0, 200.0, "m2")
        within("the area of the light", self.light_m2, 0.05, 200.0, "m2")
        within("the shaded share", self.shade_share, 0.0, 1.0, "")
        within("the share absorbed", self.absorbed_share, 0.0, 1.0, "")
        within("the air changes of the shut frame", self.air_changes_h, 0.0, 200.0, "/h")

    @property
    def cover(self) -> Cover:
        """The light's figures, the grower's own before those of its glazing."""
        return _cover(self.glazing, self.transmission, self.light_u_w_m2k)

    @property
    def floor_m2(self) -> float:
        """Ground the frame covers, m2."""
        return self.length_m * self.width_m

    @property
    def volume_m3(self) -> float:
        """Air in the frame, m3."""
        return self.floor_m2 * self.height_m

    @property
    def walls_m2(self) -> float:
        """Area of the sides, m2."""
        if self.wall_area_m2 is not None:
            return self.wall_area_m2
        return 2.0 * (self.length_m + self.width_m) * self.height_m

    @property
    def light_m2(self) -> float:
        """Area of the light, m2."""
        if self.light_area_m2 is not None:
            return self.light_area_m2
        return self.floor_m2 * LIGHT_OVER_FLOOR

    def opening_m2(self, lid: LidPosition) -> float:
        """Return the area air can pass through at a lid position, m2.

        A notch opens the front and a triangle at either end. A crack counts along the front only:
        the overhang closes its ends. With the light off the whole floor lies open.
        """
        if lid is LidPosition.OFF:
            return self.floor_m2
        lift = LIFT_M[lid]
        edge = self.length_m if lid is LidPosition.CRACK else self.length_m + self.width_m
        gaps = self.cover.gap_share * self.floor_m2
        return min(self.floor_m2, gaps + lift * edge)


@lru_cache(maxsize=64)  # asked for every hour of a day at every lid position
def _cover(glazing: Glazing, own_tau: float | None, own_u: float | None) -> Cover:
    usual = COVERS[glazing]
    return Cover(
        usual.transmission if own_tau is None else own_tau,
        usual.u_w_m2k if own_u is None else own_u,
        usual.gap_share,
        usual.source,
        usual.status,
    )
