"""The record sheet finds what happened by other words growers use for it."""

from __future__ import annotations

import pytest

from benchround.core.kind_words import ALSO
from benchround.core.lifecycle import Stage
from benchround.core.record import Kind
from benchround.core.task import Family
from benchround.desk import Desk
from benchround.screens.record_fields import NOT_BY_HAND, kinds_for
from benchround.screens.record_words import kind_finder
from benchround.screens.widgets.field import Choice
from tests.screens.stage import app_on, form_of, seen, stand_on

EVERY = [Choice(kind, kind) for kind in Kind if kind not in NOT_BY_HAND]


def found(letters: str) -> list[str]:
    return [choice.value for choice in kind_finder(EVERY)(letters)]


@pytest.mark.parametrize(
    ("letters", "kind"),
    [  # plain words for what happens at a bench; common practice, no source
        ("loss", Kind.LOST),
        ("died", Kind.LOST),
        ("dead", Kind.LOST),
        ("killed", Kind.LOST),
        ("Eaten", Kind.LOST),
        ("damped off", Kind.LOST),
        ("germ", Kind.FIRST_UP),
        ("germinated", Kind.LOOKED),
        ("up", Kind.LOOKED),
        ("transplanted", Kind.PRICKED_OUT),
        ("transplanted", Kind.PLANTED_OUT),
        ("repotted", Kind.POTTED_ON),
        ("harvested", Kind.PICKED),
        ("bloom", Kind.FIRST_FLOWER),
        ("note", Kind.NOTED),
        ("binned", Kind.COMPOSTED),
        ("fridge", Kind.CHILLED),
    ],
)
def test_other_words_find_it(letters: str, kind: Kind) -> None:
    assert kind in found(letters)


def test_its_own_name_goes_first_and_nothing_is_found_twice() -> None:
    assert found("pot")[0] == Kind.POTTED_ON
    assert found("look")[0] == Kind.LOOKED
    for words in ALSO.values():
        for word in words:
            kinds = found(word)
            assert len(set(kinds)) == len(kinds)
    assert found("xyzzy") == []
    assert found("") == [choice.value for choice in EVERY]


def test_only_kinds_of_the_stage_are_found() -> None:
    stage = kinds_for(Stage.GROWING_ON)
    only = kind_finder([Choice(kind, kind) for kind in stage])
    assert {choice.value for choice in only("transplanted")} <= set(stage)
    assert next(choice.value for choice in only("died")) == Kind.LOST


async def test_a_dead_seedling_is_recorded_by_the_word_dead(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        stand_on(app, Family.THIN, "b20")
        await pilot.press("r", *"dead")
        await pilot.pause()
        assert form_of(app).field("kind").value == Kind.LOST
        assert "> lost" in seen(app)
