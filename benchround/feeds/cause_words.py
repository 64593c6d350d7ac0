"""What each cause of loss asks for next time, and where that is from."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from benchround.core.crop.crop import COMMON_PRACTICE
from benchround.core.record import Cause

NEXT_TIME: Mapping[Cause, tuple[str, str]] = MappingProxyType(
    {
        Cause.DAMPING_OFF: (
            "sow thinner into clean trays, water from below and not from the butt, take the cover "
            "off as soon as the first are up",
            "Michigan State University, page on damping off (read)",
        ),
        Cause.DRIED_OUT: (
            "lift trays to feel their weight, set cells close together and their edges out of the "
            "wind, keep the cover on until the first are up",
            COMMON_PRACTICE,
        ),
        Cause.COOKED: (
            "open before the sun is on the glass, and shade: under shut glass it passed 34 C on an "
            "April day",
            "Amateur Gardening, on shading (read)",
        ),
        Cause.FROSTED: (
            "shut by evening where a clear night of 4 C or less is ahead",
            "allotment page on ground frost with the air above zero (read); 4 C from memory",
        ),
        Cause.DROWNED: (
            "take trays out of the water after half an hour, let the surface dry between waterings",
            "University of New Hampshire Extension, on watering (read)",
        ),
        Cause.WASHED_OUT: (
            "cover seed before storms, water from below or with the rose turned up",
            COMMON_PRACTICE,
        ),
        Cause.SLUG: (
            "lift trays off the ground, look beneath them at dusk, and sow a few spares",
            "pests page on slugs and snails (read); remedies from memory",
        ),
        Cause.MOUSE: (
            "sow peas, beans, sweet peas and lupins under mesh or a shut lid, a trap set first",
            "The Telegraph, on sowing sweet peas; a nursery page on rodents (read)",
        ),
        Cause.BIRD: ("net the bed before planting, not after", COMMON_PRACTICE),
        Cause.DRAWN: (
            "off the heat and into full light the day the first are up, cooler by 3 to 6 C",
            "UC Santa Cruz, Unit 1.3 (read)",
        ),
        Cause.WIND: ("strap the lids, and harden longer before planting", COMMON_PRACTICE),
        Cause.WRONG_LABEL: ("write the label in pencil before you sow", COMMON_PRACTICE),
        Cause.OLD_SEED: ("test the packet before sowing, or buy fresh seed", COMMON_PRACTICE),
        Cause.FORGOTTEN: ("walk every place once a week, tick what stands there", COMMON_PRACTICE),
        Cause.DISEASE: (
            "more air between plants, clean pots, and no leaves wet overnight",
            COMMON_PRACTICE,
        ),
    }
)
"""By cause: what to do, and its source. An unknown cause teaches nothing."""
