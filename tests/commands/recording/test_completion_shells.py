"""The completion scripts tried in zsh and fish themselves."""

from __future__ import annotations

import shlex
import shutil
import subprocess
from pathlib import Path

import pytest

from benchround.cli import COMMANDS
from benchround.shell.completion import script_for

TYPED = [
    (["ne"], "new"),
    (["close"], "close-season"),
    (["sow", "cosm"], "cosmos"),
    (["sow", "cosmos", "--vari"], "--variety"),
    (["note", "b20", "first-u"], "first-up"),
    (["reckon", "fro"], "frost"),
    (["completion", "zs"], "zsh"),
    (["tables", "--what", "rev"], "review"),
    (["sow", "cosmos", "--season", "gard"], "garden"),
    (["tables", "--take-in", "sowi"], "sowings.csv"),
]
IDS = [" ".join(words) for words, _ in TYPED]

ZSH = """
compdef() {{ :; }}
_describe() {{ print -l -- ${{(P)2%%:*}} | sed 's/:.*//'; }}
_files() {{ [ "$1" = -/ ] && print -l -- *(/) || print -l -- *; }}
compadd() {{ while [ "$1" != -- ]; do shift; done; shift; print -l -- "$@"; }}
{script}
words=({words})
CURRENT={at}
_benchround
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "garden").mkdir()
    (tmp_path / "sowings.csv").write_text("crop\n", encoding="utf-8")
    return tmp_path


@pytest.mark.skipif(shutil.which("fish") is None, reason="fish is not installed here")
@pytest.mark.parametrize(("typed", "offered"), TYPED, ids=IDS)
def test_fish_completes(folder: Path, typed: list[str], offered: str) -> None:
    """Asked with fish's own `complete --do-complete`, which answers as the tab key does."""
    script = folder / "benchround.fish"
    script.write_text(script_for("fish", COMMANDS), encoding="utf-8")
    line = " ".join(["benchround", *typed])
    asked = f"source {script}; complete --do-complete {shlex.quote(line)}"
    done = subprocess.run(
        ["fish", "--no-config", "-c", asked], capture_output=True, text=True, cwd=folder, check=True
    )
    found = [answer.split("\t")[0].rstrip("/") for answer in done.stdout.splitlines()]
    assert offered in found
    assert done.stderr == ""


@pytest.mark.skipif(shutil.which("zsh") is None, reason="zsh is not installed here")
@pytest.mark.parametrize(("typed", "offered"), TYPED, ids=IDS)
def test_zsh_completes(folder: Path, typed: list[str], offered: str) -> None:
    """The function runs in zsh; its builtins that only work behind the tab key print here."""
    words = " ".join(map(shlex.quote, ["benchround", *typed]))
    script = ZSH.format(script=script_for("zsh", COMMANDS), words=words, at=len(typed) + 1)
    done = subprocess.run(
        ["zsh", "-f", "-c", script], capture_output=True, text=True, cwd=folder, check=True
    )
    assert offered in done.stdout.splitlines()
    assert done.stderr == ""
