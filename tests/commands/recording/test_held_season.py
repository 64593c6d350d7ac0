"""A season another program holds, one that cannot be written, one that is not there."""

from __future__ import annotations

import errno
import os
from collections.abc import Iterator
from pathlib import Path

import pytest

from benchround.desk import Desk
from benchround.store.disk import Disk
from tests.commands.recording.bench import Run, files_of, round_of
from tests.sample.story import DAY_0

WRITING = [
    ("sow", "cosmos", "--seeds", "4"),
    ("note", "b20", "fed"),
    ("tick", "feed:b16"),
    ("put-off", "feed:b16", "--until", "+2"),
    ("undo", "0SAMPLE000111"),
    ("settings", "pets=no"),
    ("place", "set", "frame-a", "trays=3"),
    ("crops", "cosmos", "set", "growing.pinch_pairs=4"),
    ("crops", "cosmos", "unset", "growing.pinch_pairs"),
    ("keep",),
    ("restore", "latest"),
    ("merge", ".", "../other"),
]
READING = [
    ("records",),
    ("tick",),
    ("settings",),
    ("place",),
    ("crops", "cosmos"),
    ("keep", "--list"),
    ("restore", "latest", "--preview"),
    ("merge", ".", "../other", "--preview"),
    ("close-season", "../next", "--preview"),
]
NAMES = [" ".join(words) for words in WRITING]


@pytest.fixture
def prepared(season: Path, run: Run) -> Path:
    """A season with a kept copy, and another one beside it."""
    import shutil

    run("keep")
    shutil.copytree(season, season.parent / "other")
    return season


@pytest.fixture
def held(prepared: Path) -> Iterator[Path]:
    """The same, held for writing by another program: the screens, say."""
    desk = Desk.open(prepared, today=lambda: DAY_0)
    assert not desk.read_only
    yield prepared
    desk.close()


@pytest.mark.parametrize("words", WRITING, ids=NAMES)
def test_a_second_writer_is_turned_away_with_code_three(
    held: Path, run: Run, words: tuple[str, ...]
) -> None:
    before = files_of(held)
    ran = run(*words)
    assert ran.code == 3
    assert "already open" in ran.err
    assert ran.out == ""
    assert files_of(held) == before


@pytest.mark.parametrize("words", READING, ids=[" ".join(words) for words in READING])
def test_reading_goes_on_while_it_is_held(held: Path, run: Run, words: tuple[str, ...]) -> None:
    ran = run(*words)
    assert (ran.code, ran.err) == (0, "")


@pytest.mark.parametrize("words", WRITING, ids=NAMES)
def test_a_folder_that_cannot_be_written_is_named_and_left_as_it_is(
    prepared: Path, run: Run, words: tuple[str, ...], monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(self: Disk, path: Path) -> int:
        raise OSError(errno.EROFS, os.strerror(errno.EROFS))

    before, whole = files_of(prepared), round_of(prepared)
    monkeypatch.setattr(Disk, "create", refuse)
    ran = run(*words)
    assert ran.code == 1
    assert "can only be read" in ran.err
    assert ran.out == ""
    assert files_of(prepared) == before
    assert round_of(prepared) == whole


@pytest.mark.parametrize("words", READING, ids=[" ".join(words) for words in READING])
def test_it_can_still_be_read(
    prepared: Path, run: Run, words: tuple[str, ...], monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(self: Disk, path: Path) -> int:
        raise OSError(errno.EROFS, os.strerror(errno.EROFS))

    monkeypatch.setattr(Disk, "create", refuse)
    assert run(*words).code == 0


@pytest.mark.parametrize(
    ("words", "left"),
    [
        (("new", "../n", "--place", "Bench 1:bench"), 2),  # its own file, the lock
        (("close-season", "../n"), 2),
        (("close-season", "../n"), 3),  # what came along, before what ends the rest
        (("merge", ".", "../other", "--into", "../n"), 2),
    ],
)
def test_a_disk_that_fills_up_leaves_no_half_season(
    prepared: Path,
    run: Run,
    words: tuple[str, ...],
    left: int,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def fills_up(self: Disk, handle: int, data: bytes) -> None:
        nonlocal left
        left -= 1
        if left < 0:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        os.write(handle, data)

    before = files_of(prepared.parent)
    monkeypatch.setattr(Disk, "write", fills_up)
    ran = run(*words)
    assert ran.code == 1
    assert "full" in ran.err
    assert files_of(prepared.parent) == before


@pytest.mark.parametrize("words", [*WRITING[:-1], *READING[:4]], ids=lambda words: " ".join(words))
def test_without_a_season_it_is_said_how_to_begin_one(
    tmp_path: Path, run: Run, words: tuple[str, ...], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    monkeypatch.chdir(tmp_path)
    ran = run(*words)
    assert (ran.code, "benchround new" in ran.err) == (1, True)
    named = run(*words, "--season", str(tmp_path))
    assert (named.code, "no season in" in named.err) == (1, True)
    assert list(tmp_path.iterdir()) == []


def test_the_season_may_be_named(prepared: Path, run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(prepared.parent)
    assert run("note", "b20", "fed", "--season", str(prepared)).code == 0
    assert "fed" in run("records", "b20", "--newest", "1", "--season", str(prepared)).out
