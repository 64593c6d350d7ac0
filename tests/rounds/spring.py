"""A spring in the south of England with the shipped crops, for tests of weeks without a helper."""

from __future__ import annotations

from datetime import date

from benchround.core.record import Figure, Kind
from benchround.core.season import Season
from benchround.crops.library import load_library
from tests.folding import fold_season
from tests.rounds.small_season import Story, place

SOUTH: dict[str, Figure] = {
    "lat_deg": 51.2,
    "lon_deg": -0.9,
    "altitude_m": 80,
    "timezone": "Europe/London",
    "last_frost": "05-05",
    "last_frost_safe": "05-25",
    "first_frost": "10-20",
}
SILL: dict[str, Figure] = {"name": "Kitchen windowsill", "kind": "windowsill"}
HOUSE: dict[str, Figure] = {"name": "Greenhouse", "kind": "greenhouse bench"}


class Spring(Story):
    """Records of a first spring, with the crops every grower starts with."""

    def __init__(self) -> None:
        super().__init__()
        self.tell(date(2026, 1, 1), Kind.SITE, **SOUTH)
        place(self, "sill", **SILL)
        place(self, "house", **{**HOUSE, "order": 2})

    def season(self) -> Season:
        return fold_season(self.records, load_library())
