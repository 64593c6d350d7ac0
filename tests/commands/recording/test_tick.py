"""Ticking and putting off by key or number, and undoing it exactly."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchround.desk import Desk
from tests.commands.recording.bench import Run, files_of, round_of, rounds_of
from tests.sample.story import DAY_0

NEEDED = {"place": "Bed 4", "stem_mm": "6", "min_c": "5", "count": "30"}


def test_every_task_of_the_sample_can_be_ticked_and_undone_exactly(season: Path, run: Run) -> None:
    before, later = round_of(season), rounds_of(season)
    for task in before.tasks:
        words = [f"{ask.into}={NEEDED[ask.into]}" for ask in task.asks if ask.needed]
        ran = run("tick", task.key, *words, "--have-read", "--json")
        assert ran.code == 0, (task.key, ran.err)
        assert ran.value["task"] == task.key
        assert ran.value["written"]
        after = round_of(season)
        assert task.key not in [one.key for one in after.today]
        assert ran.value["left_today"] == len(after.today)
        assert run("undo").code == 0
        assert round_of(season) == before
    assert rounds_of(season) == later


def test_a_number_means_the_place_in_the_list(season: Path, run: Run) -> None:
    tasks = run("tick", "--json").value["tasks"]
    assert [task["number"] for task in tasks] == list(range(1, len(tasks) + 1))
    assert [task["key"] for task in tasks] == [task.key for task in round_of(season).tasks]
    lines = run("tick").out.splitlines()
    assert len(lines) == len(tasks)
    number = next(task["number"] for task in tasks if task["key"] == "feed:b16:")
    assert lines[number - 1].split()[:2] == [str(number), "feed:b16:"]
    assert run("tick", str(number), "--json").value["task"] == "feed:b16:"


@pytest.mark.parametrize("key", ["feed:b16:", "feed:b16", "FEED:B16:"])
def test_a_key_may_lack_its_last_colon(season: Path, run: Run, key: str) -> None:
    assert run("tick", key, "--json").value["task"] == "feed:b16:"


def test_the_answers_of_the_sheet_are_taken(season: Path, run: Run) -> None:
    ran = run("tick", "plant out:b15:", "count=30", "place=Bed 2", "rest=comp", "--json")
    assert ran.code == 0, ran.err
    figures = ran.value["written"][0]["figures"]
    assert (figures["count"], figures["place"], figures["rest"]) == (30, "bed-2", "composted")


def test_a_note_goes_with_the_tick(season: Path, run: Run) -> None:
    ran = run("tick", "feed:b16", "--text", "half strength", "--json")
    assert ran.value["written"][0]["note"] == "half strength"


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (("feed:b61",), 1, "feed:b16:"),
        (("fed:b16",), 1, "of b16 there is"),
        (("0",), 1, "no number 0"),
        (("999",), 1, "no number 999"),
        (("feed:b16", "count=3"), 1, "takes no figure"),
        (("count:b02", "cont=3"), 1, "count"),
        (("count:b02",), 1, "a figure is needed"),
        (("count:b02", "count=minus"), 1, "not a whole number"),
        (("count:b02", "count=1", "count=2"), 1, "given twice"),
        (("count:b02", "count"), 2, "write name=value"),
        (("feed:b16", "--on", "tomorrow"), 1, "still to come"),
    ],
)
def test_what_cannot_be_ticked_is_refused(
    season: Path, run: Run, words: tuple[str, ...], code: int, said: str
) -> None:
    before = files_of(season)
    ran = run("tick", *words)
    assert ran.code == code
    assert said in ran.err
    assert files_of(season) == before


def test_a_task_is_put_off_with_its_reason(season: Path, run: Run) -> None:
    before = round_of(season)
    ran = run("put-off", "feed:b16", "--until", "+2", "--reason", "no [can]", "--json")
    assert (ran.code, ran.value["until"]) == (0, "2026-05-29")
    task = round_of(season).find("feed:b16:")
    assert task is not None
    assert "no [can]" in task.put_off
    run("undo")
    assert round_of(season) == before


@pytest.mark.parametrize(
    ("words", "code"),
    [
        (("feed:b16", "--until", "today"), 1),
        (("feed:b16", "--until", "-1"), 1),
        (("feed:b61", "--until", "+1"), 1),
        (("feed:b16", "--until", "+1", "--reason", "x" * 201), 1),
        (("feed:b16",), 2),
    ],
)
def test_what_cannot_be_put_off_is_refused(
    season: Path, run: Run, words: tuple[str, ...], code: int
) -> None:
    before = files_of(season)
    assert run("put-off", *words).code == code
    assert files_of(season) == before


def test_ticking_writes_what_the_desk_would(season: Path, run: Run, tmp_path: Path) -> None:
    said = run("tick", "deadhead:b07", "--json").value["written"]
    run("undo")
    desk = Desk.open(season, today=lambda: DAY_0)
    task = desk.round().find("deadhead:b07:")
    assert task is not None
    written = desk.tick(task)
    desk.close()
    assert [(r["kind"], r["about"], r["figures"]) for r in said] == [
        (str(r.kind), r.about, dict(r.figures)) for r in written
    ]
