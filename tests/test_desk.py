"""The desk: ticking, undoing, putting off, and what it refuses."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from benchround.core.book import RecordBook
from benchround.core.errors import BenchroundError, IllegalRecordError, InputError
from benchround.core.lifecycle import SEEDLING, WAITING
from benchround.core.record import Draft, Figure, Kind, Record
from benchround.core.season import Season
from benchround.core.task import Family, Round, Standing, Task
from benchround.crops.library import load_library
from benchround.desk import Desk
from benchround.rounds.answers import drafts_for
from benchround.rounds.build import build_round
from benchround.rounds.kept import KeptRound
from benchround.store import SeasonFolder
from benchround.store.codec import encode
from tests.folding import fold_season
from tests.sample.story import DAY_0, records

NEEDED = {"stem_mm": "6", "min_c": "5", "count": "30", "place": "Bed 4"}


@pytest.fixture
def desk(tmp_path: Path) -> Iterator[Desk]:
    folder = SeasonFolder.create(tmp_path / "season", "Test season", "shed", DAY_0)
    folder.append(records())
    desk = Desk(folder, today=lambda: DAY_0)
    yield desk
    desk.close()


def answers_for(task: Task) -> dict[str, str]:
    return {ask.into: NEEDED[ask.into] for ask in task.asks if ask.needed}


def doing(a_round: Round) -> list[str]:
    return [task.key for task in a_round.today]


MORNING = build_round(fold_season(records(), load_library()), DAY_0)
SAMPLE_KEYS = [task.key for task in MORNING.tasks]


@pytest.mark.parametrize("key", SAMPLE_KEYS)
def test_ticking_any_task_writes_a_record_and_the_task_goes(desk: Desk, key: str) -> None:
    before = desk.round()
    task = before.find(key)
    assert task is not None
    written = desk.tick(task, answers_for(task))
    assert written
    assert key not in doing(desk.round())
    reread = Desk(SeasonFolder.open(desk.folder.path, "other", read_only=True), lambda: DAY_0)
    assert reread.round() == desk.round()
    desk.undo()
    assert desk.round() == before


FOLLOW_UPS = [
    # ticked, what follows, on which day, where that day comes from
    ("deadhead:b07:", "deadhead:b07:", 2, "sweet pea every 2 days"),
    ("deadhead:b29:", "deadhead:b29:", 3, "viola every 3 days"),
    ("feed:b16:", "feed:b16:", 7, "weekly by the label"),
    ("turn:b02:", "turn:b02:", 3, "twice a week"),
    ("prick out:b25:", "count:b25:", 7, "take is counted after a week"),
    ("chill:b24:", "sow:b24:", 0, "sown at once"),
    ("sow:b24:", "water:b24:", None, "kept moist from the day it is sown"),
    ("soak:b26:", "sow:b26:", 1, "sown within a day of soaking"),
    ("measure:b16:", "measure:b16:", 7, "measured weekly"),
    ("plant out:b15:", "count:b15:", 12, "gaps in the second week"),
    ("save seed:b12:", "pack seed:b12:", 7, "dried a week"),
    ("harden off:b04:", "harden off:b04:", 1, "a step a day"),
]


@pytest.mark.parametrize(
    ("ticked", "follows", "days", "source"),
    FOLLOW_UPS,
    ids=[f"{t}-{w}" for t, _, _, w in FOLLOW_UPS],
)
def test_the_follow_up_appears_on_its_day(
    desk: Desk, ticked: str, follows: str, days: int | None, source: str
) -> None:
    """Intervals: decisions and stages of the trade notes (common practice, no source)."""
    task = desk.round().find(ticked)
    assert task is not None
    desk.tick(task, answers_for(task))
    if days is None:
        coming = range(1, 8)
        assert any(follows in doing(desk.round(DAY_0 + timedelta(day))) for day in coming), source
        return
    assert follows in doing(desk.round(DAY_0 + timedelta(days=days))), source
    for day in range(days):
        assert follows not in doing(desk.round(DAY_0 + timedelta(days=day))), source


SOWABLE = ("cosmos", "foxglove", "lettuce", "wallflower")


def seed_event(season: Season, pick: int) -> Draft:
    """A new batch sown, or what comes next of one: the first seedling, a count, a loss."""
    name = f"n{pick % 4}"
    batch = season.batches.get(name)
    if batch is None:
        crop = SOWABLE[pick // 4 % 4]
        packet = {"cosmos": "p01", "foxglove": "p02", "lettuce": "p03"}.get(crop, "")
        figures: dict[str, Figure] = {
            "crop": crop, "seeds": 40, "wanted": 24, "place": "propagator", "packet": packet,
            "variety": "Paper Lantern" if crop == "cosmos" else "",
        }  # fmt: skip
        return Draft(Kind.SOWN, name, figures)
    if batch.main.stage in WAITING:
        kind = (Kind.FIRST_UP, Kind.LOOKED, Kind.STALLED)[pick % 3]
        return Draft(kind, name, {"count": 1 + pick % 9} if kind is Kind.FIRST_UP else {})
    if batch.main.stage in SEEDLING and pick % 5:
        return Draft(Kind.COUNTED, name, {"count": 10 + pick % 30, "final": pick % 2 == 0})
    return Draft(Kind.NOTED, name)


@settings(
    max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(choices=st.lists(st.tuples(st.integers(0, 10_000), st.integers(0, 3)), max_size=16))
def test_random_histories_undo_exactly_and_the_kept_round_is_the_fresh_one(
    choices: list[tuple[int, int]],
) -> None:
    """Property, over random orders of ticking, sowing, seedlings, counts and moving on by days."""
    library = load_library()
    book = RecordBook(records(), lambda _: library)
    kept = KeptRound()
    day, written, snapshots = DAY_0, 0, []
    for pick, move in choices:
        day += timedelta(days=move if pick % 3 == 0 else 0)
        a_round = build_round(book.season, day)
        assert kept.round(book.season, day) == a_round
        if not a_round.tasks:
            continue
        task = a_round.tasks[pick % len(a_round.tasks)]
        ticked = pick % 5 > 1
        if ticked:
            drafts = drafts_for(task, answers_for(task), book.season)
        else:
            drafts = (seed_event(book.season, pick // 5),)
        new = []
        for draft in drafts:
            written += 1
            new.append(
                Record(f"1T{written:06d}", day, draft.kind, draft.about, draft.figures, draft.note)
            )
        book.check(new)
        snapshots.append((a_round, day, [record.id for record in new]))
        book.add(new)
        if ticked:
            assert task.key not in doing(build_round(book.season, day))
        else:
            assert kept.round(book.season, day) == build_round(book.season, day)
    for a_round, at, names in reversed(snapshots):
        for name in names:
            written += 1
            book.add([Record(f"2T{written:06d}", at, Kind.WITHDRAWN, "", {"record": name})])
        assert build_round(book.season, at) == a_round


def test_undo_goes_back_step_by_step_and_then_says_there_is_nothing(desk: Desk) -> None:
    start = desk.round()
    for key in ("feed:b16:", "thin:b20:", "prick out:b25:"):
        task = desk.round().find(key)
        assert task is not None
        desk.tick(task)
    for _ in range(3):
        assert desk.undo()
    assert desk.round() == start
    assert desk.undo() == ()


def test_putting_off_moves_a_task_and_keeps_the_reason(desk: Desk) -> None:
    task = desk.round().find("prick out:b25:")
    assert task is not None
    desk.put_off(task, DAY_0 + timedelta(days=2), "no clean trays")
    now = desk.round().find(task.key)
    assert now is not None
    assert now.standing is Standing.EARLY
    assert "no clean trays" in now.put_off
    then = desk.round(DAY_0 + timedelta(days=2)).find(task.key)
    assert then is not None
    assert then.standing is Standing.DUE


@pytest.mark.parametrize("key", ["lids:frame-a:", "read thermometer::"])
def test_what_is_asked_of_one_day_is_asked_anew_however_far_it_was_put_off(
    desk: Desk, key: str
) -> None:
    """A lid put off to winter would cook what stands under it tomorrow."""
    task = desk.round().find(key)
    assert task is not None
    desk.put_off(task, DAY_0 + timedelta(days=200), "away")
    now = desk.round().find(key)
    assert now is not None
    assert now.standing is Standing.EARLY
    tomorrow = desk.round(DAY_0 + timedelta(days=1)).find(key)
    assert tomorrow is not None
    assert (tomorrow.standing, tomorrow.put_off) == (Standing.DUE, "")


def test_an_overdue_task_of_one_day_stays_away_until_the_day_it_was_put_off_to(desk: Desk) -> None:
    """The cover was due off on one day, days ago; that is no reason to ask on the morrow."""
    task = desk.round().find("uncover:b06:")
    assert task is not None
    assert task.window.earliest == task.window.latest < DAY_0
    desk.put_off(task, DAY_0 + timedelta(days=3), "away")
    for days, standing in ((0, Standing.EARLY), (2, Standing.EARLY), (3, Standing.DUE)):
        found = desk.round(DAY_0 + timedelta(days=days)).find(task.key)
        assert found is not None
        assert found.standing is standing


def test_work_done_after_all_ends_its_putting_off(desk: Desk) -> None:
    """Watered the next day, the tray wants water again long before the day it was put off to."""
    task = desk.round().find("water:b04:")
    assert task is not None
    desk.put_off(task, DAY_0 + timedelta(days=60), "rain")
    held_back = desk.round().find(task.key)
    assert held_back is not None
    assert held_back.standing is Standing.EARLY
    desk.record([Draft(Kind.WATERED, "b04")])
    later = [desk.round(DAY_0 + timedelta(days=n)).find(task.key) for n in (1, 2)]
    assert [one.put_off for one in later if one is not None] == [""] * len([*filter(None, later)])
    assert any(one is not None and one.standing is not Standing.EARLY for one in later)


@pytest.mark.parametrize(
    ("draft", "words"),
    [
        (Draft(Kind.COUNTED, "b06", {"count": 41}), "more than the 40 seeds"),
        (Draft(Kind.COUNTED, "b06", {"count": -3}), "whole number from 0 up"),
        (Draft(Kind.PLANTED_OUT, "b19", {"count": 200}), "more than the 19 plants"),
        (Draft(Kind.PLANTED_OUT, "b13", {"count": 3}), "cannot be recorded"),
        (Draft(Kind.FED, "b99"), "not begun"),
        (Draft(Kind.LOST, "b19", {"count": 1, "part": "nowhere"}), "no part"),
        (Draft(Kind.FED, "b16", day=date(415, 5, 1)), "look at the year"),
        (Draft(Kind.FED, "b16", day=date(2030, 5, 1)), "look at the year"),
    ],
)
def test_what_cannot_be_is_refused_and_nothing_changes(
    desk: Desk, draft: Draft, words: str
) -> None:
    before, stored = desk.round(), len(desk.folder.records())
    with pytest.raises(IllegalRecordError, match=words):
        desk.record([draft])
    assert desk.round() == before
    assert len(desk.folder.records()) == stored


def test_one_bad_record_of_an_action_keeps_all_of_it_out(desk: Desk) -> None:
    stored = len(desk.folder.records())
    with pytest.raises(BenchroundError):
        desk.record([Draft(Kind.FED, "b16"), Draft(Kind.PLANTED_OUT, "b13")])
    assert len(desk.folder.records()) == stored


HOSTILE = ["tray [A]", "[/]", "[bold red]x", "=1+1", "../../etc", "\u202egnp.exe", "Ä" * 50]


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_is_kept_as_text(desk: Desk, text: str) -> None:
    desk.record([Draft(Kind.SOWN, "b90", {"crop": "cosmos", "variety": text, "seeds": 5})])
    assert desk.season.batches["b90"].variety == text


@pytest.mark.parametrize("text", ["a\x1b[31mb", "x" * 10_000, "12.5", "minus", "-1", "41"])
def test_a_bad_answer_is_named_by_its_field(desk: Desk, text: str) -> None:
    task = desk.round().find("count:b02:")
    assert task is not None
    stored = len(desk.folder.records())
    with pytest.raises(InputError, match="seedlings up"):
        desk.tick(task, {"count": text})
    assert len(desk.folder.records()) == stored


def test_a_withdrawn_record_comes_back_when_its_withdrawal_is_withdrawn(desk: Desk) -> None:
    task = desk.round().find("feed:b16:")
    assert task is not None
    before = desk.round()
    fed = desk.tick(task)
    after = desk.round()
    withdrawal = desk.withdraw([fed[0].id])
    assert desk.round() == before
    desk.withdraw([withdrawal[0].id])
    assert desk.round() == after


def test_two_tellings_of_one_batch_do_not_stop_the_season(desk: Desk) -> None:
    clash = (
        Record("0Z1", DAY_0, Kind.PLANTED_OUT, "b15", {"count": 30}),
        Record("0Z2", DAY_0, Kind.HARDENING_STEP, "b15", {}),
    )
    season = fold_season((*records(), *clash), load_library())
    assert any("b15" in doubt for doubt in season.doubts)
    assert build_round(season, DAY_0).find(f"{Family.PLANT_OUT}:b15:") is None


SHORT = Record("0Z1", DAY_0, Kind.SOWN, "b90", {"crop": "cosmos"}, machine="laptop")
FED = Record("0Z2", DAY_0, Kind.FED, "b90", machine="laptop")
LAPTOP = "laptop-2026-05-001.json"


def as_laptop(desk: Desk, *told: Record) -> None:
    """Put the file of another computer into the folder, as a copying program does."""
    page = {"records": {str(number): encode(record) for number, record in enumerate(told, 1)}}
    part = desk.folder.path / "part"
    part.write_text(json.dumps(page), "utf-8")
    part.replace(desk.folder.path / "records" / LAPTOP)


def fresh(desk: Desk) -> Desk:
    """The same folder, opened anew."""
    return Desk(SeasonFolder.open(desk.folder.path, "other", read_only=True), lambda: DAY_0)


@pytest.mark.parametrize(
    "told",
    [
        pytest.param((replace(SHORT, figures={"crop": "cosmos", "seeds": 40}), FED), id="longer"),
        pytest.param((SHORT,), id="one gone"),
        pytest.param((FED,), id="the first gone"),
        pytest.param((SHORT, FED, replace(FED, id="0Z3")), id="one more"),
        pytest.param((replace(SHORT, id="0Z4"), FED), id="one for another"),
    ],
)
def test_what_another_computer_changed_stands_as_if_opened_anew(
    desk: Desk, told: tuple[Record, ...]
) -> None:
    as_laptop(desk, SHORT, FED)
    assert desk.reload()
    before, _ = desk.season, desk.round()
    as_laptop(desk, *told)
    assert desk.reload()
    anew = fresh(desk)
    assert desk.season != before
    assert desk.season.batches == anew.season.batches
    assert desk.season.doubts == anew.season.doubts
    assert desk.round() == anew.round()
    assert not desk.reload()


def test_a_longer_telling_of_a_sowing_brings_its_seeds(desk: Desk) -> None:
    as_laptop(desk, SHORT)
    desk.reload()
    as_laptop(desk, replace(SHORT, figures={"crop": "cosmos", "seeds": 40}))
    desk.reload()
    sowing = desk.season.batches["b90"].sowing
    assert sowing is not None
    assert sowing.seeds == 40
    desk.record([Draft(Kind.NOTED, "b90", note="still told")])
    assert desk.undo()[0].note == "still told"


@pytest.mark.parametrize("name", ["b\u00b2", "b\u0663\u0664", "b", "tray-7"])
def test_the_next_free_name_passes_over_names_that_are_no_numbers(desk: Desk, name: str) -> None:
    free = desk.free_batch_id()
    desk.record([Draft(Kind.SOWN, name, {"crop": "cosmos"})])
    assert name in desk.season.batches and desk.free_batch_id() == free
