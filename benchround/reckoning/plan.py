"""`benchround reckon plan`: when to sow, and how much, for plants wanted on a day."""

from __future__ import annotations

import argparse
from datetime import date

from benchround.core.caution.due import CAUTIONS, poison_cautions
from benchround.core.crop.crop import Crop, Raising
from benchround.core.numbers.ranges import require_air_temp
from benchround.core.planning.plan import (
    AS_GIVEN,
    Goal,
    RaisedAt,
    SowPlan,
    cells_for,
    sow_plan,
    steady,
    usual_in,
)
from benchround.core.record import Figure, Kind, Record
from benchround.core.seed.quantity import WANTED_CHANCE, Quantity
from benchround.core.site import PlaceKind, Site, site_from
from benchround.plain import JsonValue
from benchround.reckoning.answer import Answer, iso, rounded
from benchround.reckoning.crop_named import crop_named
from benchround.reckoning.figures import count, day, month_day, number, pair, share, within_sky
from benchround.reckoning.in_turn import again_arguments, again_lines, again_value, sown_again
from benchround.reckoning.tray_room import tray_arguments, tray_room

HELP = "when to sow and how many cells, for plants or flowers on a day"
EXAMPLE = (
    "benchround reckon plan snapdragon --want 24 --by 2027-05-15 --site 42,-93.6 "
    "--last-frost 05-10 --today 2027-01-01"
)
FORMULA = (
    "days counted back from the wanted day, rule of Iowa State University Extension (read); cells "
    "by the exact binomial sum"
)


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    parser.add_argument("crop", metavar="CROP", help="key, name or synonym")
    parser.add_argument("--want", type=count, required=True, metavar="N", help="plants wanted")
    parser.add_argument("--by", type=day, required=True, metavar="DATE", help="the day wanted")
    goal = parser.add_mutually_exclusive_group()
    goal.add_argument("--flower", action="store_true", help="the day is one in flower")
    goal.add_argument("--pick", action="store_true", help="the day is the first picking")
    parser.add_argument(
        "--site", type=pair, required=True, metavar="LAT,LON", help="as 52.5,-1; south negative"
    )
    parser.add_argument("--last-frost", type=month_day, metavar="MM-DD", help="half the years")
    parser.add_argument("--safe-frost", type=month_day, metavar="MM-DD", help="nine in ten years")
    parser.add_argument("--first-frost", type=month_day, metavar="MM-DD", help="in autumn")
    warm = parser.add_mutually_exclusive_group()
    warm.add_argument("--temp", type=number, metavar="C", help="trays stand at this temperature")
    warm.add_argument(
        "--place",
        choices=[str(kind) for kind in PlaceKind],
        metavar="KIND",
        help="trays stand there: " + ", ".join(str(kind) for kind in PlaceKind),
    )
    parser.add_argument("--germination", type=share, metavar="G", help="instead of the crop's")
    parser.add_argument("--tested", type=number, metavar="N", help="seeds that share rests on")
    parser.add_argument(
        "--survival", type=share, action="append", metavar="S", help="share kept; may be repeated"
    )
    parser.add_argument("--chance", type=share, default=WANTED_CHANCE, metavar="P", help="(0.9)")
    again_arguments(parser)
    parser.add_argument(
        "--today", type=day, default=None, metavar="DATE", help="the day of asking (today)"
    )
    tray_arguments(parser)


