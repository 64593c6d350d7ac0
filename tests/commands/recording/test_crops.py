"""Looking crops up and changing their figures for the season."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchround.core.crop.page import crop_figures
from benchround.core.crop.table import override
from benchround.crops.library import load_library
from benchround.desk import Desk
from tests.commands.recording.bench import Run, files_of, rounds_of
from tests.sample.story import DAY_0


def opened(folder: Path) -> Desk:
    return Desk.open(folder, today=lambda: DAY_0, read_only=True)


def figures_of(run: Run, crop: str) -> dict[str, dict[str, object]]:
    return {figure["name"]: figure for figure in run("crops", crop, "--json").value["figures"]}


def test_letters_list_crops_and_nothing_lists_all(season: Path, run: Run) -> None:
    every = run("crops", "--json").value["crops"]
    assert {line["key"] for line in every} == set(load_library())
    assert set(every[0]) == {"key", "name", "latin", "class"}
    some = [line["key"] for line in run("crops", "foxgl", "--json").value["crops"]]
    assert "foxglove" in some
    assert len(some) < len(every)


@pytest.mark.parametrize("name", ["cosmos", "Cosmos", "Cosmos bipinnatus", "mexican aster"])
def test_a_crop_s_page_tells_every_figure_with_its_source(
    season: Path, run: Run, name: str
) -> None:
    value = run("crops", name, "--json").value
    crop = load_library()["cosmos"]
    assert (value["key"], value["latin"]) == ("cosmos", crop.latin)
    assert set(value["figures"][0]) == {
        *("name", "value", "unit", "meaning", "source", "own", "library"),
    }
    found = {figure["name"]: figure for figure in value["figures"]}
    assert found["germination.days_first"]["value"] == crop.germination.days_first  # type: ignore[union-attr]  # cosmos has some
    assert found["succession_days"]["value"] == list(crop.succession_days or ())
    assert all(figure["source"] for figure in value["figures"])
    assert not any(figure["own"] for figure in value["figures"])


def test_every_figure_of_every_crop_reads_back_as_it_is_written() -> None:
    """What the page shows can be typed: set to itself it changes nothing but the source."""
    library = load_library()
    for key in library:
        crop = library[key]
        typed = {figure.name: figure.value for figure in crop_figures(crop, crop, {})}
        as_set = {
            name: value if isinstance(value, bool | int | float | str) else _typed(value)
            for name, value in typed.items()
            if value not in ([], None)
        }
        again = override(crop, as_set)
        changed = {f.name: f.value for f in crop_figures(again, crop, {})}
        assert changed == typed


def _typed(value: object) -> str:
    assert isinstance(value, list)
    both = all(isinstance(one, int) for one in value)
    return (" to " if both else ", ").join(map(str, value))


def test_a_changed_figure_counts_is_marked_and_can_be_given_back(season: Path, run: Run) -> None:
    before, library = rounds_of(season), load_library()["cosmos"]
    ran = run("crops", "cosmos", "set", "growing.pinch_pairs=5", "succession_days=20 to 40")
    assert ran.code == 0, ran.err
    crop = opened(season).season.crop("cosmos")
    assert (crop.growing.pinch_pairs, crop.succession_days) == (5, (20, 40))
    figures = figures_of(run, "cosmos")
    pairs = figures["growing.pinch_pairs"]
    assert (pairs["own"], pairs["value"]) == (True, 5)
    assert pairs["library"] == library.growing.pinch_pairs
    assert "own figure" in str(pairs["source"])
    assert "OWN" in run("crops", "cosmos").out
    assert run("crops", "cosmos", "unset", "growing.pinch_pairs").code == 0
    crop = opened(season).season.crop("cosmos")
    assert crop.growing.pinch_pairs == library.growing.pinch_pairs
    assert crop.succession_days == (20, 40)
    assert run("crops", "cosmos", "unset", "succession_days").code == 0
    assert opened(season).season.crop("cosmos") == library
    assert rounds_of(season) == before


def test_undo_takes_back_what_was_set(season: Path, run: Run) -> None:
    run("crops", "cosmos", "set", "growing.pinch_pairs=5")
    run("crops", "cosmos", "set", "growing.pinch_pairs=4")
    run("undo")
    assert opened(season).season.crop("cosmos").growing.pinch_pairs == 5
    run("undo")
    assert opened(season).season.crop("cosmos") == load_library()["cosmos"]


def test_setting_twice_and_unsetting_gives_the_library_back(season: Path, run: Run) -> None:
    run("crops", "cosmos", "set", "growing.pinch_pairs=5")
    run("crops", "cosmos", "set", "growing.pinch_pairs=4")
    run("crops", "cosmos", "unset", "growing.pinch_pairs")
    assert opened(season).season.crop("cosmos") == load_library()["cosmos"]


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (("cosmos", "set", "growing.pinch_pairs=many"), 1, "allowed"),
        (("cosmos", "set", "growing.pinch_pair=3"), 1, "growing.pinch_pairs"),
        (("cosmos", "set", "germination.days_first=60"), 1, "days_last"),
        (("cosmos", "set", "germination.base_c=inf"), 1, "allowed"),
        (("cosmos", "set", "windows.9.opens=last frost +0"), 1, "no such key"),
        (("cosmos", "set", "name=" + "x" * 81), 1, "letters"),
        (("cosmos", "set", "growing.pinch_pairs=3", "growing.pinch_pairs=4"), 1, "twice"),
        (("cosmos", "set", "pinch"), 1, "write name=value"),
        (("cosmos", "set"), 1, "set figure=value"),
        (("cosmos", "change", "a=b"), 1, "set figure=value"),
        (("cosmos", "unset", "growing.pinch_pairs"), 1, "not changed"),
        (("cosmoss", "set", "growing.pinch_pairs=3"), 1, "cosmos"),
        (("qqqq",), 1, "No crop is called"),
    ],
)
def test_what_cannot_be_is_refused_and_nothing_is_written(
    season: Path, run: Run, words: tuple[str, ...], code: int, said: str
) -> None:
    before = files_of(season)
    ran = run("crops", *words)
    assert ran.code == code
    assert said in ran.err
    assert files_of(season) == before


def test_without_a_season_the_library_can_be_read(
    tmp_path: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    assert run("crops", "leek").code == 0
    ran = run("crops", "leek", "set", "growing.pot_on=yes")
    assert (ran.code, "benchround new" in ran.err) == (1, True)


def test_the_sample_is_looked_at_as_in_other_commands(season: Path, run: Run) -> None:
    assert run("crops", "cosmos", "--sample").out.startswith("Cosmos")
    assert run("crops", "cosmos", "set", "growing.pinch_pairs=3", "--sample").code == 1
    assert run("today", "--season", str(season)).out == run("today", str(season)).out != ""
