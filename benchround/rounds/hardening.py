"""Harden off step by step, and a step back for a cold night, a gale or noon wilt."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.crop.crop import Hardening, Hardiness, Raising
from benchround.core.dates import number_of_days, say_day
from benchround.core.frame.lid_words import HardeningPlan, LidLimits
from benchround.core.hardening_places import hardens_at
from benchround.core.lifecycle import SEEDLING, YOUNG, Stage
from benchround.core.planning.growing_season import LEAVES_SETTLED, hardening_opens
from benchround.core.record import Kind
from benchround.core.season import Season
from benchround.core.sky.weather import DayWeather
from benchround.core.task import Ask, Family, Harm, Hold, Why, Window
from benchround.core.water.tray_holder import in_its_pot
from benchround.rounds.potting_on import fit_to_pot_on
from benchround.rounds.proposal import Proposal, draft, in_sight, window
from benchround.rounds.thinning import to_be_thinned
from benchround.rounds.uncovering import to_be_uncovered
from benchround.rounds.view import BatchView

STEP_BACK_GUST_KMH = LidLimits().step_back_kmh
START_GRACE_DAYS = 7
FIRST_NIGHTS = 3
"""Nights above the crop's limit wanted ahead before a course begins; our proposal."""
LOOKED_AHEAD_DAYS = 10
THIRD = 3
STAGES = (HardeningPlan.HALF_OPEN, HardeningPlan.FULLY_OPEN, HardeningPlan.NIGHT_OPEN)
"""The thirds of a course, in order."""
LID_WORDS = {
    HardeningPlan.HALF_OPEN: "half open by day when sunny, shut at night",
    HardeningPlan.FULLY_OPEN: "fully open by day, shut at night",
    HardeningPlan.NIGHT_OPEN: "fully open day and night",
}
"""What a third of the course means for lids."""
OUT_WORDS = {
    HardeningPlan.HALF_OPEN: "outside by day in shade and shelter, in at night",
    HardeningPlan.FULLY_OPEN: "outside by day, in at night",
    HardeningPlan.NIGHT_OPEN: "outside day and night",
}
"""The same where it stands under no lid; common practice, no source."""
SOURCE = "Which? Gardening, trial of hardening-off methods (6 + 6 + 6 days)"
HARDY_SOURCE = "common practice, no source (3 to 7 days); range 3-21 days UC Santa Cruz unit 1.4"


def propose(view: BatchView) -> Iterator[Proposal]:
    """The day hardening begins, and every day's step until it is done."""
    course = view.crop.hardening
    if course is None or view.is_spare:
        return
    if view.stage is Stage.HARDENING:
        yield from _step(view, course)
    else:
        yield from _start(view, course)


def course_day(view: BatchView) -> int | None:
    """Which day of hardening today is, counted from 1; None before it has begun.

    A day that was stepped back is repeated, so it does not count.
    """
    begun = hardening_begun(view)
    return None if begun is None else (view.day - begun).days + 1 - days_repeated(view)


def day_of_course(view: BatchView, number: int) -> date:
    """The day on which a day of the course, counted from 1, falls or fell."""
    begun = hardening_begun(view) or view.part.since
    return begun + timedelta(days=number - 1 + days_repeated(view))


def steps_back_today(view: BatchView) -> str:
    """Why a course that is not over yet goes a step back today; empty where it does not."""
    course, number = view.crop.hardening, course_day(view)
    if view.stage is not Stage.HARDENING or course is None or number is None:
        return ""
    return step_back_because(view, course) if number <= course.days else ""


def days_repeated(view: BatchView) -> int:
    """Days of the course that were stepped back, as recorded."""
    begun, last = hardening_begun(view), view.since(Kind.HARDENING_STEP)
    if begun is None or last is None or last < begun:
        return 0
    days: set[date] = set()
    for record in reversed(view.batch.records):
        if record.day < begun:
            break
        back = record.figures and record.kind is Kind.HARDENING_STEP and record.flag("back")
        if back and record.text("part") == view.part.name and record.day < view.day:
            days.add(record.day)
    return len(days)


