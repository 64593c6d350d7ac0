"""Nothing asks the network unless it was turned on: every connection would be seen and refused."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]

WATCHED = """
import sys
def watch(event, args):
    if event == "socket.getaddrinfo" or (
        event in ("socket.connect", "socket.bind", "socket.sendto") and args[0].family != 1
    ):
        sys.stderr.write(f"NETWORK {event} {args}\\n")
        sys.stderr.flush()
        raise OSError("no network here")
sys.addaudithook(watch)
"""
COMMANDS = (
    "today --sample",
    "reckon emergence tomato --temp 18",
    "paper print --sample --pdf {home}/round.pdf",
    "report --sample",
    "tables --sample --out {home}/tables",
    "weather fetch {home}/season",
    "keep --season {home}/season",
)
SCREENS = """
import asyncio
from pathlib import Path
from benchround.desk import Desk
from benchround.screens.app import BenchroundApp

async def look():
    desk = Desk.open(Path("{home}/season"))
    app = BenchroundApp(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        for keys in ("w", "escape", "question_mark", "escape", "g", "w", "g", "r", "g", "c"):
            await pilot.press(keys)
        await pilot.pause()
    desk.close()

asyncio.run(look())
"""
COMMAND = """
sys.argv = ["benchround", *"{words}".split()]
from benchround.cli import main
sys.exit(main())
"""


def watched(program: str, home: Path) -> subprocess.CompletedProcess[str]:
    """Run a program that may not use the network."""
    env = {"HOME": str(home), "XDG_DATA_HOME": str(home), "PATH": "/usr/bin:/bin"}
    whole = [sys.executable, "-c", WATCHED + program.replace("{home}", str(home))]
    return subprocess.run(whole, cwd=ROOT, env=env, capture_output=True, text=True, timeout=60)


@pytest.fixture
def home(tmp_path: Path) -> Path:
    import shutil

    from benchround.whereabouts import sample_folder

    ignored = shutil.ignore_patterns("*.lock")
    shutil.copytree(sample_folder(), tmp_path / "season", ignore=ignored)
    return tmp_path


@pytest.mark.parametrize("words", COMMANDS)
def test_no_command_asks_the_network(words: str, home: Path) -> None:
    ran = watched(COMMAND.replace("{words}", words), home)
    assert "NETWORK" not in ran.stderr
    assert "Traceback" not in ran.stderr
    assert ran.returncode in (0, 1)  # fetching is not turned on, and says so


def test_the_screens_do_not_ask_the_network(home: Path) -> None:
    ran = watched(SCREENS, home)
    assert (ran.returncode, ran.stderr) == (0, "")


def test_a_question_to_the_network_would_be_seen(home: Path) -> None:
    asking = "import socket\nsocket.create_connection(('127.0.0.1', 9), 1)\n"
    assert "NETWORK socket." in watched(asking, home).stderr


def test_turned_on_it_does_ask(home: Path) -> None:
    season = home / "season"
    on = watched(COMMAND.replace("{words}", f"weather fetch {season} --turn on"), home)
    assert (on.returncode, "NETWORK" in on.stderr) == (0, False)
    ran = watched(COMMAND.replace("{words}", f"weather fetch {season}"), home)
    assert "NETWORK socket." in ran.stderr
    assert ran.returncode != 0
