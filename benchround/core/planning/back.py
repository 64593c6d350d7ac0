"""Counting back from the days a goal is reached to the days to sow."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, timedelta

from benchround.core.crop.crop import Raising
from benchround.core.dates import Span
from benchround.core.planning.course import LONGEST_WAIT_DAYS, Course, Days, steps_after_up
from benchround.core.planning.nouns import Goal, PlanStep, SowPlan
from benchround.core.planning.season import (
    after_frost,
    frost_before,
    frost_between,
    frost_remark,
    last_sowing_remark,
    planting_remark,
    say,
    usual_days,
    window_remark,
    winter_remark,
)
from benchround.core.seed.emergence import why_none
from benchround.core.site import Site

A_YEAR = timedelta(days=366)


class CountedBack:
    """Counting back from a span of target days to the days to sow.

    Args:
        course: days from sowing to the target.
        goal: what is wanted.
        wanted: the day it is wanted.
        site: frost dates and usual year.
        today: the day of asking, if days that are over matter.
    """

    def __init__(
        self, course: Course, goal: Goal, wanted: date, site: Site, today: date | None
    ) -> None:
        self.course = course
        self.crop = course.crop
        self.goal = goal
        self.wanted = wanted
        self.site = site
        self.today = today

    def plan(self, target: Span, reward: tuple[int, int]) -> SowPlan:
        """The plan for plants that stand ready within `target`, `reward` days before the goal."""
        sowable = self._sowable(target)
        if not sowable:
            reason = f"not possible {self.course.raised.words}: {self._too_cold()}"
            return SowPlan(self.goal, self.wanted, False, reason, source=self.course.source)
        middle = target.opens + timedelta(days=(target.closes - target.opens).days // 2)
        ahead = [day for day in sowable if self.today is None or day >= self.today]
        usual = usual_days(self.crop, self.site, ahead or sowable)
        best = min(
            usual or ahead or sowable,
            key=lambda s: (abs((s + timedelta(days=sowable[s].usual) - middle).days), s),
        )
        window = Span(min(ahead or sowable), max(sowable))
        frost = self._frost(best, sowable[best].least, reward[0])
        if frost is not None:
            return self.frosted(frost, reward)
        plan = SowPlan(
            goal=self.goal,
            wanted=self.wanted,
            possible=True,
            reason=self._reason(sowable[best], reward),
            sow_from=window.opens,
            sow_best=best,
            sow_by=window.closes,
            ready_from=self._ready(best, sowable[best].least, reward[0]),
            ready_by=self._ready(best, sowable[best].most, reward[1]),
            remarks=self._remarks(window, target, usual),
            steps=self._steps(best, sowable[best], reward),
            source=self._source(),
        )
        return self._still(plan, reward)

    def _sowable(self, target: Span) -> dict[date, Days]:
        most = (
            self.course.span[1]
            if self.course.span is not None
            else sum(days for _, days in steps_after_up(self.crop))
        )
        furthest = (target.closes - target.opens).days + most + LONGEST_WAIT_DAYS
        found: dict[date, Days] = {}
        for back in range(furthest + 1):
            sown = target.closes - timedelta(days=back)
            days = self.course.days(sown)
            if days is None:
                continue
            first, last = sown + timedelta(days=days.least), sown + timedelta(days=days.most)
            if first <= target.closes and last >= target.opens:
                found[sown] = days
        return found

    def _frost(self, sown: date, least: int, reward: int) -> date | None:
        """The autumn frost that ends a tender sowing before its goal; None where none does."""
        if self.goal is Goal.PLANTING:
            return frost_before(self.crop, self.site, self.wanted)
        drilled = self.crop.raising is Raising.DRILL or reward == 0
        planted = sown if drilled else self._ready(sown, least, 0)
        return frost_between(self.crop, self.site, planted, self._ready(sown, least, reward))

    def frosted(self, frost: date, reward: tuple[int, int]) -> SowPlan:
        """The plan of a tender crop that the first frost ends before the day wanted."""
        asked = self.today or self.wanted - A_YEAR
        earliest = self._earliest(asked, reward, self.wanted)
        then = f"; after that the earliest is {say(earliest)}" if earliest else ""
        before = self._earliest(asked, reward, asked)
        if before is not None and before < frost and self.goal is not Goal.PLANTING:
            then += f"; before it, {self.goal} is possible from {say(before)}"
        reason = (
            f"not possible: {self.crop.name} dies of the site's first frost, {say(frost)}{then}"
        )
        return SowPlan(
            self.goal, self.wanted, False, reason, earliest=earliest, source=self.course.source
        )

    def frost_on_the_way(self, planted: date) -> date | None:
        """The autumn frost that ends a tender crop planted in time; None where none does."""
        before = frost_before(self.crop, self.site, planted)
        return before or frost_between(self.crop, self.site, planted, self.wanted)

    def _ready(self, sown: date, days: int, reward: int) -> date:
        ready = sown + timedelta(days=days)
        if self.goal is not Goal.PLANTING:
            ready = after_frost(self.crop, self.site, ready)
        return ready + timedelta(days=reward)

    def _still(self, plan: SowPlan, reward: tuple[int, int]) -> SowPlan:
        """The plan itself, or the same one called off where its days to sow are over."""
        if self.today is None or plan.sow_by is None or plan.sow_by >= self.today:
            return plan
        earliest = self._earliest(self.today, reward, self.today)
        then = (
            f"earliest is {say(earliest)}" if earliest else "nothing comes of it within two years"
        )
        reason = f"not possible any more, {then}; it had to be sown by {say(plan.sow_by)}"
        return replace(plan, possible=False, earliest=earliest, reason=reason)

    def _earliest(self, today: date, reward: tuple[int, int], since: date) -> date | None:
        """The first day from `since` on that a sowing of today or later reaches the goal."""
        for ahead in range((since - today).days + 2 * A_YEAR.days):
            sown = today + timedelta(days=ahead)
            days = self.course.days(sown)
            if days is None:
                continue
            ready = self._ready(sown, days.least, reward[0])
            if self.goal is Goal.PLANTING:
                if frost_before(self.crop, self.site, ready) is not None:
                    ready = after_frost(self.crop, self.site, ready)
            elif self._frost(sown, days.least, reward[0]) is not None:
                continue
            if ready >= since:
                return ready
        return None

    def _too_cold(self) -> str:
        model, mean_c = self.course.model, self.course.raised.mean_c
        if model is None or mean_c is None:
            return "no sowing day leads there"
        why = why_none(model, mean_c(self.wanted))
        return why or f"it does not come up within {LONGEST_WAIT_DAYS} days"

    def _reason(self, days: Days, reward: tuple[int, int]) -> str:
        words = f"{days.least} to {days.most} days from sowing"
        if self.goal is Goal.PLANTING or reward == (0, 0):
            return f"{words} {self.course.raised.words}"
        return (
            f"{words} to planting out {self.course.raised.words}, then {reward[0]} to "
            f"{reward[1]} days"
        )

    def _source(self) -> str:
        if self.goal is Goal.PLANTING:
            return self.course.source
        section = "flowering" if self.goal is Goal.FLOWERING else "cropping"
        more = self.crop.source(f"{section}.from_planting_days")
        return "; ".join(dict.fromkeys((self.course.source, more)))

    def _remarks(self, window: Span, target: Span, usual: Sequence[date]) -> tuple[str, ...]:
        said = [
            window_remark(self.crop, self.site, window, usual),
            last_sowing_remark(self.crop, self.site, window.opens, window.closes),
            planting_remark(self.crop, self.site, target.closes)
            if self.goal is Goal.PLANTING
            else "",
            winter_remark(self.crop, self.site, target.closes)
            if self.goal is Goal.PLANTING and self.crop.raising is not Raising.DRILL
            else "",
            frost_remark(self.crop, self.site, target.closes)
            if self.crop.raising is not Raising.DRILL
            else "",
        ]
        return tuple(words for words in said if words)

    def _steps(self, sown: date, days: Days, reward: tuple[int, int]) -> tuple[PlanStep, ...]:
        steps = [PlanStep("sow", sown)]
        up = self.course.days_up(sown)
        if up is not None:
            steps.append(PlanStep("first up", sown + timedelta(days=round(up))))
        grown = sown + timedelta(days=days.usual)
        if self.crop.raising is Raising.DRILL:
            return (*steps, PlanStep(str(self.goal), grown))
        straight = self.goal is not Goal.PLANTING and reward == (0, 0)
        if straight and self.crop.planting.from_sowing_days is not None:
            grown = min(grown, sown + timedelta(days=self._planted(sown)))
        ready = after_frost(self.crop, self.site, grown)
        hardening = self.crop.hardening
        out = ready - timedelta(days=hardening.days if hardening else 0)
        on = steps[-1].day
        for name, wait in steps_after_up(self.crop):
            on += timedelta(days=wait)
            if name in ("start hardening", "plant out"):
                break
            if up is not None and on <= out:
                steps.append(PlanStep(name, on))
        if hardening is not None:
            steps.append(PlanStep("start hardening", out))
        steps.append(PlanStep("plant out", ready))
        if straight:
            first, last = (sown + timedelta(days=n) for n in (days.least, days.most))
            steps.append(PlanStep(str(self.goal), max(first, ready), max(last, ready)))
        elif reward != (0, 0):
            first, last = (ready + timedelta(days=n) for n in reward)
            steps.append(PlanStep(str(self.goal), first, last))
        return tuple(steps)

    def _planted(self, sown: date) -> int:
        """Days from a sowing to planting out, for a goal counted from the sowing itself."""
        span = self.crop.planting.from_sowing_days
        days = Course(self.crop, self.course.raised, span, "").days(sown)
        return days.usual if days is not None else 0
