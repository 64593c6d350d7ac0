"""Programs killed while they keep, bring back, set aside and take in a lot at once.

BENCHROUND_KILLS says how often (a fifth of it here, from 5 up).
"""

from __future__ import annotations

import json
import random
import zipfile
from pathlib import Path

from benchround.store.keep import packed
from tests.store.builders import DAY, Scribe, filled_season, new_season, reopen
from tests.store.test_kill import KILLS, run_and_kill

ROUNDS = max(5, KILLS // 5) if KILLS < 500 else 500

WORKER = """
import os, random, sys
from datetime import date, timedelta
from pathlib import Path
from benchround.core.record import Kind, Record
from benchround.store import IdMaker, SeasonFolder

season = SeasonFolder.open(Path(sys.argv[1]), "laptop")
assert not season.read_only, season.problems
ids = IdMaker(season.last_id)
day = date(2027, 4, 3)

def say(word, *names):
    os.write(1, f"{word} {'+'.join(names)}\\n".encode())

say("open")
while True:
    many = [Record(ids.next(), day, Kind.COUNTED, "tomato-1", {"count": n}) for n in range(260)]
    season.append(tuple(many))
    say("there", *(record.id for record in many))
    for name in season.damaged:
        moved = season.set_aside(name)
        say("aside", moved.name)
    for copy in season.list_kept():
        if copy.machine == "stick":
            done = season.restore(copy, preview=False)
            say("there", *(record.id for record in done.records))
    day += timedelta(days=1)
    if season.keep_today(day) is not None:
        say("kept", f"{day.isoformat()}-laptop.zip")
    for record in many[:30]:
        one = Record(ids.next(), day, Kind.NOTED, "tomato-1", note="x" * 60)
        season.append((one,))
        say("there", one.id)
"""


def bring_from_elsewhere(path: Path, season: Path, number: int) -> None:
    """A copy of another season among the kept ones, and a damaged page of another computer."""
    scribe = Scribe(f"stick-{number}")
    other = path / f"other-{number}"
    with new_season(other, "stick") as made:
        made.append(scribe.records(40))
    keep = season / "keep"
    keep.mkdir(exist_ok=True)
    for old in keep.glob("*-stick.zip"):
        old.unlink()
    (keep / f"{DAY.isoformat()}-stick.zip").write_bytes(packed(other, DAY))
    half = path / f"half-{number}"
    filled_season(half, 6, f"old-{number}")
    (page,) = (half / "records").glob("*.json")
    (season / "records" / page.name).write_bytes(page.read_bytes()[:600])


def test_nothing_told_is_lost_on_any_other_way_of_writing(tmp_path: Path) -> None:
    path = tmp_path / "season"
    new_season(path).close()
    chance = random.Random(20270404)
    there: set[str] = set()
    aside: set[str] = set()
    kept = 0
    for number in range(ROUNDS):
        bring_from_elsewhere(tmp_path, path, number)
        before = {record.id for record in reopen(path, read_only=True).records()}
        copies: set[str] = set()
        for line in run_and_kill(path, chance.randrange(1, 70), chance.uniform(0, 0.01), WORKER):
            word, _, names = line.partition(" ")
            {"there": there, "aside": aside, "kept": copies, "open": set()}[word].update(
                filter(None, names.split("+"))
            )
        kept += len(copies)
        with reopen(path) as season:
            now = {record.id for record in season.records()}
            assert there | before <= now
            assert len(season.damaged) <= 1  # what was cut off is not damage
            for name in season.damaged:
                assert name.startswith(f"old-{number}-")
                season.set_aside(name)
                assert now == {record.id for record in season.records()}
            assert season.problems == ()
        for file in (path / "records").glob("*.json"):
            json.loads(file.read_bytes())
        for bundle in (path / "keep").glob("*.zip"):
            with zipfile.ZipFile(bundle) as opened:
                assert opened.testzip() is None
        left = [part.name for part in path.glob("*/.*.part")]
        assert all(name.startswith(".stick-") for name in left)  # swept when a day old
    assert aside <= {file.name for file in (path / "aside").iterdir()}
    assert len(there) > 260 * ROUNDS / 2 and kept > 0  # they did get to write
