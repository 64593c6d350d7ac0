"""The wheel: built by pip, installed into an environment of its own, started from any folder."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import sysconfig
import venv
from pathlib import Path

import pytest

import benchround

ROOT = Path(__file__).resolve().parent.parent
PARTS = ("pyproject.toml", "README.md", "benchround", "sample_season")


@pytest.fixture(scope="module")
def program(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The installed program. What it depends on comes from here, so that nothing is fetched."""
    folder = tmp_path_factory.mktemp("wheel")
    source = folder / "source"
    source.mkdir()
    for name in PARTS:
        copy = shutil.copytree if (ROOT / name).is_dir() else shutil.copy
        copy(ROOT / name, source / name)
    build = [sys.executable, "-m", "pip", "wheel", "--no-deps", "-q", "-w", str(folder), "."]
    built = subprocess.run(build, cwd=source, capture_output=True, text=True)
    if built.returncode:
        pytest.skip(f"pip cannot build here: {built.stderr.strip().splitlines()[-1]}")
    (wheel,) = folder.glob("*.whl")
    home = folder / "env"
    venv.create(home, with_pip=True)
    bin_folder = home / ("Scripts" if os.name == "nt" else "bin")
    install = [str(bin_folder / "python"), "-m", "pip", "install", "--no-deps", "-q", str(wheel)]
    subprocess.run(install, check=True, capture_output=True)
    (site,) = home.rglob("site-packages")
    (site / "dependencies.pth").write_text(sysconfig.get_path("purelib") + "\n", encoding="utf-8")
    return bin_folder / "benchround"


def start(program: Path, cwd: Path, *words: str) -> subprocess.CompletedProcess[str]:
    outside = {**os.environ, "XDG_DATA_HOME": str(cwd.parent / "data"), "HOME": str(cwd.parent)}
    outside.pop("PYTHONPATH", None)
    return subprocess.run(
        [str(program), *words], cwd=cwd, capture_output=True, text=True, env=outside
    )


def test_it_says_its_version_and_carries_the_sample(program: Path, tmp_path: Path) -> None:
    here = tmp_path / "here"
    here.mkdir()
    assert start(program, here, "--version").stdout == f"benchround {benchround.__version__}\n"
    done = start(program, here, "today", "--sample")
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith("Round of Wed 27 May 2026")
    assert start(program, here, "report", "--sample").stdout.startswith("# The sample season")
    assert list(here.iterdir()) == []


def test_it_finds_its_season(program: Path, tmp_path: Path) -> None:
    """Named, then the folder stood in, then the one used last; without any it says what to do."""
    here = tmp_path / "here"
    here.mkdir()
    none = start(program, here, "today")
    assert none.returncode == 1
    assert "There is no season yet" in none.stderr
    for name in ("first", "second"):
        assert start(program, here, "new", name, "--name", name).returncode == 0

    def told(cwd: Path, *words: str) -> str:
        return start(program, cwd, "report", *words).stdout.splitlines()[0]

    assert told(here) == "# second"
    assert told(here / "first") == "# first"
    assert told(here / "first", str(here / "second")) == "# second"
    assert start(program, here, "report", "nowhere").returncode == 1