def hardening_begun(view: BatchView) -> date | None:
    """The day hardening began."""
    return view.since(Kind.HARDENING_BEGUN)


def stage_of_course(course: Hardening, number: int) -> HardeningPlan:
    """What a day of the course means for lids: it is gone through in three equal parts."""
    third = course.days / THIRD
    return STAGES[(number > third) + (number > 2 * third)]


def step_back_because(view: BatchView, course: Hardening) -> str:
    """Why today's step goes back, or empty where it need not."""
    weather = view.season.weather
    today, tomorrow = weather.on(view.day), weather.on(view.day + timedelta(days=1))
    limit = course.limit_c
    for known in (today, tomorrow):
        if known is not None and known.min_c is not None and known.min_c <= limit:
            return f"{known.min_c:g} C on {say_day(known.day)}, at or below {limit:g} C"
    if today is not None and today.gust_kmh is not None and today.gust_kmh > STEP_BACK_GUST_KMH:
        return f"gusts of {today.gust_kmh:g} km/h"
    wilted = view.part.last.get(Kind.HARDENING_STEP)
    yesterday = view.day - timedelta(days=1)
    if wilted is not None and wilted.day == yesterday and wilted.flag("wilted"):
        return "wilted at noon yesterday"
    return ""


def stage_today(view: BatchView) -> HardeningPlan | None:
    """How far open a hardening batch wants the lid today, a step back taken; None for others."""
    course, number = view.crop.hardening, course_day(view)
    if view.stage is not Stage.HARDENING or course is None or number is None:
        return None
    stage = stage_of_course(course, number)
    if not step_back_because(view, course):
        return stage
    if stage is HardeningPlan.NIGHT_OPEN:
        return HardeningPlan.FULLY_OPEN
    return stage_of_course(course, max(1, number - 1))


def lid_follows(view: BatchView) -> tuple[str, ...]:
    """The batches under the same lid that are hardened less, so that the lid is theirs."""
    own = stage_today(view)
    if own is None or view.place is None or not view.place.lidded:
        return ()
    least, names = _least_open(view.season, view.place.code, view.day)
    return names if least < STAGES.index(own) else ()


def _least_open(season: Season, code: str, day: date) -> tuple[int, tuple[str, ...]]:
    """How far the least hardened under one lid want it today, of `STAGES`, and which they are."""
    found = season.lids_found.get((code, day))
    if found is None:
        beside = (
            BatchView(season, batch, part, season.crop(batch.crop), day)
            for batch in season.standing_at(code)
            for part in batch.parts
            if part.place == code and part.stage is Stage.HARDENING
        )
        wanted = [
            (STAGES.index(stage), one.batch.id)
            for one in beside
            if (stage := stage_today(one)) is not None
        ]
        least = min((level for level, _ in wanted), default=len(STAGES))
        found = least, tuple(sorted({name for level, name in wanted if level == least}))
        season.lids_found[code, day] = found
    return found


def _step(view: BatchView, course: Hardening) -> Iterator[Proposal]:
    number = course_day(view)
    if number is None or number > course.days or view.did_today(Kind.HARDENING_STEP):
        return
    if view.did_today(Kind.HARDENING_BEGUN):
        return
    back = step_back_because(view, course)
    stage = stage_of_course(course, number)
    lidded = view.place is not None and view.place.lidded
    words = _step_words(stage, lidded=lidded)
    if back and stage is HardeningPlan.NIGHT_OPEN:
        night = "open by day, shut tonight" if lidded else "outside by day, in tonight"
        words = f"STEP BACK: {night}; repeat the day"
    elif back:
        gentler = _step_words(stage_today(view) or stage, lidded=lidded)
        words = f"STEP BACK: {gentler}, sheltered; repeat the day"
    begun = hardening_begun(view) or view.day
    figures = [f"begun {say_day(begun)}"]
    if back:
        figures.append(back)
    lid_of = ", ".join(lid_follows(view))
    if lid_of:
        words = f"{words}; stand it outside the frame, its lid follows {lid_of}"
        figures.append(f"under one lid the least hardened decides: {lid_of}")
    source = SOURCE if course.days >= 10 else HARDY_SOURCE
    yield Proposal(
        Family.HARDEN,
        Window(begun, view.day, view.day),
        Harm.SPOILS_THIS_WEEK if back else Harm.GETS_LATE,
        f"Hardening day {number} of {course.days}: {words}",
        Why("lids are lifted by thirds of the course", tuple(figures), source),
        (draft(view, Kind.HARDENING_STEP, step=number, back=bool(back)),),
        asks=(Ask("wilted", "wilted at noon", "no", whole=False, choices=("yes", "no")),),
    )


