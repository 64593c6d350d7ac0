"""The round kept between two actions, after records of every sort, against the fresh one."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchround.core.batch.batch import Batch
from benchround.core.book import RecordBook
from benchround.core.errors import IllegalRecordError
from benchround.core.keeping import Keeping
from benchround.core.record import Figure, Kind, Record
from benchround.core.season import Season
from benchround.core.task import Round, Task
from benchround.crops.library import load_library
from benchround.rounds import kept as kept_module
from benchround.rounds.asked_at import BatchFamily
from benchround.rounds.build import build_round, tasks_of
from benchround.rounds.kept import KeptRound
from tests.sample.story import DAY_0, records

PLACES = ("propagator", "bench-1", "bench-2", "frame-a", "frame-b", "bed-1")
FAMILIES = ("water", "look", "feed", "deadhead", "lids", "air", "count")

Said = tuple[Kind, str, dict[str, Figure]]


def of_place(pick: int, _: Season) -> Said:
    kind = (Kind.WATERED, Kind.MOISTURE, Kind.LID)[pick % 3]
    figures: dict[str, Figure] = {"of_place": True}
    if kind is Kind.MOISTURE:
        figures["said"] = ("still wet", "already dry")[pick // 3 % 2]
    if kind is Kind.LID:
        figures["plan"] = "09:00 off, 18:00 shut"
    return kind, PLACES[pick // 6 % len(PLACES)], figures


def of_batch(pick: int, season: Season) -> Said:
    names = list(season.batches)
    name = names[pick % len(names)]
    kinds: tuple[tuple[Kind, dict[str, Figure]], ...] = (
        (Kind.WATERED, {}),
        (Kind.MOVED, {"place": PLACES[pick // 7 % len(PLACES)]}),
        (Kind.LABEL_LOST, {}),
        (Kind.GOING_OVER, {}),
        (Kind.COMPOSTED, {}),
        (Kind.HARDENING_BEGUN, {"place": "frame-b"}),
        (Kind.RELABELLED, {"crop": "unknown"}),
        (Kind.SEED_SAVED, {"packet": "own"}),
        (Kind.COUNTED, {"count": pick % 20}),
        (Kind.MOISTURE, {"said": "already dry"}),
    )
    kind, figures = kinds[pick // 50 % len(kinds)]
    return kind, name, figures


def of_packet(pick: int, season: Season) -> Said:
    names = [*(record.about for record in season.packet_records), "own", "b12-seed"]
    crop = ("cosmos", "foxglove", "lettuce")[pick % 3]
    figures: dict[str, Figure] = {"crop": crop, "year": 2024 + pick % 3, "seeds": pick % 90}
    return Kind.PACKET, names[pick % len(names)], figures


def put_off(pick: int, season: Season) -> Said:
    names = [*season.batches, *PLACES, ""]
    family, name = FAMILIES[pick % len(FAMILIES)], names[pick // 7 % len(names)]
    if pick % 2:
        return Kind.DONE, name, {"family": family}
    until = (DAY_0 + timedelta(days=pick % 5)).isoformat()
    return Kind.PUT_OFF, name, {"family": family, "until": until}


def of_site(pick: int, _: Season) -> Said:
    if pick % 3:
        return Kind.READING, "frame-a" if pick % 2 else "", {"min_c": pick % 9, "max_c": 20}
    return Kind.SETTING, "compost", {"value": ("peat", "bark-rich")[pick % 2]}


TELLING: tuple[Callable[[int, Season], Said], ...] = (
    of_place,
    of_batch,
    of_batch,
    of_packet,
    put_off,
    of_site,
)
PICKS = st.lists(st.tuples(st.integers(0, 10_000), st.booleans()), max_size=12)


def taken(book: RecordBook, number: int, said: Said) -> Record | None:
    kind, about, figures = said
    record = Record(f"1K{number:06d}", DAY_0, kind, about, figures)
    try:
        book.check([record])
    except IllegalRecordError:
        return None
    book.add([record])
    return record


@settings(max_examples=30, deadline=None)
@given(picks=PICKS)
def test_the_kept_round_is_the_fresh_one_after_any_record(picks: list[tuple[int, bool]]) -> None:
    """Property; the fresh season is folded from the records alone."""
    library = load_library()
    told = list(records())
    book, kept = RecordBook(told, lambda _: library), KeptRound()
    for number, (pick, back) in enumerate(picks):
        record = taken(book, number, TELLING[pick % len(TELLING)](pick // 7, book.season))
        if record is None:
            continue
        told.append(record)
        fresh = RecordBook(told, lambda _: library).season
        assert kept.round(book.season, DAY_0) == build_round(fresh, DAY_0)
        if back:
            undone = Record(f"2K{number:06d}", DAY_0, Kind.WITHDRAWN, "", {"record": record.id})
            told.append(undone)
            book.add([undone])
            assert kept.round(book.season, DAY_0) == build_round(book.season, DAY_0)


@settings(max_examples=30, deadline=None)
@given(picks=PICKS)
def test_what_is_kept_from_season_to_season_changes_no_answer(
    picks: list[tuple[int, bool]],
) -> None:
    """Property: every season of a book, asked in any order, answers as one that keeps nothing."""
    library = load_library()
    book = RecordBook(records(), lambda _: library)
    seasons = [book.season]
    for number, (pick, _) in enumerate(picks):
        if taken(book, number, of_batch(pick, book.season)) is not None:
            seasons.append(book.season)
    for season in (seasons[0], seasons[-1], *reversed(seasons)):
        alone = replace(season, keeping=Keeping())
        shared = replace(season)
        assert shared.hardening_place == alone.hardening_place
        assert shared.uncleared == alone.uncleared
        assert shared.nameless == alone.nameless
        assert shared.packets == alone.packets
        assert shared.last_sown == alone.last_sown
        for place in season.places:
            assert shared.standing_at(place.code) == alone.standing_at(place.code)
        for crop in {batch.crop for batch in season.batches.values()}:
            assert shared.learned(crop) == alone.learned(crop)
        for packet in season.packets:
            assert shared.learned_of_packet(packet) == alone.learned_of_packet(packet)


def asked_after(monkeypatch: pytest.MonkeyPatch, said: Said) -> set[str]:
    """The batches that are asked again after one record."""
    library = load_library()
    book, kept = RecordBook(records(), lambda _: library), KeptRound()
    kept.round(book.season, DAY_0)
    asked: set[str] = set()

    def noted(
        season: Season, batches: list[Batch], day: date, families: tuple[BatchFamily, ...]
    ) -> dict[str, list[Task]]:
        asked.update(batch.id for batch in batches)
        return tasks_of(season, batches, day, families)

    monkeypatch.setattr(kept_module, "tasks_of", noted)
    assert taken(book, 0, said) is not None
    kept.round(book.season, DAY_0)
    return asked


@pytest.mark.parametrize(
    ("said", "touched"),
    [
        ((Kind.WATERED, "b02", {}), {"b02", "b32"}),
        ((Kind.PUT_OFF, "b02", {"family": "water", "until": "2026-05-30"}), {"b02"}),
        ((Kind.DONE, "frame-a", {"family": "lids"}), set()),
        ((Kind.PACKET, "p99", {"crop": "zinnia", "seeds": 9}), {"b06"}),
    ],
    ids=[
        "watered, and the nameless tray that may be it",
        "put off",
        "a place's task",
        "a packet of zinnias",
    ],
)
def test_only_what_a_record_could_have_changed_is_asked_again(
    monkeypatch: pytest.MonkeyPatch, said: Said, touched: set[str]
) -> None:
    assert asked_after(monkeypatch, said) == touched


def test_a_round_that_failed_half_way_is_made_whole_the_next_time(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    library = load_library()
    book, kept = RecordBook(records(), lambda _: library), KeptRound()
    kept.round(book.season, DAY_0)
    assert taken(book, 0, (Kind.WATERED, "b02", {})) is not None

    def broken(*_: object) -> Round:
        raise MemoryError

    with monkeypatch.context() as patch:
        patch.setattr(kept_module, "site_tasks", broken)
        with pytest.raises(MemoryError):
            kept.round(book.season, DAY_0)
    assert kept.round(book.season, DAY_0) == build_round(book.season, DAY_0)
