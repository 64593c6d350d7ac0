"""Sowing again and again for harvests that follow each other: a part of `reckon plan`."""

from __future__ import annotations

import argparse
from datetime import date, timedelta

from benchround.core.crop.crop import Crop
from benchround.core.planning.again import Succession, sow_in_turn
from benchround.core.planning.last_sowing import last_sowing
from benchround.core.planning.nouns import SowPlan
from benchround.core.site import Site
from benchround.plain import JsonValue
from benchround.reckoning.answer import iso, rounded
from benchround.reckoning.figures import count

GROWING_BASE_C = 4.4
"""Base of heat between sowings where the crop has none: 40 F, as for peas (common practice)."""


def again_arguments(parser: argparse.ArgumentParser) -> None:
    """The arguments of sowing again."""
    parser.add_argument(
        "--again", type=count, metavar="DAYS", help="sow again for a harvest so many days later"
    )
    parser.add_argument(
        "--times", type=count, default=2, metavar="K", help="sowings in all, with --again (2)"
    )


def sown_again(
    given: argparse.Namespace, crop: Crop, plan: SowPlan, site: Site
) -> tuple[Succession, ...]:
    """The sowings after the planned one; none where none was asked for."""
    if given.again is None or plan.sow_best is None:
        return ()
    base = crop.germination.base_c if crop.germination is not None else GROWING_BASE_C
    return sow_in_turn(
        plan.sow_best, plan.wanted, given.again, given.times, base, site.usual_mean_c
    )


def _harvest(given: argparse.Namespace, plan: SowPlan, number: int) -> date:
    return plan.wanted + timedelta(days=int(given.again) * number)


def _too_late(crop: Crop, site: Site, one: Succession) -> bool:
    """Whether frost comes before a sowing can pay."""
    sown = one.next_sowing
    last = last_sowing(crop, site.year, sown) if sown is not None else None
    return sown is not None and last is not None and sown > last


def again_value(
    given: argparse.Namespace,
    crop: Crop,
    plan: SowPlan,
    site: Site,
    again: tuple[Succession, ...],
) -> dict[str, JsonValue]:
    """Keys for JSON; none where none was asked for."""
    if not again:
        return {}
    sowings: list[JsonValue] = [
        {
            "sow": iso(one.next_sowing),
            "wanted": iso(_harvest(given, plan, turn)),
            "heat_since_first": rounded(one.heat, 2),
            "too_late": _too_late(crop, site, one),
        }
        for turn, one in enumerate(again, start=1)
    ]
    return {
        "next_sowing": iso(again[0].next_sowing),
        "heat_between": rounded(again[0].heat, 2),
        "sowings": sowings,
        "succession_source": again[0].source,
    }


def again_lines(
    given: argparse.Namespace,
    crop: Crop,
    plan: SowPlan,
    site: Site,
    again: tuple[Succession, ...],
) -> list[str]:
    """The same to read."""
    if not again:
        return []
    lines = []
    for turn, one in enumerate(again, start=1):
        on = iso(one.next_sowing) or "not within a year"
        late = "; too late, frost comes first" if _too_late(crop, site, one) else ""
        wanted = iso(_harvest(given, plan, turn))
        since = "after" if turn == 1 else "after the first"
        lines.append(f"  sow again {on} for {wanted}, {one.heat:.0f} degree-days {since}{late}")
    return [*lines, f"  succession: {again[0].source}"]
