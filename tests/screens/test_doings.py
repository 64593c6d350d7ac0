"""What was done in a sitting is taken back by what was written, not by what was last."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from benchround.core.errors import IllegalRecordError
from benchround.core.record import Draft, Kind
from benchround.desk import Desk
from benchround.screens.doings import Doings

TODAY = date(2026, 5, 20)
SOWN = Draft(Kind.SOWN, "b01", {"crop": "cosmos", "seeds": 20})
GONE = "Not taken back, it was withdrawn already: "


@pytest.fixture
def desk(tmp_path: Path) -> Iterator[Desk]:
    desk = Desk.create(tmp_path / "season", "Test season", today=lambda: TODAY)
    yield desk
    desk.close()


def noted(text: str) -> Draft:
    return Draft(Kind.NOTED, "b01", note=text)


def last_id(desk: Desk) -> str:
    return desk.folder.records()[-1].id


def notes(desk: Desk) -> list[str]:
    return [record.note for record in desk.season.batches["b01"].records if record.note]


def test_what_was_withdrawn_elsewhere_is_said_and_nothing_else_goes(desk: Desk) -> None:
    doings = Doings(desk)
    doings.record([SOWN], TODAY, words="the sowing")
    doings.record([noted("hello")], TODAY, words="the note")
    desk.withdraw([last_id(desk)])
    taken = doings.undo()
    assert taken is not None
    assert taken.said == f"{GONE}the note."
    assert list(desk.season.batches) == ["b01"]
    taken = doings.undo()
    assert taken is not None
    assert taken.said == "Taken back: the sowing."
    assert not desk.season.batches
    assert doings.undo() is None


def test_of_a_doing_withdrawn_in_part_the_rest_goes(desk: Desk) -> None:
    desk.record([SOWN])
    doings = Doings(desk)
    doings.record([noted("one"), noted("two")], TODAY, words="two notes")
    desk.withdraw([last_id(desk)])
    assert notes(desk) == ["one"]
    taken = doings.undo()
    assert taken is not None
    assert taken.said == "Taken back: two notes (part of it was withdrawn already)."
    assert notes(desk) == []


def test_taking_back_passes_over_what_the_desk_recorded_since(desk: Desk) -> None:
    doings = Doings(desk)
    doings.record([SOWN], TODAY)
    doings.record([noted("by key")], TODAY)
    desk.record([noted("by a command")])
    doings.undo()
    assert notes(desk) == ["by a command"]


def test_a_withdrawal_with_something_in_its_place_is_taken_back_whole(desk: Desk) -> None:
    desk.record([SOWN])
    desk.record([noted("first")])
    doings = Doings(desk)
    doings.withdraw([last_id(desk)], "the note", [noted("instead")])
    assert notes(desk) == ["instead"]
    taken = doings.undo()
    assert taken is not None
    assert taken.said == "Taken back: withdrawal of the note."
    assert notes(desk) == ["first"]


def test_a_withdrawal_brought_back_elsewhere_is_said(desk: Desk) -> None:
    desk.record([SOWN])
    desk.record([noted("first")])
    doings = Doings(desk)
    doings.withdraw([last_id(desk)], "the note")
    desk.withdraw([last_id(desk)])
    assert notes(desk) == ["first"]
    taken = doings.undo()
    assert taken is not None
    assert taken.said == f"{GONE}withdrawal of the note."
    assert notes(desk) == ["first"]


def test_what_cannot_stand_in_its_place_leaves_what_was_there(desk: Desk) -> None:
    desk.record([SOWN])
    desk.record([noted("first")])
    doings = Doings(desk)
    with pytest.raises(IllegalRecordError):
        doings.withdraw([last_id(desk)], "the note", [Draft(Kind.HARDENING_STEP, "b01")])
    assert notes(desk) == ["first"]
    assert doings.undo() is None


def test_a_tick_with_a_note_is_one_act(desk: Desk) -> None:
    desk.record([SOWN])
    task = desk.round().tasks[0]
    answers = {ask.into: "5" for ask in task.asks if ask.needed}
    before = desk.folder.records()
    doings = Doings(desk)
    with pytest.raises(IllegalRecordError):
        doings.tick(task, answers, TODAY, [Draft(Kind.HARDENING_STEP, "b01")])
    assert desk.folder.records() == before  # not written and withdrawn again
    doings.tick(task, answers, TODAY, [noted("with it")])
    assert notes(desk) == ["with it"]
    written = desk.folder.records()[len(before) :]
    assert {record.id for record in desk.undo()} == {record.id for record in written}
    assert desk.folder.records()[: len(before)] == before
    assert notes(desk) == []