def reckon(given: argparse.Namespace) -> Answer:
    """Days to sow, cells and seeds, days ready; the reason where it cannot be."""
    crop = crop_named(given.crop)
    goal = Goal.FLOWERING if given.flower else Goal.PICKING if given.pick else Goal.PLANTING
    site = _site(given)
    today = given.today or date.today()
    plan = sow_plan(crop, goal, given.by, site, _raised(given, site), today)
    amount = cells_for(
        crop,
        given.want,
        germination=given.germination,
        tested=given.tested,
        survival=given.survival,
        chance=given.chance,
    )
    room = tray_room(given, amount.cells if amount else 0)
    again = sown_again(given, crop, plan, site)
    value: dict[str, JsonValue] = {
        "crop": crop.key,
        "name": crop.name,
        "goal": str(goal),
        "wanted": iso(plan.wanted),
        "possible": plan.possible,
        "sow_from": iso(plan.sow_from),
        "sow_best": iso(plan.sow_best),
        "sow_by": iso(plan.sow_by),
        "ready_from": iso(plan.ready_from),
        "ready_by": iso(plan.ready_by),
        "earliest": iso(plan.earliest),
        "reason": plan.reason,
        "remarks": list(plan.remarks),
        "cautions": [CAUTIONS[name].short for name in poison_cautions(crop)],
        "cells": amount.cells if amount else None,
        "seeds": amount.seeds if amount else None,
        "expected_plants": rounded(amount.expected_plants, 2) if amount else None,
        "chance": rounded(amount.chance, 6) if amount else None,
        "bench_days": plan.bench_days,
        "steps": [
            {"step": step.name, "from": iso(step.day), "to": iso(step.until or step.day)}
            for step in plan.steps
        ],
        "source": plan.source,
        "formula": FORMULA,
        **room.value(),
    }
    value.update(again_value(given, crop, plan, site, again))
    lines = (*_lines(crop, plan, amount), *again_lines(given, crop, plan, site, again))
    taken = room.words()
    return Answer(value, (*lines, *((f"  {taken}",) if taken else ())), site.assumed)


def _site(given: argparse.Namespace) -> Site:
    lat_deg, lon_deg = given.site
    within_sky(lat_deg, lon_deg)
    figures: dict[str, Figure] = {"lat_deg": lat_deg, "lon_deg": lon_deg}
    if given.last_frost is not None:
        figures["last_frost"] = given.last_frost
    if given.safe_frost is not None:
        figures["last_frost_safe"] = given.safe_frost
    if given.first_frost is not None:
        figures["first_frost"] = given.first_frost
    return site_from(Record("", date(2025, 1, 1), Kind.SITE, "", figures))


def _raised(given: argparse.Namespace, site: Site) -> RaisedAt:
    if given.temp is not None:
        return steady(require_air_temp("the temperature", given.temp))
    if given.place is not None:
        return usual_in(PlaceKind(given.place), site)
    return AS_GIVEN


def _lines(crop: Crop, plan: SowPlan, amount: Quantity | None) -> list[str]:
    lines = [f"{crop.name}, {plan.goal} on {plan.wanted.isoformat()}"]
    if plan.sow_from is not None and plan.sow_by is not None and plan.possible:
        verb = "plant" if crop.raising is Raising.BULB else "sow"
        lines.append(
            f"  {verb} {plan.sow_from.isoformat()} to {plan.sow_by.isoformat()}, best "
            f"{iso(plan.sow_best)}; then {_then(plan)}"
        )
    lines.append(f"  {plan.reason}")
    if amount is not None:
        drilled = crop.raising is Raising.DRILL
        said = f"{amount.seeds} seeds"
        said = f"{said} in the drill" if drilled else f"{amount.cells} cells, {said}"
        lines.append(f"  {said}: enough with chance {amount.chance:.0%}")
    if plan.possible:
        lines += [
            f"    {step.day.isoformat()}"
            f"{' to ' + step.until.isoformat() if step.until else ''}: {step.name}"
            for step in plan.steps
        ]
    lines += [f"  mind: {remark}" for remark in plan.remarks]
    lines += [f"  caution: {CAUTIONS[name].short}" for name in poison_cautions(crop)]
    lines += [f"  figures: {plan.source}", f"  formula: {FORMULA}"]
    return lines


def _then(plan: SowPlan) -> str:
    """What comes of it and when; plants that are big enough before frosts end wait for that."""
    ready = f"{iso(plan.ready_from)} to {iso(plan.ready_by)}"
    if plan.goal is not Goal.PLANTING:
        return f"{plan.goal} {ready}"
    out = next((step.day for step in plan.steps if step.name == "plant out"), None)
    if out is None or plan.ready_by is None or out <= plan.ready_by:
        return f"ready to plant out {ready}"
    return f"big enough {ready}, planted out {iso(out)} when frosts are over"
