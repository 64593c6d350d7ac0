"""The page of words has every word of the program, and says where each comes from."""

from __future__ import annotations

import re

import pytest

from benchround.cli import COMMANDS
from benchround.commands.reckon import SUBJECTS
from benchround.core.crop.crop import Raising
from benchround.core.frame.build import LidPosition
from benchround.core.lifecycle import Stage
from benchround.core.record import Cause
from benchround.core.site import PlaceKind
from benchround.core.task import HARM_WORDS, Family, Standing
from benchround.drawing.phases import Phase
from benchround.screens.destinations import DESTINATIONS
from tests.screens.guide import DOCS

TEXT = (DOCS / "words.md").read_text(encoding="utf-8")
ORIGINS = re.compile(r"(trade|plain|field)( \([^()]+\))?")
WORDS: dict[str, tuple[str, ...]] = {
    "How a task stands": tuple(Standing),
    "What leaving it costs": tuple(HARM_WORDS.values()),
    "Stages of a batch": tuple(Stage),
    "Causes of loss": tuple(Cause),
    "Families of tasks": tuple(Family),
    "Screens": tuple(found.name for found in DESTINATIONS),
    "Commands": COMMANDS,
    "Kinds of places": tuple(PlaceKind),
    "How it is sown": tuple(Raising),
    "How far a lid is open": tuple(position.words for position in LidPosition),
    "Strips of the year": tuple(Phase),
    "What reckon reckons": SUBJECTS,
}


def rows(text: str) -> list[list[str]]:
    """The rows of the tables in a text: word, meaning, origin."""
    cells = [line.strip("| ").split(" | ") for line in text.splitlines() if line.startswith("| ")]
    return [row for row in cells if row[0] != "word"]


@pytest.mark.parametrize("heading", WORDS)
def test_the_words_under_a_heading_are_those_of_the_program(heading: str) -> None:
    part = TEXT.split(f"## {heading}\n")[1].split("\n## ")[0]
    assert [row[0] for row in rows(part)] == [str(word) for word in WORDS[heading]]


def test_every_word_says_what_it_means_and_where_it_comes_from() -> None:
    for row in rows(TEXT):
        assert len(row) == 3, row
        assert row[1], row
        assert ORIGINS.fullmatch(row[2]), row


@pytest.mark.parametrize(
    "word",
    ["season", "crop", "batch", "packet", "place", "walking order", "record", "stage", "task",
     "window", "harm", "why", "round", "outlook", "reading", "put off", "withdraw", "caution"],
)  # fmt: skip
def test_the_ideas_everything_rests_on_have_a_row(word: str) -> None:
    assert word in [row[0] for row in rows(TEXT.split("\n## ")[0])]
