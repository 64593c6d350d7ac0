"""Sow again: offered when the next sowing of a succession is due, and never a nag."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchround.core.book import RecordBook
from benchround.core.record import Draft, Figure, Kind, Record
from benchround.core.season import Season
from benchround.core.task import Family, Standing, Task
from benchround.crops.library import load_library
from benchround.rounds.answers import drafts_for
from benchround.rounds.build import build_round
from benchround.rounds.kept import KeptRound
from tests.folding import fold_season
from tests.rounds.small_season import LONDON, Story, begin, place

LIBRARY = load_library()
SOWN = date(2026, 5, 4)
MELBOURNE: dict[str, Figure] = {
    "lat_deg": -37.8,
    "lon_deg": 145.0,
    "last_frost": "09-20",
    "last_frost_safe": "10-15",
    "first_frost": "05-10",
}


def story(site: dict[str, Figure] | None = None) -> Story:
    told = begin(site)
    place(told, "bed", name="Bed", kind="bed")
    place(told, "bench", name="Bench", kind="bench", order=2)
    return told


def sow(told: Story, name: str, day: date, crop: str = "radish", where: str = "bed") -> None:
    told.tell(day, Kind.SOWN, name, crop=crop, variety="Red Tip", seeds=60, row_m=2, place=where)


def season(told: Story) -> Season:
    return fold_season(told.records, LIBRARY)


def offers(told: Story, day: date) -> list[Task]:
    return [t for t in build_round(season(told), day).tasks if t.family is Family.SOW_AGAIN]


def offered_days(told: Story, since: date, days: int = 200) -> list[date]:
    now = season(told)
    asked = (since + timedelta(days=n) for n in range(days))
    return [
        day
        for day in asked
        if any(t.family is Family.SOW_AGAIN for t in build_round(now, day).tasks)
    ]


def take(told: Story, drafts: tuple[Draft, ...], day: date) -> None:
    for draft in drafts:
        told.tell(day, draft.kind, draft.about, **draft.figures)


def test_radish_is_offered_after_a_week_or_two_for_a_fortnight() -> None:
    """SUC-02: 7 to 14 days, two charts (read); usual May warmth is short of June's harvest."""
    told = story()
    sow(told, "r1", SOWN)
    days = offered_days(told, SOWN)
    assert 7 <= (days[0] - SOWN).days <= 12
    assert days == [days[0] + timedelta(days=n) for n in range(len(days))]
    best = offers(told, days[0])[0].window.best
    assert 14 <= (best - SOWN).days <= 21
    assert (days[-1] - best).days == 13  # left alone, it goes by itself after one more gap


def test_it_is_quiet_says_why_and_never_overdue() -> None:
    told = story()
    sow(told, "r1", SOWN)
    now = season(told)
    for day in offered_days(told, SOWN):
        (task,) = [t for t in build_round(now, day).tasks if t.family is Family.SOW_AGAIN]
        assert task.standing in (Standing.EARLY, Standing.DUE)
        assert task.overdue_days == 0
        assert "Radish 'Red Tip' again: 60 seeds, Bed" in task.instruction
        assert any("last sown Mon 4 May" in figure for figure in task.why.figures)
        assert any("degree-days" in figure for figure in task.why.figures)
        assert any("last sowing" in figure for figure in task.why.figures)
        assert "read" in task.why.source


def test_a_tick_sows_the_next_batch_and_the_offer_moves_to_it() -> None:
    told = story()
    sow(told, "r1", SOWN)
    day = SOWN + timedelta(days=15)
    (task,) = offers(told, day)
    take(told, drafts_for(task, {"seeds": "45"}, season(told)), day)
    batch = season(told).batches["r1-2"]
    assert (batch.crop, batch.variety, batch.begun) == ("radish", "Red Tip", day)
    assert batch.sowing is not None and batch.sowing.seeds == 45
    assert offers(told, day) == []
    later = offered_days(told, day)
    (following,) = offers(told, later[0])
    assert following.about == "r1-2"
    assert following.ticks[0].about == "r1-3"


def test_no_more_this_year_is_heard_until_the_grower_sows_again() -> None:
    told = story()
    sow(told, "r1", SOWN)
    day = SOWN + timedelta(days=12)
    (task,) = offers(told, day)
    drafts = drafts_for(task, {"again": "no"}, season(told))
    assert [(d.kind, d.about, dict(d.figures)) for d in drafts] == [
        (Kind.DONE, "r1", {"family": "sow again"})
    ]
    take(told, drafts, day)
    assert offered_days(told, SOWN, 330) == []
    sow(told, "r2", date(2026, 7, 1))
    assert offered_days(told, date(2026, 7, 1))


