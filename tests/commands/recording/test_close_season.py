"""Closing a season: what lives on, what was learned, and that the old folder stays as it was."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from benchround.core.crop.crop import PlantClass
from benchround.core.record import Draft, Kind, live
from benchround.core.season_close import DAILY_CARE, LEFT_NOTE, close_season
from benchround.desk import Desk
from benchround.whereabouts import find_season
from tests.commands.recording.bench import Run, files_of
from tests.sample.story import DAY_0

AUTUMN = date(2026, 11, 20)


def opened(folder: Path, day: date = DAY_0) -> Desk:
    return Desk.open(folder, today=lambda: day, read_only=True)


@pytest.fixture
def closed(season: Path, tmp_path: Path, run: Run) -> Iterator[tuple[Desk, Desk]]:
    """The old season and the one after it."""
    ran = run("close-season", str(tmp_path / "next"), "--leave", "b01", "--leave", "b26")
    assert ran.code == 0, ran.err
    old, new = opened(season), opened(tmp_path / "next")
    yield old, new
    old.close()
    new.close()


LASTING = (
    PlantClass.BIENNIAL,
    PlantClass.HARDY_PERENNIAL,
    PlantClass.TENDER_PERENNIAL,
    PlantClass.BULB,
)


def test_what_lasts_is_carried_over_with_its_whole_story(closed: tuple[Desk, Desk]) -> None:
    old, new = closed
    lasting = [
        batch
        for batch in old.season.batches.values()
        if old.season.crop(batch.crop).plant_class in LASTING and not batch.ended
    ]
    assert len(lasting) >= 10
    for batch in lasting:
        if batch.id != "b26":
            assert new.season.batches[batch.id] == batch


def test_places_site_packets_settings_and_changed_crops_come_along(
    season: Path, tmp_path: Path, run: Run
) -> None:
    run("settings", "feed_every_days=9")
    run("settings", "feed_every_days=10")
    run("crops", "cosmos", "set", "growing.pinch_pairs=5")
    run("note", "long tray", "container", "cell_ml=60", "length_m=0.5", "width_m=0.1")
    run("note", "C14:foxglove", "caution-read")
    run("close-season", str(tmp_path / "next"))
    old, new = opened(season).season, opened(tmp_path / "next").season
    assert (new.site, new.places) == (old.site, old.places)
    assert new.packets == old.packets
    assert new.containers == old.containers
    assert new.cautions_read == old.cautions_read
    assert {**new.settings, "carried_from": ""} == {**old.settings, "carried_from": ""}
    assert new.crop("cosmos").growing.pinch_pairs == 5
    records = opened(tmp_path / "next").folder.records()
    assert sum(r.about == "feed_every_days" for r in records) == 1


def test_everything_learned_is_known_in_the_new_season(closed: tuple[Desk, Desk]) -> None:
    old, new = closed
    crops = {batch.crop for batch in old.season.batches.values()}
    taught = 0
    for crop in crops:
        before = old.season.learned(crop)
        assert new.season.learned(crop) == before
        taught += before is not None and bool(before.share and before.share.batches)
    assert taught >= 3


def test_counts_and_losses_of_what_stays_behind_are_kept(closed: tuple[Desk, Desk]) -> None:
    old, new = closed
    for name, batch in old.season.batches.items():
        after = new.season.batches[name]
        assert after.tally.sown == batch.tally.sown
        assert after.tally.up == batch.tally.up
        assert after.tally.losses == batch.tally.losses
        assert after.sowing == batch.sowing


def test_what_is_left_alive_ends_and_asks_for_nothing(closed: tuple[Desk, Desk]) -> None:
    old, new = closed
    left = {"b01", "b07", "b26"}
    assert all(not old.season.batches[name].ended for name in left)
    assert all(new.season.batches[name].ended for name in left)
    assert {task.about for task in old.round(DAY_0).tasks} & left
    for days in (0, 7, 30):
        asked = {task.about for task in new.round(DAY_0 + timedelta(days=days)).tasks}
        assert not asked & left
    assert new.season.doubts == old.season.doubts


def test_the_tasks_of_what_lives_on_are_the_same_the_next_morning(
    closed: tuple[Desk, Desk],
) -> None:
    old, new = closed
    left = {"b01", "b07", "b26"}
    for days in (0, 1, 20):
        day = DAY_0 + timedelta(days=days)
        before = {t.key: t for t in old.round(day).tasks if t.about not in left}
        after = {t.key: t for t in new.round(day).tasks}
        of_batches = {key for key, task in before.items() if task.crop}
        assert of_batches <= set(after)
        # a line may name one that was left behind as its neighbour under the lid
        alone = {k for k in of_batches if not any(name in before[k].instruction for name in left)}
        assert len(alone) > len(of_batches) / 2
        assert all(after[key].instruction == before[key].instruction for key in alone)


def test_records_keep_their_ids_and_daily_care_stays_behind(closed: tuple[Desk, Desk]) -> None:
    old, new = closed
    by_id = {record.id: record for record in live(old.folder.records())}
    came = [record for record in new.folder.records() if record.id in by_id]
    fresh = [record for record in new.folder.records() if record.id not in by_id]
    assert all(by_id[record.id] == record for record in came)
    assert {record.kind for record in fresh} == {Kind.COMPOSTED, Kind.CANCELLED, Kind.SETTING}
    assert {r.note for r in fresh if r.kind is not Kind.SETTING} == {LEFT_NOTE}
    carried = {b.id for b in new.season.batches.values() if not b.ended}
    assert not [
        r for r in came if r.kind in DAILY_CARE and r.about not in carried and not r.figures
    ]
    assert len(came) < len(by_id)


def test_the_old_folder_is_not_touched_and_the_new_one_is_used(
    season: Path, tmp_path: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = files_of(season)
    preview = run("close-season", str(tmp_path / "next"), "--preview", "--json").value
    assert not (tmp_path / "next").exists()
    done = run("close-season", str(tmp_path / "next"), "--name", "Garden 27", "--json").value
    assert files_of(season) == before
    assert {**preview, "preview": False, "name": "Garden 27"} == done
    assert set(done) == {
        *("preview", "folder", "name", "carried", "left_behind", "records", "records_left"),
    }
    assert set(done["carried"][0]) == {"batch", "crop", "variety", "stage", "because"}
    monkeypatch.chdir(tmp_path)
    assert find_season() == tmp_path / "next"
    assert opened(tmp_path / "next").folder.name == "Garden 27"


def test_undo_in_the_new_season_never_reaches_back(season: Path, tmp_path: Path, run: Run) -> None:
    run("note", "b20", "fed")
    run("close-season", str(tmp_path / "next"))
    ran = run("undo", "--season", str(tmp_path / "next"))
    assert (ran.code, "left to take back" in ran.err) == (1, True)


def test_closing_twice_over_and_merging_adds_nothing(
    season: Path, tmp_path: Path, run: Run
) -> None:
    run("close-season", str(tmp_path / "next"))
    run("close-season", str(tmp_path / "later"), "--season", str(tmp_path / "next"))
    value = run("merge", str(tmp_path / "later"), str(tmp_path / "next"), "--json").value
    assert not [record for record in value["records"] if record["kind"] == "sown"]


def test_batch_ids_go_on_counting(closed: tuple[Desk, Desk]) -> None:
    old, new = closed
    assert new.free_batch_id() == old.free_batch_id()


def test_hardy_vegetables_stay_and_tender_ones_do_not(season: Path, run: Run) -> None:
    desk = Desk.open(season, today=lambda: AUTUMN)
    for name, crop in (("b80", "kale"), ("b81", "tomato"), ("b82", "chives"), ("b83", "basil")):
        desk.record([Draft(Kind.SOWN, name, {"crop": crop, "seeds": 9}, day=date(2026, 4, 1))])
        desk.record([Draft(Kind.COUNTED, name, {"count": 9}, day=date(2026, 4, 20))])
        desk.record([Draft(Kind.PLANTED_OUT, name, {"count": 9}, day=date(2026, 6, 1))])
    closing = close_season(desk.folder.records(), desk.season, AUTUMN)
    desk.close()
    fates = {fate.batch: fate.carried for fate in closing.fates}
    assert [fates[name] for name in ("b80", "b81", "b82", "b83")] == [True, False, True, False]


def test_only_weather_that_still_tells_comes_along(season: Path, run: Run) -> None:
    desk = Desk.open(season, today=lambda: DAY_0)
    day = date(2026, 5, 10)
    for low in (3, 4):
        desk.record([Draft(Kind.OUTLOOK, "", {"min_c": low, "rain_mm": 1}, day=day)])
    desk.record([Draft(Kind.OUTLOOK, "", {"min_c": 5}, day=day)])
    closing = close_season(desk.folder.records(), desk.season, DAY_0)
    kept = [r for r in closing.records if r.kind is Kind.OUTLOOK and r.day == day]
    assert [dict(r.figures) for r in kept] == [{"min_c": 4, "rain_mm": 1}, {"min_c": 5}]
    desk.close()


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("{season}",), "holds a season already"),
        (("{next}", "--also", "b77"), "b07"),
        (("{next}", "--name", "x" * 201), "too many"),
    ],
)
def test_what_cannot_be_is_refused(
    season: Path, tmp_path: Path, run: Run, words: tuple[str, ...], said: str
) -> None:
    places = {"season": season, "next": tmp_path / "next"}
    ran = run("close-season", *(word.format(**places) for word in words))
    assert (ran.code, said in ran.err) == (1, True)
    assert not (tmp_path / "next").exists()


def test_what_a_newer_program_wrote_is_said_to_stay_behind(
    season: Path, tmp_path: Path, run: Run
) -> None:
    [page] = (season / "records").glob("*.json")
    text = page.read_text(encoding="utf-8")
    page.write_text(text.replace('"kind": "turned"', '"kind": "sung to"', 1), encoding="utf-8")
    ran = run("close-season", str(tmp_path / "next"))
    assert ran.code == 0
    assert "sung to" in ran.err
    assert "does not come along" in ran.err
