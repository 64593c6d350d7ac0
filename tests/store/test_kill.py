"""A writer killed at any moment, for real: BENCHROUND_KILLS says how often (25, up to 500)."""

from __future__ import annotations

import json
import os
import random
import signal
import subprocess
import sys
import time
from pathlib import Path

from tests.store.builders import new_season, reopen

KILLS = min(int(os.environ.get("BENCHROUND_KILLS", "25")), 500)
ROOT = Path(__file__).parents[2]

WRITER = """
import os, random, sys
from pathlib import Path
from datetime import date
from benchround.core.record import Kind, Record
from benchround.store import IdMaker, SeasonFolder

season = SeasonFolder.open(Path(sys.argv[1]), "laptop")
assert not season.read_only, season.problems
ids = IdMaker(season.last_id)
while True:
    size = random.randint(1, 4)
    names = [ids.next() for _ in range(size)]
    action = "+".join(names)
    os.write(1, f"begin {action}\\n".encode())
    season.append(tuple(
        Record(name, date(2027, 4, 3), Kind.COUNTED, "tomato-1", {"action": action}, "x" * 50)
        for name in names
    ))
    os.write(1, f"done {action}\\n".encode())
"""


def run_and_kill(season: Path, lines: int, delay_s: float, program: str = WRITER) -> list[str]:
    """Let a writer say so many lines, kill it a little later, and return what it said.

    The lines give a slow computer its time to write; the delay lets the kill fall anywhere.
    """
    writer = subprocess.Popen(
        [sys.executable, "-c", program, str(season)], stdout=subprocess.PIPE, cwd=ROOT
    )
    assert writer.stdout is not None
    first = b"".join(writer.stdout.readline() for _ in range(lines))
    time.sleep(delay_s)
    writer.send_signal(signal.SIGKILL)
    said = first + writer.stdout.read()
    writer.stdout.close()
    assert writer.wait() == -signal.SIGKILL
    return said.decode().splitlines()


def test_what_was_acknowledged_is_there_after_kill_9(tmp_path: Path) -> None:
    path = tmp_path / "season"
    new_season(path).close()
    chance = random.Random(20270403)
    done: set[str] = set()
    begun: set[str] = set()
    journals = 0
    for _ in range(KILLS):
        for line in run_and_kill(path, chance.randrange(1, 250), chance.uniform(0, 0.003)):
            word, _, action = line.partition(" ")
            (done if word == "done" else begun).add(action)
        for file in (path / "records").glob("*.json"):
            json.loads(file.read_bytes())
        for file in (path / "records").glob("*.jsonl"):
            journals += 1
            for finished in file.read_bytes().split(b"\n")[:-1]:
                json.loads(finished)
        looked_at = reopen(path, read_only=True).records()
        with reopen(path) as season:
            assert season.records() == looked_at
            assert season.problems == ()
            assert not season.read_only
            actions: dict[str, int] = {}
            for record in season.records():
                actions[record.text("action")] = actions.get(record.text("action"), 0) + 1
        assert all(count == len(action.split("+")) for action, count in actions.items())
        assert done <= actions.keys() <= begun
        assert not list((path / "records").glob("*.jsonl"))
    assert len(done) > KILLS  # the writers did get to write
    assert journals > KILLS / 2  # and were mostly killed with a journal open
    assert len(list((path / "records").glob("*.json"))) > len(done) / 400  # which filled pages
