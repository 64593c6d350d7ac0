"""docs/commands_recording.md tells of every command, its example and every key of its JSON."""

from __future__ import annotations

import shlex
import shutil
from pathlib import Path

import pytest

from benchround.commands.weather_fetch import FETCH
from benchround.core.settings_words import SETTINGS
from benchround.core.typed.date import DATE_ORDER, DAY_FIRST, MONTH_FIRST
from benchround.core.units import DEGREES, RAIN, Degrees, Rain
from benchround.core.water.tray_holder import COMPOST_SETTING
from benchround.shell.parsers import examples_of, module_of
from tests.commands.recording.bench import Run
from tests.commands.recording.test_help_completion import OURS

PAGE = Path(__file__).resolve().parents[3] / "docs" / "commands_recording.md"


def section(command: str) -> str:
    text = PAGE.read_text(encoding="utf-8").replace(" \\\n      ", " ")
    return text.split(f"\n## {command}\n")[1].split("\n## ")[0]


@pytest.mark.parametrize("command", OURS)
def test_every_command_and_every_key_is_told(
    season: Path, tmp_path: Path, run: Run, command: str
) -> None:
    told = section(command)
    examples = examples_of(module_of(command))
    assert any(f"    {example}\n" in told for example in examples)
    run("keep")
    run("tick", "feed:b16")
    shutil.copytree(season, tmp_path / "laptop-season")
    for example in examples:
        words = shlex.split(example)[1:]
        ran = run(*words, *([] if "--json" in words else ["--json"]))
        assert ran.code == 0, ran.err
        assert all(f"`{key}`" in told for key in ran.value), example


def test_settings_are_kept_under_the_names_the_others_read() -> None:
    assert SETTINGS["units"].key == DEGREES
    assert SETTINGS["units"].rule.choices == tuple(Degrees)
    assert SETTINGS["rain_units"].key == RAIN
    assert SETTINGS["rain_units"].rule.choices == tuple(Rain)
    assert SETTINGS["compost"].key == COMPOST_SETTING
    assert SETTINGS["weather_fetch"].key == FETCH
    assert SETTINGS["date_order"].key == DATE_ORDER
    assert SETTINGS["date_order"].rule.choices == (DAY_FIRST, MONTH_FIRST)


def test_every_setting_stands_on_the_page() -> None:
    assert all(f"`{name}`" in section("settings") for name in SETTINGS)
