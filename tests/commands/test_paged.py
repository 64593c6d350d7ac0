"""The round printed for a terminal is wrapped to its width; for a pipe its lines stay whole."""

from __future__ import annotations

import sys

import pytest

from benchround.shell import paged
from benchround.shell.paged import for_terminal, wrapped
from tests.commands.shell import run

LINES = [
    "- thin: b20 Purple sprouting broccoli 'Spring Spear': due. Thin to one in each cell, leave 48",
    "    why: two in a cell hold one another back, and the weaker one takes the light and water",
    "",
    "short",
]


@pytest.mark.parametrize("columns", [1, 30, 60, 80, 100, 500])
def test_no_line_is_wider_than_the_terminal_and_no_word_is_lost(columns: int) -> None:
    found = list(wrapped(LINES, columns))
    assert max(map(len, found)) <= max(paged.LEAST, min(columns, paged.MOST))
    assert " ".join(" ".join(found).split()) == " ".join(" ".join(LINES).split())
    assert found[0].startswith("- thin")
    assert "" in found


def test_what_goes_on_hangs_under_where_it_began() -> None:
    found = list(wrapped(LINES[:2], 60))
    assert found[1].startswith("  ") and not found[1].startswith("   ")
    assert found[3].startswith("      ")


def test_a_pipe_gets_whole_lines(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    assert list(for_terminal(LINES)) == LINES
    whole = run(["today", "--sample"], capsys).out
    assert max(map(len, whole.splitlines())) > paged.MOST
    monkeypatch.setattr(sys.stdout, "isatty", lambda: True)
    monkeypatch.setenv("COLUMNS", "60")
    narrow = run(["today", "--sample"], capsys).out
    assert max(map(len, narrow.splitlines())) <= 60
    assert " ".join(narrow.split()) == " ".join(whole.split())
