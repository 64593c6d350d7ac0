"""Crops that flower at their own time of the year: no sowing day moves it, only the year is chosen.

Biennials and perennials are sown in one year and flower, after a winter, in the next.
"""

from __future__ import annotations

from datetime import date, timedelta

from benchround.core.crop.crop import Crop, PlantClass, Raising, SowingWindow
from benchround.core.dates import Span
from benchround.core.errors import InputError
from benchround.core.planning.nouns import Goal, PlanStep, SowPlan
from benchround.core.planning.season import (
    nearest,
    occurrences,
    out_of_winter,
    say,
    sowing_for,
    span_words,
    winters_between,
)
from benchround.core.site import Site

YEARS_AHEAD = timedelta(days=4 * 366)


def own_time_plan(crop: Crop, wanted: date, site: Site, today: date | None) -> SowPlan:
    """The plan for a day in flower: its sowing window a winter before, or why there is none.

    Raises:
        InputError: the crop has no flowering or sowing window that comes at this site.
    """
    window = crop.flowering.window if crop.flowering is not None else None
    flowering = nearest(site, window, wanted) if window is not None else None
    if window is None or flowering is None:
        raise InputError(f"{crop.name} never flowers at this site by its own rules.")
    source = crop.source("flowering.window")
    if wanted not in flowering:
        kind = "is a biennial and flowers" if crop.plant_class is PlantClass.BIENNIAL else "flowers"
        reason = (
            f"{crop.name} {kind} at its own time of the year, here {span_words(flowering)}: "
            f"no sowing brings it into flower on {say(wanted)}"
        )
        return SowPlan(Goal.FLOWERING, wanted, False, reason, source=source)
    named = sowing_for(crop, site, flowering)
    if named is None:
        raise InputError(f"{crop.name} has no sowing window before its flowering: give it one.")
    name, sowing = named
    verb = "planted" if crop.raising is Raising.BULB else "sown"
    named_so = "" if verb == "planted" else f" {name}"
    winters = winters_between(site, sowing.opens, flowering.opens)
    after = "a winter" if winters <= 1 else f"{winters} winters"
    reason = f"{verb}{named_so}, {span_words(sowing)}, it flowers after {after}"
    first = sowing.opens if today is None else min(max(sowing.opens, today), sowing.closes)
    if today is not None and sowing.closes < today:
        first = sowing.opens
    plan = SowPlan(
        goal=Goal.FLOWERING,
        wanted=wanted,
        possible=True,
        reason=reason,
        sow_from=first,
        sow_best=first,
        sow_by=sowing.closes,
        ready_from=flowering.opens,
        ready_by=flowering.closes,
        steps=_steps(crop, site, Span(first, sowing.closes), flowering),
        source="; ".join(dict.fromkeys((crop.source("windows"), source))),
    )
    if today is None or sowing.closes >= today:
        return plan
    return _called_off(plan, crop, site, window, today)


def _called_off(
    plan: SowPlan, crop: Crop, site: Site, window: SowingWindow, today: date
) -> SowPlan:
    earliest = None
    for span in occurrences(site, window, today, today + YEARS_AHEAD):
        named = sowing_for(crop, site, span)
        if named is not None and named[1].closes >= today:
            earliest = span.opens
            break
    then = f"earliest is {say(earliest)}" if earliest else "no later year fits either"
    by = say(plan.sow_by) if plan.sow_by else "then"
    return SowPlan(
        goal=plan.goal,
        wanted=plan.wanted,
        possible=False,
        reason=f"not possible any more, {then}; it had to be sown by {by}",
        sow_from=plan.sow_from,
        sow_best=plan.sow_best,
        sow_by=plan.sow_by,
        ready_from=plan.ready_from,
        ready_by=plan.ready_by,
        earliest=earliest,
        steps=plan.steps,
        source=plan.source,
    )


def _steps(crop: Crop, site: Site, sowing: Span, flowering: Span) -> tuple[PlanStep, ...]:
    bulb = crop.raising is Raising.BULB
    steps = [PlanStep("plant" if bulb else "sow", sowing.opens, sowing.closes)]
    planting = None if bulb else crop.planting.window
    if planting is not None:
        spans = list(occurrences(site, planting, sowing.opens, flowering.opens))
        if spans:
            steps.append(PlanStep("plant out", spans[-1].opens, spans[-1].closes))
    elif crop.planting.from_sowing_days is not None:
        first, last = (sowing.opens + timedelta(days=n) for n in crop.planting.from_sowing_days)
        out = out_of_winter(site, Span(first, last))
        first, last = (min(day, flowering.opens) for day in (out.opens, out.closes))
        steps.append(PlanStep("plant out", first, last))
    return (*steps, PlanStep(str(Goal.FLOWERING), flowering.opens, flowering.closes))
