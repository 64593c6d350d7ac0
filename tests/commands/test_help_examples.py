"""The examples of every help page run as they stand, in a copy of the sample season."""

from __future__ import annotations

import shlex
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from benchround.cli import COMMANDS
from benchround.commands import weather_out
from benchround.shell.parsers import examples_of, module_of, parser_of, subjects_of
from tests.commands.recording.test_help_completion import OURS
from tests.commands.shell import DAY, example_folder, run
from tests.sample.write import write_sample

ENDLESS = ("serve",)
"""Commands that go on until they are stopped; they have tests of their own."""
OTHERS = tuple(name for name in COMMANDS if name not in (*OURS, *ENDLESS))


def examples() -> Iterator[str]:
    """Those of the commands, and those of their subjects."""
    for name in OTHERS:
        module = module_of(name)
        yield from examples_of(module)
        for subject in subjects_of(parser_of(name, module)).values():
            assert subject.epilog, f"{subject.prog} has no example"
            yield subject.epilog.removeprefix("example: ")


@pytest.mark.parametrize("example", dict.fromkeys(examples()))
def test_the_examples_of_the_help_run(
    example: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    season = tmp_path / "season"
    write_sample(season)
    example_folder(tmp_path)
    for file in tmp_path.glob("*.csv"):
        shutil.copy(file, season)
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    monkeypatch.setattr(weather_out, "local_day", lambda: DAY)
    monkeypatch.chdir(season)
    assert run(["paper", "print", "--on", "2026-05-27"], capsys).code == 0  # for what is typed in
    program, *words = shlex.split(example)
    assert program == "benchround"
    before = set(season.iterdir())
    ran = run(words, capsys)
    assert ran.code == 0, ran.err
    made = set(season.iterdir()) - before
    assert ran.out or any(path.stat().st_size > 100 for path in made)
    named = [word for word, option in zip(words[1:], words, strict=False) if option in ("--pdf",)]
    assert all(Path(name).read_bytes().startswith(b"%PDF-") for name in named)


@pytest.mark.parametrize("name", [name for name in OTHERS if name != "today"])
def test_a_help_page_tells_more_than_its_options(
    name: str, capsys: pytest.CaptureFixture[str]
) -> None:
    page = run(["help", name], capsys).out
    assert "DESCRIPTION" in page or "SUBJECTS" in page
    assert "EXAMPLES" in page
