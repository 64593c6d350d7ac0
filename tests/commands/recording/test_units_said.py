"""With F and inches chosen, what is printed and written out says so; records and tables stay."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.commands.recording.bench import Run

LEFT = re.compile(r"(?<![\w.])-?\d+(?:\.\d+)? ?(?:C|mm|K)(?![\w'-])")
DAY = ("--on", "2026-05-27")


@pytest.fixture
def american(season: Path, run: Run) -> Path:
    """The sample with F and inches."""
    run("settings", "units=F", "rain_units=inch")
    return season


@pytest.mark.parametrize(
    "words",
    [
        ("today", *DAY),
        ("tick",),
        ("paper", "print", *DAY),
        ("calendar", *DAY),
        ("report", *DAY),
        ("labels", "--all", *DAY),
        ("weather", "show", *DAY),
        ("weather", "note", "41 73 sun", "--preview", *DAY),
    ],
    ids=lambda words: " ".join(words[:2]),
)
def test_no_figure_in_c_or_mm_is_left(american: Path, run: Run, words: tuple[str, ...]) -> None:
    ran = run(*words)
    assert ran.code == 0, ran.err
    unfolded = ran.out.replace("\r\n ", "")  # a calendar folds its lines
    assert LEFT.findall(unfolded) == []


def test_the_round_is_said_in_f(american: Path, run: Run) -> None:
    assert "41 to 73 F" in run("today", *DAY).out  # 5 and 23 C, by definition


def test_an_outlook_is_typed_in_f_and_kept_in_c(american: Path, run: Run) -> None:
    value = run("weather", "note", "41 50", "--json", *DAY).value
    assert (value["days"][0]["min_c"], value["days"][0]["max_c"]) == (5, 10)
    readings = run("tables", "--what", "readings").out
    assert "min_c" in readings.splitlines()[0]
