"""What each day does to a tray where it stands: exposure, evaporation, rain, lids as noted."""

from __future__ import annotations

from datetime import date
from functools import lru_cache

from benchround.core.by_identity import Same
from benchround.core.frame.build import LidPosition
from benchround.core.frame.place import lid_plan_of
from benchround.core.place_log import PlaceLog, place_log_of
from benchround.core.season import Season
from benchround.core.site import Place, PlaceKind
from benchround.core.sky.known_day import KnownDay, known_day
from benchround.core.sky.simple_evaporation import hargreaves_fao52_mm
from benchround.core.sky.sun import extraterrestrial_mj
from benchround.core.water.place import Exposure
from benchround.core.water.run import WaterDay

LID_OFF_FROM_C = 20.0
"""On a day this warm a glazed frame stands open by day and dries like the open air; ours."""
DRYING_HOURS = range(8, 18)


class _Spot(Same):
    """A place with its records under the sky; each is replaced when a record changes it."""

    def __init__(self, season: Season, place: str) -> None:
        self.weather, self.site = season.weather, season.site
        self.place, self.log = season.place(place), place_log_of(season, place)
        super().__init__(self.weather, self.site, self.place, self.log)


def water_day(
    season: Season,
    place: str,
    day: date,
    *,
    rain_counts: bool,
    factor: float = 1.0,
    domed: bool = False,
    cover: float = 1.0,
) -> tuple[WaterDay, KnownDay]:
    """What one day does to a tray at a place, and the weather that says so.

    Args:
        season: weather, site, and the place with its records.
        place: code of the place; one that is not known is taken as the open air without rain.
        day: the day.
        rain_counts: whether rain is reckoned with; rain that is only forecast is not.
        factor: how fast the place dries against the model.
        domed: whether a dome, film or pane lies over the tray itself.
        cover: the surface that dries in surfaces of the tray.
    """
    kept, key = season.trays.days, (place, day, rain_counts, factor, domed, cover)
    found = kept.get(key)
    if found is None:
        spot = _Spot(season, place)
        found = kept[key] = _water_day(spot, day, rain_counts, factor, domed, cover)
    return found


@lru_cache(maxsize=4096)
def _water_day(
    spot: _Spot, day: date, rain_counts: bool, factor: float, domed: bool, cover: float
) -> tuple[WaterDay, KnownDay]:
    known = known_day(spot.weather, spot.site, day)
    found = (Exposure.SHUT, False) if domed else exposure_on(spot.place, spot.log, known)
    exposure, reached = found
    number = day.timetuple().tm_yday
    water = WaterDay(
        et0_mm=et0_mm(spot.site.lat_deg, number, known.min_c, known.max_c),
        exposure=exposure,
        rain_mm=known.rain_mm or 0.0 if rain_counts and reached else 0.0,
        lid_off=reached,
        place_factor=factor,
        cover=cover,
    )
    return water, known


@lru_cache(maxsize=4096)
def et0_mm(lat_deg: float, day_of_year: int, min_c: float, max_c: float) -> float:
    """Evapotranspiration of the open air in a day, mm: Hargreaves-Samani, FAO-56 eq. 52.

    Latitude is held to -90 to 90; the day's lowest and highest in degC.
    """
    above = extraterrestrial_mj(max(-90.0, min(90.0, lat_deg)), day_of_year)
    return min(20.0, hargreaves_fao52_mm(min_c, max_c, above))


def exposure_on(place: Place | None, log: PlaceLog, known: KnownDay) -> tuple[Exposure, bool]:
    """What stands between a tray and the weather on a day, and whether rain reaches it."""
    if place is None:
        return Exposure.OPEN, False
    match place.kind:
        case PlaceKind.PROPAGATOR | PlaceKind.WINDOWSILL:
            return Exposure.INDOORS, False
        case PlaceKind.GREENHOUSE | PlaceKind.TUNNEL:
            return Exposure.UNDER_GLASS, False
        case PlaceKind.FRIDGE:
            return Exposure.SHUT, False
        case PlaceKind.FRAME if place.glazing == "slats":
            return Exposure.SHADED, True
        case PlaceKind.FRAME:
            return _in_frame(place, log, known)
        case _:
            return _open_air(place), True


def _open_air(place: Place) -> Exposure:
    return Exposure.SHADED if place.shaded else Exposure.OPEN


def _in_frame(place: Place, log: PlaceLog, known: KnownDay) -> tuple[Exposure, bool]:
    """A glazed frame by its lid records; without any, cracked, and open on a warm day."""
    plan = lid_plan_of(log, known.day)
    if plan is None:
        return (_open_air(place) if known.max_c >= LID_OFF_FROM_C else Exposure.CRACKED), False
    by_day = [plan[hour] for hour in DRYING_HOURS]
    if 2 * by_day.count(LidPosition.OFF) >= len(by_day):
        return _open_air(place), True
    if all(position is LidPosition.SHUT for position in by_day):
        return Exposure.SHUT, False
    return Exposure.CRACKED, False
