"""What the tests of the screens stand on: a sample season, and tasks made by hand."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, time, timedelta
from pathlib import Path

from benchround.clock import SampleClock
from benchround.core.record import Draft, Figure, Kind, Record
from benchround.core.task import (
    Ask,
    Family,
    Harm,
    Hold,
    Round,
    Slot,
    Standing,
    Task,
    Why,
    Window,
)
from benchround.desk import Desk
from benchround.screens.app import BenchroundApp
from benchround.screens.base import BenchScreen
from benchround.screens.read_first import unread
from benchround.screens.sitting import Sitting
from benchround.screens.widgets.form import Form
from benchround.screens.widgets.status import Status
from benchround.screens.widgets.task_list import TaskList
from benchround.store import SeasonFolder
from tests.sample.story import DAY_0

MACHINE = "shed"
SIZES = ((60, 20), (80, 24), (120, 40))


def write_season(path: Path, records: Sequence[Record]) -> Path:
    """A season folder with these records."""
    folder = SeasonFolder.create(path, "Sample", MACHINE, DAY_0)
    if records:
        folder.append(tuple(records))
    folder.close()
    return path


def app_on(desk: Desk, clock: SampleClock | None = None) -> BenchroundApp:
    """The program over a desk; with a clock it is the sample."""
    return BenchroundApp(desk, Sitting(sample=clock is not None, clock=clock))


def seen(app: BenchroundApp) -> str:
    """What is on the screen, as plain text."""
    strips = app.screen._compositor.render_strips()
    return "\n".join(strip.text.rstrip() for strip in strips) + "\n"


def said(app: BenchroundApp) -> str:
    """What the status line of the screen in front says, in full."""
    return app.screen.query_one(Status).said


def tasks_of(app: BenchroundApp) -> TaskList:
    """The list of tasks of the round in front."""
    return app.screen.query_one(TaskList)


def form_of(app: BenchroundApp) -> Form:
    """The form of the sheet in front."""
    return app.screen.query_one(Form)


def front(app: BenchroundApp) -> str:
    """The name of the screen in front in the list of keys; "page" for a page."""
    screen = app.screen
    assert isinstance(screen, BenchScreen)
    return screen.KEYS_OF


def stand_on(app: BenchroundApp, family: Family, about: str, part: str = "") -> Task:
    """Put the cursor on a task."""
    tasks = tasks_of(app)
    for number, row in enumerate(tasks.rows):
        if isinstance(row, Task) and (row.family, row.about, row.part) == (family, about, part):
            tasks.go(number)
            return row
    raise AssertionError(f"no task '{family}' for '{about}' in this round")


def first_with(app: BenchroundApp, *, asks: bool | None = None, needed: bool = False) -> Task:
    """Put the cursor on the first task of a batch that takes figures, needs them, or neither.

    What waits for a caution to be read is passed over.
    """
    tasks = tasks_of(app)
    for number, row in enumerate(tasks.rows):
        if not isinstance(row, Task) or not row.about.startswith("b") or not row.ticks:
            continue
        if unread(row, app.desk.season, app.desk.today):
            continue
        needs = any(ask.to_be_answered for ask in row.asks)
        if needs is needed and (asks is None or bool(row.asks) is asks):
            tasks.go(number)
            return row
    raise AssertionError("no such task in this round")


def task(
    about: str = "b01",
    family: Family = Family.PRICK_OUT,
    standing: Standing = Standing.DUE,
    *,
    crop: str = "Cosmos",
    variety: str = "Paper Lantern",
    place: str = "bench-1",
    harm: Harm = Harm.GETS_LATE,
    slot: Slot = Slot.MORNING,
    overdue_days: int = 0,
    instruction: str = "Prick out 22 into 40 cells, to the seed leaves, held by a leaf",
    ticks: tuple[Draft, ...] | None = None,
    asks: tuple[Ask, ...] = (),
    hold: Hold | None = None,
    cautions: tuple[str, ...] = (),
    at: time | None = None,
    part: str = "",
) -> Task:
    """A task made by hand, so that what is drawn does not hang on the rules of the rounds."""
    best = DAY_0 - timedelta(days=overdue_days)
    return Task(
        family=family,
        about=about,
        part=part,
        crop=crop,
        variety=variety,
        place=place,
        window=Window(best - timedelta(days=2), best, best),
        standing=standing,
        overdue_days=overdue_days,
        harm=harm,
        slot=slot,
        instruction=instruction,
        why=Why("a made-up rule of the test", ("first figure 12", "second figure 3 C"), "a source"),
        ticks=(Draft(Kind.DONE, about, {"family": str(family)}),) if ticks is None else ticks,
        asks=asks,
        hold=hold,
        cautions=cautions,
        at=at,
    )


COUNT = Ask("count", "seedlings up", needed=True, most=40)
INTO = Ask("count", "pricked out", "22", most=22)
WHERE = Ask("place", "place", "bench-1", whole=False)

MADE_ROUND = Round(
    DAY_0,
    (
        task("", Family.THERMOMETER, place="", crop="", variety="", slot=Slot.FIRST,
             instruction="Read the max-min thermometer and reset it"),
        task("frame-a", Family.LIDS, place="frame-a", crop="", variety="", slot=Slot.FIRST,
             harm=Harm.DIES_TODAY, at=time(7, 5), cautions=("C38",),
             instruction="First notch by 07:05, half open by 08:35; shut by 18:30"),
        task("b06", Family.UNCOVER, Standing.OVERDUE, overdue_days=4, crop="Zinnia",
             variety="Market Row", place="propagator", harm=Harm.SPOILS_THIS_WEEK,
             cautions=("C44", "C45"),
             instruction="Off heat and cover, into full light, cooler by 3 to 6 C"),
        task("b25", crop="Delphinium", variety="Tall Spire", place="bench-2",
             harm=Harm.SPOILS_THIS_WEEK, asks=(INTO, WHERE), cautions=("C01", "C16"),
             ticks=(Draft(Kind.PRICKED_OUT, "b25", {"count": 22, "cells": 40}),)),
        task("b20", Family.COUNT, crop="Purple sprouting broccoli", variety="Spring Spear",
             place="bench-2", asks=(COUNT,), instruction="Final germination count of 48 sown"),
        task("b14", Family.LOOK, Standing.LATE, crop="Lettuce", variety="Butterleaf",
             place="frame-a", harm=Harm.SPOILS_THIS_WEEK,
             instruction="LATE: nothing of 80 sown, stalled by heat: look, dig up a seed"),
        task("b15", Family.PLANT_OUT, crop="Lettuce", variety="Butterleaf", place="frame-b",
             slot=Slot.AFTERNOON, instruction="Plant out 36 plants late this afternoon"),
        task("b05", Family.PLANT_OUT, Standing.HELD, crop="French marigold",
             variety="Brass Button", place="frame-b", slot=Slot.AFTERNOON,
             hold=Hold("2 C on Sun 31 May", date(2026, 6, 1)),
             instruction="Held back, 2 C on Sun 31 May; look again Mon 1 Jun"),
        task("b13", Family.LOOK, Standing.EARLY, crop="Canterbury bell", variety="Cup Mix",
             place="frame-c", instruction="Too early to look: only keep it moist"),
    ),
)  # fmt: skip


class StillDesk(Desk):
    """A desk whose round is always the one made by hand."""

    def round(self, day: date | None = None) -> Round:
        return Round(day or DAY_0, MADE_ROUND.tasks)


def many_tasks(number: int) -> tuple[Task, ...]:
    """A long round: forty tasks to a place and part of the day."""
    return tuple(
        task(f"b{n:05d}", slot=Slot((n // 1000) % 5), place=f"place-{n // 40}")
        for n in range(number)
    )


def figures(**said: Figure) -> dict[str, Figure]:
    """Figures, typed."""
    return said
