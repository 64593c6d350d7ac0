"""A season kept in git and merged with the real program."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

import pytest

from benchround.store.folder import SeasonFolder
from tests.store.builders import Scribe, journal, new_season, page, reopen

pytestmark = pytest.mark.skipif(shutil.which("git") is None, reason="git is not installed")


def git(path: Path, *words: str, fails: bool = False) -> str:
    asked = ["git", "-c", "user.name=Grower", "-c", "user.email=grower@example.invalid", *words]
    quiet = {"GIT_CONFIG_GLOBAL": "/dev/null", "GIT_CONFIG_SYSTEM": "/dev/null"}
    run = subprocess.run(
        asked,
        cwd=path,
        env={"PATH": "/usr/local/bin:/usr/bin:/bin", "HOME": str(path), **quiet},
        capture_output=True,
        text=True,
        check=False,
    )
    assert (run.returncode != 0) == fails, run.stdout + run.stderr
    return run.stdout


def commit(path: Path) -> None:
    git(path, "add", "benchround.json", "records")
    git(path, "commit", "-q", "-m", "records")


def two_clones(tmp_path: Path) -> tuple[Path, Path, Scribe]:
    first, second, scribe = tmp_path / "first", tmp_path / "second", Scribe()
    with new_season(first) as season:
        season.append(scribe.records(3))
    git(first, "init", "-q", "-b", "main")
    commit(first)
    git(tmp_path, "clone", "-q", str(first), str(second))
    return first, second, scribe


def written(path: Path, machine: str, scribe: Scribe) -> set[str]:
    with reopen(path, machine) as season:
        records = scribe.records(2)
        season.append(records)
    commit(path)
    return {record.id for record in records}


def written_and_left_open(path: Path, scribe: Scribe) -> set[str]:
    """Two actions committed while the season is open, then the program is cut off."""
    records = scribe.records(3)
    season = reopen(path)
    season.append(records[:1])
    season.append(records[1:])
    commit(path)
    (path / "held-laptop.lock").unlink()
    return {record.id for record in records}


def ids(season: SeasonFolder) -> set[str]:
    return {record.id for record in season.records()}


def test_two_computers_merge_without_a_conflict(tmp_path: Path) -> None:
    first, second, scribe = two_clones(tmp_path)
    theirs = written(first, "laptop", scribe)
    ours = written(second, "desktop", Scribe("desktop"))
    git(second, "pull", "-q", "--no-rebase", "--no-edit", "origin", "main")
    with reopen(second, "desktop") as season:
        assert ids(season) >= theirs | ours
        assert len(season.records()) == 7
        assert season.problems == ()


def test_both_sides_of_a_conflict_are_read_and_can_be_settled(tmp_path: Path) -> None:
    first, second, scribe = two_clones(tmp_path)
    theirs = written(first, "laptop", scribe)
    ours = written(second, "laptop", scribe)
    git(second, "pull", "-q", "--no-rebase", "--no-edit", "origin", "main", fails=True)
    conflict = page(second).read_bytes()
    assert b"\n<<<<<<< " in conflict
    with reopen(second) as season:
        assert len(season.records()) == 7
        assert ids(season) >= theirs | ours
        assert "both sides of an unfinished git merge" in season.problems[0]
        season.append(scribe.records(1))
        assert page(second).read_bytes() == conflict
        before = season.records()
        season.set_aside(page(second).name)
        assert season.records() == before
        assert season.problems == ()


def test_a_merge_by_union_loses_nothing(tmp_path: Path) -> None:
    first, second, scribe = two_clones(tmp_path)
    (second / ".git" / "info" / "attributes").write_text("*.json merge=union\n")
    theirs = written(first, "laptop", scribe)
    ours = written(second, "laptop", scribe)
    git(second, "pull", "-q", "--no-rebase", "--no-edit", "origin", "main")
    with reopen(second) as season:
        assert len(season.records()) == 7
        assert ids(season) >= theirs | ours


def test_both_sides_of_a_conflict_in_a_journal_are_read_and_can_be_settled(tmp_path: Path) -> None:
    first, second, scribe = two_clones(tmp_path)
    theirs = written_and_left_open(first, scribe)
    ours = written_and_left_open(second, scribe)
    git(second, "pull", "-q", "--no-rebase", "--no-edit", "origin", "main", fails=True)
    conflict = journal(second).read_bytes()
    assert b"\n<<<<<<< " in b"\n" + conflict
    with reopen(second) as season:
        assert len(season.records()) == 9
        assert ids(season) >= theirs | ours
        assert "both sides of an unfinished git merge" in season.problems[0]
        season.append(scribe.records(1))
        assert journal(second).read_bytes() == conflict
        before = season.records()
        season.set_aside(journal(second).name)
        assert season.records() == before
        assert season.problems == ()
    assert len(reopen(second).records()) == 10


def test_a_merge_by_union_of_journals_loses_nothing(tmp_path: Path) -> None:
    first, second, scribe = two_clones(tmp_path)
    (second / ".git" / "info" / "attributes").write_text("*.jsonl merge=union\n")
    theirs = written_and_left_open(first, scribe)
    ours = written_and_left_open(second, scribe)
    git(second, "pull", "-q", "--no-rebase", "--no-edit", "origin", "main")
    with reopen(second) as season:
        assert len(season.records()) == 9
        assert ids(season) >= theirs | ours
        assert season.problems == ()
    assert not journal(second).exists()


def test_a_journal_that_the_other_side_has_put_into_its_page_tells_nothing_twice(
    tmp_path: Path,
) -> None:
    first, second, scribe = two_clones(tmp_path)
    written_and_left_open(first, scribe)
    git(second, "pull", "-q", "--no-rebase", "--no-edit", "origin", "main")
    written(first, "laptop", scribe)
    git(second, "pull", "-q", "--no-rebase", "--no-edit", "origin", "main")
    with reopen(second, "desktop") as season:
        assert len(season.records()) == 8
        assert season.problems == ()
