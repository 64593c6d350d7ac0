"""Whatever is typed is data: never a path, never markup, and harmless when it is printed again."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.visible import steering, visible
from benchround.plain import round_lines
from tests.commands.recording.bench import Run, files_of, round_of
from tests.sample.story import DAY_0

HOSTILE = [
    "tray [A]",
    "[/]",
    "[bold red]x",
    "=1+1",
    "../../etc/passwd",
    "/etc/passwd",
    "$(reboot)",
    "`x`; rm -rf ~",
    '"quoted" and \'',
    "{0} %s %(x)s",
    "\u202egnp.exe",
    "\u2066left\u2069",
    "🌱👩🏽‍🌾",
    "e\u0301 " * 10,
    "Ä" * 60,
]
CONTROL = ["a\x1b[31mb", "\x07", "\x9b31m", "a\x00b", "\x7f", "a\rb", "\x1b]0;title\x07", "\udc80"]
ESCAPES = frozenset("\x00\x07\x08\x0b\x1b\x7f\x9b\r\u202e\u202d\u2066\u2067\u2068\u2028")


@pytest.mark.parametrize("text", HOSTILE)
def test_text_is_kept_as_it_is_and_printed_harmless(season: Path, run: Run, text: str) -> None:
    outside = files_of(season.parent / "data") if (season.parent / "data").exists() else {}
    ran = run("sow", "cosmos", f"--variety={text}", f"--container={text}", f"--text={text}")
    assert ran.code == 0, ran.err
    assert not ESCAPES & set(ran.out + ran.err)
    listed = run("records", "b34", "--json").value["records"][0]
    assert listed["figures"]["variety"] == text.strip()
    assert listed["note"] == text
    for words in (("records", "b34"), ("tick",), ("today", "--on", "2026-06-20"), ("undo",)):
        ran = run(*words)
        assert ran.code == 0, ran.err
        assert not ESCAPES & set(ran.out + ran.err)
    assert files_of(season.parent / "data") == outside if outside else True


@pytest.mark.parametrize("text", CONTROL)
@pytest.mark.parametrize(
    "words",
    [
        ("sow", "cosmos", "--variety", "{}"),
        ("note", "b20", "noted", "--text", "{}"),
        ("note", "{}", "fed"),
        ("note", "b20", "{}"),
        ("tick", "{}"),
        ("crops", "{}"),
        ("settings", "compost={}"),
        ("place", "set", "frame-a", "name={}"),
        ("restore", "{}"),
        ("new", "{}"),
        ("{}",),
    ],
    ids=" ".join,
)
def test_control_characters_are_refused_with_a_sentence(
    season: Path, run: Run, words: tuple[str, ...], text: str
) -> None:
    before = files_of(season.parent)
    ran = run(*(word.format(text) for word in words))
    assert ran.code == 2
    assert "cannot be typed" in ran.err
    assert ran.out == ""
    assert not ESCAPES & set(ran.err)
    assert files_of(season.parent) == before


@pytest.mark.parametrize("option", ["--variety", "--container", "--place"])
def test_line_ends_are_for_notes_only(season: Path, run: Run, option: str) -> None:
    before = files_of(season)
    ran = run("sow", "cosmos", option, "one\ntwo")
    assert ran.code == 1
    assert files_of(season) == before


def test_what_another_computer_wrote_is_printed_harmless(season: Path, run: Run) -> None:
    """The store lets line ends and direction marks through; a terminal must not follow them."""
    [page] = (season / "records").glob("*.json")
    text = page.read_text(encoding="utf-8")
    hostile = json.dumps("Paper\u202e Lantern\nround of tomorrow")[1:-1]
    page.write_text(text.replace("Paper Lantern", hostile), encoding="utf-8")
    for words in (("today", "--on", "2026-05-27"), ("tick",), ("records",), ("close-season", "x")):
        ran = run(*words)
        assert ran.code == 0, ran.err
        assert "\nround of tomorrow" not in ran.out
        assert not ESCAPES & set(ran.out)
        assert "\\u202e" in ran.out


def test_a_terminal_without_the_letters_gets_their_numbers(season: Path, run: Run) -> None:
    assert run("note", "b20", "noted", "--text", "🌱 Ärger").code == 0
    done = subprocess.run(
        [sys.executable, "-m", "benchround", "records", "b20"],
        capture_output=True,
        check=False,
        env={**os.environ, "PYTHONIOENCODING": "ascii", "PYTHONPATH": str(_root())},
    )
    assert done.returncode == 0, done.stderr
    assert b"\\U0001f331 \\xc4rger" in done.stdout


def _root() -> Path:
    return Path(__file__).resolve().parents[3]


@given(st.text())
def test_nothing_steering_is_left_in_what_is_printed(text: str) -> None:
    shown = visible(text)
    assert steering(shown) is None
    assert not ESCAPES & set(shown)
    assert visible(shown) == shown
    assert steering(visible(text, lines=True), lines=True) is None


@given(st.text(alphabet=st.characters(categories=["L", "N", "P", "S", "Zs"])))
def test_letters_of_any_script_stay_as_they_are(text: str) -> None:
    assert visible(text) == text


def test_joined_signs_stay_joined() -> None:
    assert visible("👩🏽‍🌾") == "👩🏽‍🌾"


def test_the_round_is_printed_line_by_line(season: Path) -> None:
    from benchround.desk import Desk

    desk = Desk.open(season, today=lambda: DAY_0, read_only=True)
    lines = list(round_lines(round_of(season), desk.season))
    desk.close()
    assert lines
    assert all(line.isprintable() for line in lines)