def test_it_ends_when_the_last_sowing_is_past() -> None:
    """Radish: the library's window to 80 days after midsummer, about 9 September."""
    told = story()
    sow(told, "r1", date(2026, 8, 28))
    closes = date(2026, 6, 21) + timedelta(days=80)
    days = offered_days(told, date(2026, 8, 28))
    assert days and days[-1] == closes
    late = story()
    sow(late, "r1", closes)
    assert offered_days(late, closes, 365) == []


def test_last_years_crop_is_not_asked_for() -> None:
    told = story()
    sow(told, "r1", date(2025, 8, 20))
    assert offered_days(told, date(2026, 1, 1), 365) == []


@pytest.mark.parametrize("crop", ["leek", "tomato", "foxglove"])
def test_what_is_sown_once_is_not_asked_for_again(crop: str) -> None:
    told = story()
    sow(told, "x1", date(2026, 4, 20), crop, "bench")
    assert offered_days(told, date(2026, 4, 20)) == []


def test_only_the_last_sowing_asks_and_a_plan_takes_its_place() -> None:
    told = story()
    sow(told, "r1", SOWN)
    sow(told, "r2", SOWN + timedelta(days=6))
    day = SOWN + timedelta(days=22)
    assert [task.about for task in offers(told, day)] == ["r2"]
    told.tell(day, Kind.PLANNED, "r3", crop="radish", sow_on=str(day + timedelta(days=2)))
    assert offers(told, day) == []
    told.tell(day, Kind.CANCELLED, "r3")
    assert [task.about for task in offers(told, day)] == ["r2"]


def test_whatever_became_of_the_last_sowing_the_next_is_offered() -> None:
    told = story()
    sow(told, "r1", SOWN)
    told.tell(SOWN + timedelta(days=5), Kind.LOST, "r1", cause="slug")
    assert offered_days(told, SOWN)


def test_a_summer_over_the_turn_of_the_year_is_one_year() -> None:
    """At 38 S sowings of November are followed up in December and January."""
    told = story(MELBOURNE)
    sow(told, "c1", date(2026, 12, 20), "french-bean")
    days = offered_days(told, date(2026, 12, 20))
    assert days and days[0] < date(2027, 1, 15)
    assert days[-1] < date(2027, 3, 1)


def test_lettuce_in_hot_weather_is_sown_again_in_the_evening() -> None:
    told = story()
    sow(told, "l1", SOWN, "lettuce", "bench")
    day = offered_days(told, SOWN)[0]
    assert offers(told, day)[0].slot.name == "MORNING"
    told.tell(day, Kind.OUTLOOK, min_c=12.0, max_c=27.0)
    assert offers(told, day)[0].slot.name == "EVENING"


CROPS = ("radish", "lettuce", "cosmos")
EVENTS = st.lists(
    st.tuples(st.integers(0, 9), st.integers(0, 6), st.sampled_from(CROPS)), max_size=14
)


def _event(book: RecordBook, pick: int, crop: str, day: date) -> Draft:
    name = f"{crop}{pick % 3}"
    if pick == 9:
        return Draft(Kind.PACKET, "pk", {"crop": crop, "seeds": 50 + day.day})
    if name not in book.season.batches:
        said: dict[str, Figure] = {"crop": crop, "place": "bench", "packet": "pk"}
        return Draft(Kind.PLANNED if pick == 8 else Kind.SOWN, name, said)
    if pick % 2:
        return Draft(Kind.DONE, name, {"family": "sow again"})
    return Draft(Kind.NOTED, name)


@settings(max_examples=60, deadline=None)
@given(events=EVENTS)
def test_the_kept_round_is_the_fresh_one(events: list[tuple[int, int, str]]) -> None:
    """Property: sowings, plans, packets, refusals and ticks of the offer, in any order."""
    told = story(LONDON)
    book = RecordBook(told.records, lambda _: LIBRARY)
    kept, day, number = KeptRound(), SOWN, 0
    for pick, move, crop in events:
        day += timedelta(days=move)
        fresh = build_round(book.season, day)
        assert kept.round(book.season, day) == fresh
        offered = [task for task in fresh.tasks if task.family is Family.SOW_AGAIN]
        drafts: tuple[Draft, ...] = (_event(book, pick, crop, day),)
        if offered and pick < 4:
            drafts = drafts_for(offered[0], {"again": "no"} if pick else {}, book.season)
        for draft in drafts:
            number += 1
            new = Record(f"S{number:06d}", day, draft.kind, draft.about, draft.figures)
            book.add([replace(new)])
        assert kept.round(book.season, day) == build_round(book.season, day)