def _step_words(stage: HardeningPlan, *, lidded: bool) -> str:
    return (LID_WORDS if lidded else OUT_WORDS)[stage]


def _start(view: BatchView, course: Hardening) -> Iterator[Proposal]:
    found = start_due(view, course)
    if found is None:
        return
    best, figure = found
    if not in_sight(view, Family.HARDEN, best):
        return
    hold = start_hold(view, course)
    if hold is None:
        best = _after_rough_days(view, course, best)
    yield Proposal(
        Family.HARDEN,
        window(best, grace=START_GRACE_DAYS),
        Harm.GETS_LATE,
        _start_words(view, course, hold),
        Why(
            "hardening begins when the plant has settled and frost and wind allow",
            (figure, *((hold.because,) if hold is not None else ())),
            view.crop.source("hardening"),
        ),
        (draft(view, Kind.HARDENING_BEGUN),),
        asks=(Ask("place", "place", _frame(view), whole=False),),
        hold=hold,
    )


def _start_words(view: BatchView, course: Hardening, hold: Hold | None) -> str:
    if hold is not None:
        again = f"; look again {say_day(hold.look_again)}" if hold.look_again else ""
        return f"Held back, {hold.because}{again}: start hardening {_what_and_where(view)}"
    return (
        f"Start hardening {_what_and_where(view)}: day 1 of {course.days}, "
        f"{_first_step(view, course)}"
    )


def start_hold(view: BatchView, course: Hardening) -> Hold | None:
    """Whether the weather forbids to begin today what would step back at once, and until when.

    What is known of a night is the air outside: a lid half open by day and shut at night keeps
    little of the day's warmth until dawn.
    """
    because = _rough_start(view, course, view.day)
    if not because:
        return None
    days = (view.day + timedelta(days=n) for n in range(1, LOOKED_AHEAD_DAYS + 1))
    return Hold(because, next((on for on in days if not _rough_start(view, course, on)), None))


def _rough_start(view: BatchView, course: Hardening, day: date) -> str:
    """What forbids to begin on a day, with its figures; empty where nothing known does."""
    weather = view.season.weather
    nights = weather.ahead(day, FIRST_NIGHTS)
    cold = [(night.min_c, night.day) for night in nights if _cold(night, course)]
    if cold:
        least, on = min(cold, key=lambda night: night[0] or 0.0)
        wanted = f"{FIRST_NIGHTS} nights above {course.limit_c:g} C are wanted"
        return f"{least:g} C on {say_day(on)}; {wanted}"
    return _gusts(weather.on(day))


def _after_rough_days(view: BatchView, course: Hardening, best: date) -> date:
    """Days the weather forbade are not the grower's: it falls due on the day after the last."""
    weather, day = view.season.weather, view.day - timedelta(days=1)
    while day >= best:
        known = weather.on(day)
        if known is not None and (_cold(known, course) or _gusts(known)):
            return day + timedelta(days=1)
        day -= timedelta(days=1)
    return best


def _cold(known: DayWeather, course: Hardening) -> bool:
    return known.min_c is not None and known.min_c <= course.limit_c


def _gusts(known: DayWeather | None) -> str:
    if known is None or known.gust_kmh is None or known.gust_kmh <= STEP_BACK_GUST_KMH:
        return ""
    return f"gusts of {known.gust_kmh:g} km/h, limit {STEP_BACK_GUST_KMH:g}"


