"""Every example of docs/commands.md runs and prints what stands there (regression test)."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest

from benchround.cli import COMMANDS
from benchround.commands import reckon, weather, weather_out
from tests.commands.shell import DAY, run
from tests.feeds.test_leaving_docs import OURS as LEAVING

PAGE = Path(__file__).resolve().parents[2] / "docs" / "commands.md"
ANYTHING = "..."
Example = tuple[str, list[str]]


def examples() -> list[Example]:
    """Each command line of the page with the lines printed under it."""
    found: list[Example] = []
    for block in re.findall(r"```console\n(.*?)```", PAGE.read_text(encoding="utf-8"), re.S):
        for line in block.splitlines():
            if line.startswith("$ "):
                found.append((line[2:], []))
            else:
                found[-1][1].append(line)
    return found


@pytest.mark.usefixtures("bench")
def test_examples_print_what_the_page_shows(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    # in the page's order, on its day: later examples build on the records of earlier ones
    monkeypatch.setattr(weather_out, "local_day", lambda: DAY)
    for command, shown in examples():
        ran = run(shlex.split(command)[1:], capsys)
        printed = ran.out.splitlines()
        assert ran.code == 0, (command, ran.err)
        if shown[-1] == ANYTHING:
            assert len(printed) >= len(shown), command
            printed, shown = printed[: len(shown) - 1], shown[:-1]
        assert printed == shown, command


def test_every_subject_and_action_has_an_example() -> None:
    shown = [shlex.split(command)[1:3] for command, _ in examples()]
    assert {words[1] for words in shown if words[0] == "reckon"} == set(reckon.SUBJECTS)
    assert {words[1] for words in shown if words[0] == "weather"} == set(weather.ACTIONS)
    assert {"today", "reckon", "weather"} <= set(COMMANDS)


@pytest.mark.parametrize("subject", reckon.SUBJECTS)
def test_every_json_key_is_explained(
    subject: str, bench: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    page = PAGE.read_text(encoding="utf-8")
    section = page.split(f"### {subject}\n")[1].split("\n## ")[0].split("\n### ")[0]
    documented = set(re.findall(r"`([a-z0-9_]+)`", section))
    for command, _ in examples():
        words = shlex.split(command)[1:]
        if words[:2] == ["reckon", subject]:
            ran = run([*words, *([] if "--json" in words else ["--json"])], capsys)
            tray = (
                {"trays", "compost_l", "vermiculite_l", "bench_m2"} if subject == "plan" else set()
            )
            assert set(ran.value) - tray <= documented, command
    assert bench.exists()


def test_help_names_every_subject(capsys: pytest.CaptureFixture[str]) -> None:
    ran = run(["reckon", "--help"], capsys)
    assert ran.code == 0
    assert all(subject in ran.out for subject in reckon.SUBJECTS)
    for subject in reckon.SUBJECTS:
        ran = run(["reckon", subject, "--help"], capsys)
        assert ran.code == 0
        assert "example: benchround reckon" in ran.out


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_is_documented_once(command: str) -> None:
    pages = [PAGE.with_name(name) for name in ("commands.md", "commands_recording.md")]
    headed = sum(f"\n## {command}\n" in page.read_text(encoding="utf-8") for page in pages)
    assert headed + (command in LEAVING) == 1
