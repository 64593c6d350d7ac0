"""Taking back: which records are one action, and that nothing is ever removed."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from benchround.core.record import Draft, Kind, Record
from benchround.desk import Desk
from benchround.shell.actions import CARRIED, actions_of, last_action
from benchround.store.ids import IdMaker
from tests.commands.recording.bench import Run, round_of
from tests.sample.story import DAY_0

DAY = date(2026, 5, 27)


class Clock:
    """A clock that stands where it is put."""

    def __init__(self) -> None:
        self.now_ms = 1_800_000_000_000

    def __call__(self) -> int:
        return self.now_ms


def made(ids: IdMaker, number: int, machine: str = "shed") -> list[Record]:
    return [Record(ids.next(), DAY, Kind.FED, "b16", machine=machine) for _ in range(number)]


def ids_of(clock: Clock, tag: bytes = b"abcd") -> IdMaker:
    return IdMaker(clock_ms=clock, chance=lambda _: tag)


def test_records_named_in_one_breath_are_one_action() -> None:
    clock = Clock()
    ids = ids_of(clock)
    first = made(ids, 3)
    clock.now_ms += 2
    first += made(ids, 1)
    clock.now_ms += 400
    second = made(ids, 2)
    assert actions_of([*second, *first], "shed") == [tuple(second), tuple(first)]


def test_another_program_or_computer_is_another_action() -> None:
    clock = Clock()
    one = made(ids_of(clock, b"aaaa"), 2)
    clock.now_ms += 3
    two = made(ids_of(clock, b"bbbb"), 2)
    far = made(ids_of(clock, b"cccc"), 2, machine="laptop")
    assert actions_of([*one, *two, *far], "shed") == [tuple(two), tuple(one)]


def test_what_was_taken_back_is_passed_over_and_what_was_carried_over_stays() -> None:
    clock = Clock()
    ids = ids_of(clock)
    old = made(ids, 1)
    clock.now_ms += 400
    carried = [Record(ids.next(), DAY, Kind.SETTING, CARRIED, {"value": "x"}, machine="shed")]
    clock.now_ms += 400
    new = made(ids, 2)
    every = [*old, *carried, *new]
    assert last_action(every, "shed", ()) == tuple(new)
    assert last_action(every, "shed", [new[0].id]) == (new[1],)
    assert last_action(every, "shed", [r.id for r in new]) == ()
    assert last_action(old, "shed", ()) == tuple(old)


def test_an_action_of_several_records_goes_as_a_whole(season: Path, run: Run) -> None:
    before = round_of(season)
    task = before.find("relabel:b32:")
    assert task is not None
    many = run("tick", "look:b06", "count=3", "--text", "x", "--have-read", "--json").value
    settings = run("settings", "feed_every_days=9", "pets=no", "--json").value
    assert len(settings["written"]) == 2
    taken = run("undo", "--json").value
    assert [r["id"] for r in taken["withdrawn"]] == [r["id"] for r in settings["written"]]
    assert all(not record["standing"] for record in taken["withdrawn"])
    taken = run("undo", "--json").value
    assert [r["id"] for r in taken["withdrawn"]] == [r["id"] for r in many["written"]]
    assert round_of(season) == before


def test_undo_goes_back_step_by_step_and_never_into_another_computers_records(
    season: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("benchround.desk.short_name", lambda host: "laptop")
    start = round_of(season)
    for key in ("feed:b16", "thin:b20", "turn:b02"):
        assert run("tick", key, "--have-read").code == 0
    for _ in range(3):
        assert run("undo", "--last").code == 0
    assert round_of(season) == start
    ran = run("undo")
    assert (ran.code, "left to take back" in ran.err) == (1, True)


def test_what_the_screens_did_is_one_action_here_too(season: Path, run: Run) -> None:
    before = round_of(season)
    desk = Desk.open(season, today=lambda: DAY_0)
    desk.record([Draft(Kind.FED, "b16"), Draft(Kind.TURNED, "b02"), Draft(Kind.FED, "b20")])
    desk.close()
    assert len(run("undo", "--json").value["withdrawn"]) == 3
    assert round_of(season) == before


def test_one_record_can_be_taken_back_and_brought_back(season: Path, run: Run) -> None:
    before = round_of(season)
    first = run("undo", "0sample000111", "--json")
    assert first.code == 0, first.err
    assert first.value["withdrawn"][0]["id"] == "0SAMPLE000111"
    after = round_of(season)
    again = run("undo", "0SAMPLE000111")
    assert (again.code, "already" in again.err) == (1, True)
    back = first.value["written"][0]["id"]
    assert run("undo", back).code == 0
    assert round_of(season) == before
    assert after != before


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("0SAMPLE00011",), "0SAMPLE0001"),
        (("nothing",), "no record"),
        (("--last", "0SAMPLE000111"), "not both"),
        (("../../etc/passwd",), "no record"),
    ],
)
def test_what_is_not_there_cannot_be_taken_back(
    season: Path, run: Run, words: tuple[str, ...], said: str
) -> None:
    ran = run("undo", *words)
    assert (ran.code, said in ran.err) == (1, True)


def test_nothing_is_removed(season: Path, run: Run) -> None:
    run("tick", "feed:b16")
    run("undo")
    records = run("records", "b16", "--json").value["records"]
    fed = [r for r in records if r["kind"] == "fed" and r["withdrawn_by"]]
    assert len(fed) == 1
    assert not fed[0]["standing"]
    assert fed[0]["withdrawn_by"] in [r["id"] for r in records if r["kind"] == "withdrawn"]