def start_due(view: BatchView, course: Hardening) -> tuple[date, str] | None:
    """The day hardening is due and the figure behind it; None before the plant is ready.

    What is still on heat or under its cover, or shares its cell, has that done first.
    """
    if to_be_uncovered(view) or to_be_thinned(view):
        return None
    ready = _plant_ready(view, course)
    if ready is None:
        return None
    day, figure = ready
    opens = hardening_opens(view.crop, view.season.site.year, view.day)
    if opens is not None and course.starts is not None and opens > day:
        return opens, f"not before {say_day(opens)} ({course.starts.anchor})"
    return day, figure


def _plant_ready(view: BatchView, course: Hardening) -> tuple[date, str] | None:
    growing = view.crop.growing
    potted = view.since(Kind.POTTED_ON)
    if growing.pot_on and potted is None and view.stage in YOUNG:
        return _ready_in_its_pot(view, course)
    if growing.pot_on:
        if potted is None or view.stage is not Stage.POTTED_ON or _to_be_pinched(view):
            return None
        return (
            potted + timedelta(days=course.after_potting_days),
            f"potted on {say_day(potted)}, {number_of_days(course.after_potting_days)} to settle",
        )
    sowing, span = view.batch.sowing, view.crop.planting.from_sowing_days
    outdoors = view.place is not None and view.place.outdoors
    waits = view.crop.planting.window is not None and view.crop.hardiness is Hardiness.HARDY
    if sowing is None or outdoors or view.in_row or span is None or waits:
        return None
    to_be_pricked = view.raising == Raising.TRAY and growing.prick_out
    if view.stage in SEEDLING and to_be_pricked:
        return None
    if view.stage in SEEDLING | YOUNG | {Stage.OVERWINTERING}:
        best = sowing.day + timedelta(days=max(0, span[0] - course.days))
        leaves = _true_leaves(view)
        if leaves is not None:
            best = max(best, leaves + LEAVES_SETTLED)
        pricked = view.since(Kind.PRICKED_OUT)
        if pricked is not None:
            best = max(best, pricked + timedelta(days=course.after_potting_days))
        best = view.season.site.after_rest(best)
        said = f"sown {say_day(sowing.day)}; out {span[0]} days after sowing at the soonest"
        return best, f"{said}; true leaves {say_day(leaves)}" if leaves is not None else said
    return None


def _true_leaves(view: BatchView) -> date | None:
    """The day of first true leaves, seen or reckoned from first up, at whatever stage."""
    seen = view.first(Kind.TRUE_LEAVES)
    if seen is not None or view.first_up is None:
        return seen
    return view.first_up + timedelta(days=view.crop.growing.true_leaf_days)


def _ready_in_its_pot(view: BatchView, course: Hardening) -> tuple[date, str] | None:
    """Pricked out into its last pot it is fit as soon as one potted on would have settled."""
    fit = fit_to_pot_on(view)
    its_own = in_its_pot(view.part, view.crop, view.season.containers)
    if fit is None or not its_own or _to_be_pinched(view):
        return None
    day, figure = fit
    settle = course.after_potting_days
    return day + timedelta(days=settle), f"in its pot; {figure}, {number_of_days(settle)} more"


def _to_be_pinched(view: BatchView) -> bool:
    growing = view.crop.growing
    if view.since(Kind.PINCHED) or growing.pinch_pairs is None:
        return False
    measured = view.part.last.get(Kind.MEASURED)
    pairs = measured.number("pairs") if measured else None
    return pairs is not None and pairs >= growing.pinch_pairs


def _frame(view: BatchView) -> str:
    """Where to harden: where it stands if that will do, else where the season hardens."""
    better = view.season.hardening_place
    found = view.season.place(better)
    stands = view.place
    if stands is not None and hardens_at(stands):
        under_lids = found is not None and found.lidded
        if stands.lidded or not under_lids:
            return stands.code
    return better


def _what_and_where(view: BatchView) -> str:
    """How many, and into which place; no place where they stay put or none will do."""
    what, to = str(view.alive or "the plants"), _frame(view)
    if not to or to == view.part.place:
        return what
    place = view.season.place(to)
    return f"{what}, into {place.name if place is not None else to}"


def _first_step(view: BatchView, course: Hardening) -> str:
    place = view.season.place(_frame(view))
    lidded = place is not None and place.lidded
    return _step_words(stage_of_course(course, 1), lidded=lidded)
