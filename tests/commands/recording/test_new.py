"""Beginning a season: what is written, what is refused, and that nothing is left half done."""

from __future__ import annotations

import errno
import os
from pathlib import Path

import pytest

from benchround.desk import Desk
from benchround.store.disk import Disk
from benchround.whereabouts import find_season
from tests.commands.recording.bench import Run
from tests.sample.story import DAY_0

MINIMA = (
    Path(__file__).resolve().parents[2]
    / "data"
    / "weather"
    / "ghcnd_USC00010655_minima_2003-2024.csv"
)


def begun(folder: Path) -> Desk:
    return Desk.open(folder, today=lambda: DAY_0, read_only=True)


def test_a_season_is_begun_with_its_site_and_its_places_in_walking_order(
    season: Path, tmp_path: Path, run: Run
) -> None:
    ran = run(
        "new",
        str(tmp_path / "garden"),
        *("--name", "Garden 2027", "--lat", "-41.3", "--lon", "174.8"),
        *("--last-frost", "10-01", "--last-frost-safe", "10-20", "--first-frost", "05-15"),
        *("--place", "Bench 1:bench", "--place", "Bench 1:greenhouse", "--place", "Frame: A:frame"),
        "--json",
    )
    assert ran.code == 0, ran.err
    desk = begun(tmp_path / "garden")
    site = desk.season.site
    assert (site.lat_deg, site.lon_deg) == (-41.3, 174.8)
    assert (site.last_frost, site.last_frost_safe, site.first_frost) == (
        (10, 1),
        (10, 20),
        (5, 15),
    )
    assert [(p.code, p.name, str(p.kind), p.order) for p in desk.season.places] == [
        ("bench-1", "Bench 1", "bench", 1),
        ("bench-1-2", "Bench 1", "greenhouse bench", 2),
        ("frame-a", "Frame: A", "frame", 3),
    ]
    assert ran.value["name"] == desk.folder.name == "Garden 2027"
    assert len(ran.value["written"]) == len(desk.folder.records()) == 4
    assert not list(tmp_path.glob(".*.new"))


def test_the_name_of_a_new_season_is_forced_to_the_disk_last(
    season: Path, tmp_path: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = tmp_path / "garden"
    forced: list[tuple[Path, bool]] = []
    monkeypatch.setattr(
        Disk, "sync_folder", lambda disk, path: forced.append((path, folder.exists()))
    )
    assert run("new", str(folder)).code == 0
    assert forced[-1] == (tmp_path, True)


def test_a_disk_that_is_full_at_once_leaves_nothing_behind(
    season: Path, tmp_path: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(disk: Disk, handle: int, data: bytes) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    before = sorted(tmp_path.iterdir())
    monkeypatch.setattr(Disk, "write", full)
    ran = run("new", str(tmp_path / "garden"))
    assert ran.code == 1
    assert "is full" in ran.err
    assert sorted(tmp_path.iterdir()) == before


def test_frost_dates_come_out_of_a_file_of_minima(season: Path, tmp_path: Path, run: Run) -> None:
    """NOAA GHCN-Daily USC00010655 by the Utah Climate Center's rule (derived)."""
    folder = tmp_path / "dry-hill"
    assert run("new", str(folder), "--lat", "34.7", "--frost-file", str(MINIMA)).code == 0
    site = begun(folder).season.site
    assert site.last_frost == (3, 31)
    assert site.last_frost_safe == (4, 17)
    assert site.first_frost == (10, 31)


def test_the_new_season_is_the_one_used_from_then_on(
    season: Path, tmp_path: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    run("new", str(tmp_path / "garden"))
    monkeypatch.chdir(tmp_path)
    assert find_season() == tmp_path / "garden"
    assert begun(tmp_path / "garden").folder.name == "garden"


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--last-frost", "02-29"), "no day of every year"),
        (("--last-frost", "5-11"), "05-11"),
        (("--lat", "91"), "from -90 to 90"),
        (("--lat", "north"), "is not a number"),
        (("--place", "Bench 1"), "NAME:KIND"),
        (("--place", "Bench 1:bank"), "bench"),
        (("--place", "!!:bed"), "No code can be made"),
        (("--place", "Site:bed"), "means something else"),
        (("--frost-file", "none.csv"), "--lat"),
        (("--lat", "50", "--frost-file", "none.csv"), "cannot be read"),
        (("--lat", "50", "--frost-file", str(MINIMA), "--first-frost", "10-10"), "not both"),
        (("--name", "x" * 201), "too many"),
    ],
)
def test_what_cannot_be_is_refused_and_no_folder_is_left(
    season: Path, tmp_path: Path, run: Run, words: tuple[str, ...], said: str
) -> None:
    before = sorted(tmp_path.iterdir())
    ran = run("new", str(tmp_path / "garden"), *words)
    assert ran.code == 1
    assert said in ran.err
    assert sorted(tmp_path.iterdir()) == before


def test_a_folder_that_is_in_use_is_left_alone(season: Path, tmp_path: Path, run: Run) -> None:
    assert "holds a season already" in run("new", str(season)).err
    (tmp_path / "photos").mkdir()
    (tmp_path / "photos" / "frame.jpg").write_bytes(b"x")
    assert "not empty" in run("new", str(tmp_path / "photos")).err
    assert "is a file" in run("new", str(tmp_path / "photos" / "frame.jpg")).err
    assert (tmp_path / "photos" / "frame.jpg").read_bytes() == b"x"


def test_an_empty_folder_may_be_used(season: Path, tmp_path: Path, run: Run) -> None:
    (tmp_path / "empty").mkdir()
    assert run("new", str(tmp_path / "empty")).code == 0
    assert begun(tmp_path / "empty").folder.name == "empty"
