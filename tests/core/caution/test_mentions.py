"""What a note mentions brings its caution. Which belongs where: tests/data/cautions.csv."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from benchround.core.caution.mentions import cautions_of_note
from benchround.core.record import Cause

ROWS = {
    row["id"]: row
    for row in csv.DictReader((Path(__file__).parents[2] / "data" / "cautions.csv").open())
}


@pytest.mark.parametrize(
    ("note", "caution", "step"),
    [
        # the step and what sets it off stand in the row of the table
        ("Opened a new bag of seed compost", "C01", "'new bag opened' note"),
        ("two new bags delivered", "C43", "stock: bag delivered"),
        ("fresh bag, left in the sun", "C04", "stock screen"),
        ("mixed the compost with perlite 3:1", "C08", "compost mix editor"),
        ("covered it with VERMICULITE", "C07", "cover = vermiculite chosen"),
        ("Sprayed the greenfly", "C31", ""),
        ("used up the fungicide", "C32", ""),
        ("slug pellets round the frame", "C34", ""),
        ("set mouse traps", "C35", ""),
        ("soaked the trays in bleach", "C36", ""),
        ("baked soil for the foxgloves", "C37", ""),
    ],
)
def test_a_note_brings_the_caution_of_what_it_mentions(note: str, caution: str, step: str) -> None:
    assert step in ROWS[caution]["where_in_flow"]
    assert caution in cautions_of_note(note)


@pytest.mark.parametrize(
    "note",
    [
        "",
        "leaning to the light",
        "baggy leaves",
        "gave two away to Ann, who wants the pink one",
        "cut back by half",
        "sowed the whole bag of seed",
        "prayed for rain",
    ],
)
def test_an_ordinary_note_brings_none(note: str) -> None:
    assert cautions_of_note(note) == ()


@pytest.mark.parametrize(
    ("cause", "caution"), [("slug", "C34"), ("mouse", "C11"), ("damping off", "C57")]
)
def test_a_loss_brings_the_caution_of_its_cause(cause: str, caution: str) -> None:
    assert cause in set(map(str, Cause))
    assert cause.split()[-1] in ROWS[caution]["trigger"] or caution == "C34"
    assert caution in cautions_of_note("", cause)


def test_the_worst_is_said_first() -> None:
    found = cautions_of_note("new bag of compost, mixed with perlite")
    order = {"high": 0, "medium": 1, "low": 2}
    severities = [order[ROWS[one]["severity"]] for one in found]
    assert severities == sorted(severities)
