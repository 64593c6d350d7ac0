"""Two folders of one season brought together, either way round and again and again."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from benchround.desk import Desk
from tests.commands.recording.bench import Run, files_of, round_of, rounds_of
from tests.sample.story import DAY_0


@pytest.fixture
def stick(season: Path, tmp_path: Path) -> Path:
    """The same season on a stick."""
    return Path(shutil.copytree(season, tmp_path / "stick"))


def told(folder: Path) -> list[str]:
    desk = Desk.open(folder, today=lambda: DAY_0, read_only=True)
    found = [record.id for record in desk.folder.records()]
    desk.close()
    return found


def test_each_gets_what_the_other_has(season: Path, stick: Path, run: Run) -> None:
    run("tick", "feed:b16")
    run("tick", "turn:b02", "--season", str(stick))
    before = files_of(season)
    preview = run("merge", ".", str(stick), "--preview", "--json").value
    assert files_of(season) == before
    assert set(preview) == {
        *("preview", "into", "only_in_a", "only_in_b", "told_two_ways"),
        *("clashing_batches", "records"),
    }
    assert (preview["only_in_a"], preview["only_in_b"]) == (1, 1)
    on_stick = files_of(stick)
    assert run("merge", ".", str(stick)).code == 0
    assert files_of(stick) == on_stick
    assert run("merge", str(stick), ".").code == 0
    assert told(season) == told(stick)
    assert rounds_of(season) == rounds_of(stick)
    again = run("merge", ".", str(stick), "--json").value
    assert (again["only_in_a"], again["only_in_b"]) == (0, 0)


def test_both_go_into_a_third(season: Path, stick: Path, tmp_path: Path, run: Run) -> None:
    run("tick", "feed:b16")
    run("tick", "turn:b02", "--season", str(stick))
    before = files_of(season), files_of(stick)
    both = tmp_path / "both"
    assert run("merge", ".", str(stick), "--into", str(both)).code == 0
    assert (files_of(season), files_of(stick)) == before
    assert set(told(both)) == {*told(season), *told(stick)}
    run("merge", ".", str(stick))
    assert round_of(both) == round_of(season)


def test_one_id_for_two_sowings_is_asked_about(season: Path, stick: Path, run: Run) -> None:
    run("sow", "cosmos", "--seeds", "4")
    run("sow", "leek", "--seeds", "9", "--season", str(stick))
    before = files_of(season)
    ran = run("merge", ".", str(stick))
    assert ran.code == 1
    assert "b34 is cosmos" in ran.err
    assert "leek" in ran.err
    assert files_of(season) == before
    preview = run("merge", ".", str(stick), "--preview", "--json").value
    assert preview["clashing_batches"] == ["b34"]
    assert run("merge", ".", str(stick), "--anyway").code == 0
    assert any("b34" in doubt for doubt in round_of(season).doubts)


def test_a_record_told_in_two_ways_is_named(season: Path, stick: Path, run: Run) -> None:
    [page] = (stick / "records").glob("*.json")
    text = page.read_text(encoding="utf-8")
    document = json.loads(text)
    first = next(d for d in document["records"].values() if d["kind"] == "noted")
    page.write_text(text.replace(first["note"], first["note"] + " indeed"), encoding="utf-8")
    value = run("merge", ".", str(stick), "--json").value
    assert value["told_two_ways"] == [first["id"]]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ((".", "."), "one and the same"),
        ((".", "nowhere"), "no season in"),
        ((".", "{stick}", "--into", "."), "holds a season already"),
    ],
)
def test_what_cannot_be_merged_is_refused(
    season: Path, stick: Path, run: Run, words: tuple[str, ...], said: str
) -> None:
    before = files_of(season)
    ran = run("merge", *(word.format(stick=stick) for word in words))
    assert (ran.code, said in ran.err) == (1, True)
    assert files_of(season) == before
