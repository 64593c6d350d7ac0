"""`benchround reckon water`: what a tray loses in a day like this, and how long it lasts."""

from __future__ import annotations

import argparse

from benchround.core.containers import container
from benchround.core.numbers.ranges import within
from benchround.core.sky.evapotranspiration import EtDay, EtSite, reference_et
from benchround.core.water.balance import (
    ALLOWED_SHARE,
    TRAY_KC,
    Compost,
    RootStage,
    daily_loss_ml,
    days_left,
    tray_water,
    weight_share_to_water_at,
)
from benchround.core.water.fit import loss_factor_from_weights
from benchround.core.water.place import EXPOSURE_LOSS, Exposure, place_loss_mm
from benchround.reckoning.answer import Answer, rounded
from benchround.reckoning.figures import day, number, pair, share, within_sky

HELP = "a tray's loss in a day and the days until it wants water"
EXAMPLE = (
    "benchround reckon water --container '40-cell tray' --tmin 8 --tmax 20 --lat 52 --on 2026-05-15"
)
BALANCE = "easily available water over Kc ET0 A, FAO-56 single crop coefficient with Kc 1.0"


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    parser.add_argument("--container", required=True, metavar="NAME", help="as '40-cell tray'")
    parser.add_argument("--tmin", type=number, required=True, metavar="C", help="lowest of the day")
    parser.add_argument("--tmax", type=number, required=True, metavar="C", help="highest")
    parser.add_argument("--lat", type=number, required=True, metavar="L", help="south negative")
    parser.add_argument("--on", type=day, required=True, metavar="DATE", help="as 2026-05-27")
    parser.add_argument(
        "--exposure",
        choices=[str(exposure) for exposure in Exposure],
        default=str(Exposure.OPEN),
        metavar="WORDS",
        help="; ".join(str(exposure) for exposure in Exposure),
    )
    parser.add_argument(
        "--sun-share", type=share, metavar="S", help="1 clear, 0.5 part cloud, 0 to 0.1 overcast"
    )
    parser.add_argument(
        "--compost",
        choices=[str(compost) for compost in Compost],
        default=str(Compost.PEAT_FREE),
        help="what fills it (peat-free)",
    )
    parser.add_argument(
        "--roots",
        choices=[str(stage) for stage in RootStage],
        default=str(RootStage.SEEDLING),
        metavar="WORDS",
        help="; ".join(str(stage) for stage in RootStage),
    )
    parser.add_argument("--altitude", type=number, default=0.0, metavar="M", help="metres (0)")
    parser.add_argument(
        "--weighed", type=pair, metavar="WET,LATER", help="g when full, and g a day later"
    )


def _measured(given: argparse.Namespace, et0_mm: float, area_m2: float) -> float | None:
    """How much of the open air's loss two weighings show; None without them."""
    if given.weighed is None:
        return None
    wet_g, later_g = given.weighed
    return loss_factor_from_weights(wet_g, later_g, et0_mm, area_m2)


def reckon(given: argparse.Namespace) -> Answer:
    """The day's loss of a full tray, and days until its allowed water is gone."""
    within_sky(given.lat)
    tray = container(given.container)
    water = tray_water(tray, Compost(given.compost))
    within("the altitude", given.altitude, -500.0, 6000.0, "m")
    if given.sun_share is not None:
        within("the share of sun", given.sun_share, 0.0, 1.0, "")
    estimate = reference_et(
        EtSite(given.lat, given.altitude),
        EtDay(given.on.timetuple().tm_yday, given.tmin, given.tmax, given.sun_share),
    )
    exposure, roots = Exposure(given.exposure), RootStage(given.roots)
    loss_mm = place_loss_mm(estimate.mm, exposure)
    loss_ml = daily_loss_ml(loss_mm, TRAY_KC, water.area_m2)
    left = days_left(water, loss_ml, ALLOWED_SHARE[roots])
    at_weight = weight_share_to_water_at(water, ALLOWED_SHARE[roots])
    measured = _measured(given, estimate.mm, water.area_m2)
    until_wilting = days_left(water, loss_ml)
    stand_ins = [str(word) for word in estimate.stand_ins]
    source = f"{estimate.method}; {BALANCE}; exposure: {EXPOSURE_LOSS[exposure].source}"
    lasts = "no day can be named: it loses nothing" if left is None else f"{left:.1f} days"
    return Answer(
        value={
            "container": tray.name,
            "days_left": rounded(left, 2),
            "days_until_wilting": rounded(until_wilting, 2),
            "loss_ml": rounded(loss_ml, 1),
            "loss_mm": rounded(loss_mm, 3),
            "et0_mm": rounded(estimate.mm, 3),
            "method": str(estimate.method),
            "stand_ins": list(stand_ins),
            "water_at_weight_share": rounded(at_weight, 4),
            "own_factor": rounded(measured, 4),
            "capacity_ml": rounded(water.capacity_ml, 1),
            "allowed_share": ALLOWED_SHARE[roots],
            "exposure": str(exposure),
            "source": source,
        },
        lines=(
            f"{tray.name}, full, {exposure}: {lasts} until it wants water",
            f"  loses {loss_ml:.0f} ml a day ({loss_mm:.1f} mm); the open air takes "
            f"{estimate.mm:.1f} mm",
            f"  holds {water.capacity_ml:.0f} ml easily, "
            f"of which {ALLOWED_SHARE[roots]:.0%} may go ({roots})",
            f"  by weight: water it once it weighs {at_weight:.0%} of what it weighs full "
            "(Dumroese et al. 2015, weights estimated)",
            *(
                (f"  your weighings show {measured:.2f} times what the open air takes",)
                if measured is not None
                else ()
            ),
            f"  formulas: {source}",
            *((f"  taken for granted: {', '.join(stand_ins)}",) if stand_ins else ()),
        ),
    )
