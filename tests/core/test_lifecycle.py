"""The lifecycle table: every pair of stage and kind, and the page drawn from it."""

from __future__ import annotations

from itertools import product
from pathlib import Path

import pytest

from benchround.core.errors import IllegalRecordError
from benchround.core.lifecycle import ENDED, NEXT, TABLE, Stage, next_stage
from benchround.core.lifecycle_page import lifecycle_page
from benchround.core.record import Kind

DOCS = Path(__file__).resolve().parents[2] / "docs"

STORIES = [
    # Stages in order as the trade tells them (common practice, no source).
    (
        "half-hardy annual",
        (
            (Kind.PLANNED, "planned"),
            (Kind.SOWN, "sown"),
            (Kind.FIRST_UP, "emerging"),
            (Kind.SEED_LEAVES, "seed leaves"),
            (Kind.TRUE_LEAVES, "first true leaves"),
            (Kind.PRICKED_OUT, "pricked out"),
            (Kind.TAKEN, "growing on"),
            (Kind.POTTED_ON, "potted on"),
            (Kind.PINCHED, "potted on"),
            (Kind.HARDENING_BEGUN, "hardening"),
            (Kind.HARDENED, "ready"),
            (Kind.PLANTED_OUT, "establishing"),
            (Kind.FIRST_FLOWER, "in flower"),
            (Kind.DEADHEADED, "in flower"),
            (Kind.GOING_OVER, "going over"),
            (Kind.LEFT_FOR_SEED, "left for seed"),
            (Kind.SEED_SAVED, "seed saved"),
            (Kind.COMPOSTED, "composted"),
        ),
    ),
    (
        "seed that wants cold",
        (
            (Kind.CHILLED, "stratifying"),
            (Kind.BROUGHT_OUT, "pretreated"),
            (Kind.SOWN, "sown"),
            (Kind.STALLED, "stalled"),
            (Kind.RESOWN, "sown"),
            (Kind.FIRST_UP, "emerging"),
        ),
    ),
    (
        "bulb",
        (
            (Kind.PLANTED_BULBS, "establishing"),
            (Kind.FIRST_FLOWER, "in flower"),
            (Kind.GOING_OVER, "going over"),
            (Kind.DORMANT, "dormant"),
            (Kind.LIFTED, "lifted"),
        ),
    ),
    (
        "autumn-sown",
        (
            (Kind.SOWN, "sown"),
            (Kind.FIRST_UP, "emerging"),
            (Kind.TRUE_LEAVES, "first true leaves"),
            (Kind.OVERWINTERING, "overwintering"),
            (Kind.PLANTED_OUT, "establishing"),
        ),
    ),
]


@pytest.mark.parametrize(("name", "story"), STORIES, ids=[name for name, _ in STORIES])
def test_the_usual_lives(name: str, story: tuple[tuple[Kind, str], ...]) -> None:
    stage: Stage | None = None
    for kind, expected in story:
        stage = next_stage(stage, kind, name)
        assert stage == expected


@pytest.mark.parametrize("stage", [None, *Stage])
def test_every_pair_is_in_the_table_or_refused_by_name(stage: Stage | None) -> None:
    for kind in Kind:
        if (stage, kind) in NEXT:
            assert next_stage(stage, kind) in set(Stage)
        else:
            with pytest.raises(IllegalRecordError, match=f"'{kind}' cannot be recorded"):
                next_stage(stage, kind)


def test_what_has_ended_stays_ended() -> None:
    for stage, kind in product(ENDED, TABLE):
        assert NEXT.get((stage, kind), stage) is stage


def test_every_stage_can_be_reached_and_can_be_lost() -> None:
    assert set(NEXT.values()) == set(Stage)
    for stage in set(Stage) - ENDED:
        assert NEXT[(stage, Kind.LOST)] is Stage.LOST


def test_the_page_is_the_table() -> None:
    assert (DOCS / "lifecycle.md").read_text(encoding="utf-8") == lifecycle_page()
