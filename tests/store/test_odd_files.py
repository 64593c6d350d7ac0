"""One odd thing in the folder never keeps the season shut, nor a copy of it from being kept."""

from __future__ import annotations

import errno
import os
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest

from benchround.store.disk import LARGEST_BYTES
from benchround.store.errors import SeasonDamagedError
from tests.store.builders import DAY, START_MS, Scribe, filled_season, journal, page, reopen


def loop(path: Path) -> None:
    path.symlink_to(path.name)


def nowhere(path: Path) -> None:
    path.symlink_to("gone.json")


def pipe(path: Path) -> None:
    os.mkfifo(path)


def huge(path: Path) -> None:
    with path.open("wb") as file:
        file.truncate(LARGEST_BYTES + 1)  # takes no room: nothing was written


ODD: dict[str, Callable[[Path], None]] = {
    "loop": loop,
    "nowhere": nowhere,
    "pipe": pipe,
    "huge": huge,
}
WHERE = [
    (place, odd)
    for place in ("page of another", "own page", "own journal")
    for odd in ODD
    if (place, odd) != ("own journal", "nowhere")  # it holds nothing, and is removed as put in
]


@pytest.mark.parametrize(("place", "odd"), WHERE)
def test_what_is_no_readable_file_is_told_and_the_rest_is_read(
    tmp_path: Path, place: str, odd: str
) -> None:
    path, scribe = tmp_path / "s", Scribe("other", START_MS + 86_400_000)
    records = filled_season(path, 3)
    target = {
        "page of another": page(path, machine="desktop"),
        "own page": page(path, 2),
        "own journal": journal(path),
    }[place]
    ODD[odd](target)
    more = scribe.records(2)
    with reopen(path) as season:
        assert season.records() == records
        assert season.damaged == (target.name,)
        assert "it could not be opened" in season.problems[0]
        season.append(more)
        kept = season.keep_today(DAY)
        assert kept is not None
        assert season.restore(season.list_kept()[0]).records == ()
    with reopen(path) as again:
        assert again.records() == (*records, *more)


def test_a_file_the_disk_gives_no_answer_about(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "s"
    records = filled_season(path, 3)
    real = os.scandir

    class Spoilt:
        """A folder in which one file cannot be asked after, as on a failing stick."""

        def __init__(self, folder: Path) -> None:
            self.entries = [*real(folder)]

        def __enter__(self) -> list[object]:
            return [*self.entries, SpoiltEntry()]

        def __exit__(self, *_: object) -> None:
            return

    class SpoiltEntry:
        name = "desktop-2027-04-001.json"

        def is_dir(self) -> bool:
            return False

        def is_file(self) -> bool:
            return True

        def stat(self) -> os.stat_result:
            raise OSError(errno.EIO, os.strerror(errno.EIO))

    monkeypatch.setattr("benchround.store.contents.os.scandir", Spoilt)
    season = reopen(path, read_only=True)
    assert season.records() == records
    assert season.damaged == ("desktop-2027-04-001.json",)


def test_a_name_that_is_no_text_is_kept_too(tmp_path: Path) -> None:
    path = tmp_path / "s"
    records = filled_season(path, 3)
    odd = os.fsencode(page(path).parent) + b"/old \xff\xfe.json"
    os.rename(os.fsencode(page(path)), odd)
    with reopen(path) as season:
        assert season.records() == records
        kept = season.keep_today(DAY)
        assert kept is not None
        with zipfile.ZipFile(kept) as bundle:
            assert bundle.testzip() is None
        os.remove(odd)
        season.reload_if_changed()
        done = season.restore(season.list_kept()[0], preview=False)
        assert done.records == records
        assert season.records() == records


@pytest.mark.parametrize("spoil", ["loop", "pipe"])
def test_a_seasons_own_file_that_cannot_be_read_leaves_it_readable_and_comes_back(
    tmp_path: Path, spoil: str
) -> None:
    path = tmp_path / "s"
    records = filled_season(path, 3)
    with reopen(path) as season:
        season.keep_today(DAY)
    (path / "benchround.json").unlink()
    ODD[spoil](path / "benchround.json")
    with reopen(path) as season:
        assert season.read_only
        assert season.records() == records
        assert "cannot be opened" in season.problems[0]
        season.restore(season.list_kept()[0], preview=False)
    with reopen(path) as again:
        assert (again.name, again.read_only) == ("Test year", False)


def test_a_bundle_that_claims_to_hold_too_much_is_not_unpacked(tmp_path: Path) -> None:
    path = tmp_path / "s"
    filled_season(path, 3)
    keep = path / "keep" / f"{DAY.isoformat()}-desktop.zip"
    keep.parent.mkdir()
    with (
        zipfile.ZipFile(keep, "w", zipfile.ZIP_DEFLATED, compresslevel=1) as bundle,
        bundle.open("records/x.json", "w", force_zip64=True) as entry,
    ):
        for _ in range(31):
            entry.write(b" " * 10_000_000)
    with reopen(path) as season:
        assert season.newest_good("x.json") is None
        with pytest.raises(SeasonDamagedError, match="far too large"):
            season.restore(season.list_kept()[0])


def test_records_that_stand_in_a_copy_only_are_told(tmp_path: Path) -> None:
    path = tmp_path / "s"
    records = filled_season(path, 3)
    with reopen(path) as season:
        season.keep_today(DAY)
    page(path).unlink()
    with reopen(path) as season:
        assert season.records() == ()
        (problem,) = season.problems
        assert f"restore {DAY.isoformat()}-laptop" in problem
        season.restore(season.list_kept()[0], preview=False)
        assert season.problems == ()
        assert season.records() == records
