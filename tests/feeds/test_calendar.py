"""The calendar, held against RFC 5545 and read back with icalendar and dateutil."""

from __future__ import annotations

import io
import re
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from dateutil import parser as dateutil_parser
from dateutil import tz as dateutil_tz
from hypothesis import given, settings
from hypothesis import strategies as st
from icalendar import Calendar

from benchround.core.season import Season
from benchround.feeds.calendar import calendar_data, uid_of
from benchround.feeds.calendar_told import Told, follow
from benchround.feeds.coming import BY_DAY, Event, coming
from benchround.feeds.letters import one_line
from benchround.plain import title
from benchround.rounds.build import build_round, common_tasks
from tests.feeds.seasons import HOSTILE, empty_season, hostile_season, many_season, sample_season
from tests.sample.story import DAY_0

STAMP = datetime(2026, 5, 27, 6, tzinfo=UTC)
SITE = "The sample season|2026-05-27"


def event(day: date, at: time | None = None, *, name: str = "x", text: str = "") -> Event:
    return Event("feed:b16:", day, at, name, text, "", "feed")


def told(*events: Event, stamp: datetime = STAMP) -> tuple[Told, ...]:
    return follow({}, events, first=date(1900, 1, 1), last=date(9999, 1, 1), stamp=stamp)[0]


def written(*events: Event, zone: str = "") -> str:
    data, _ = calendar_data(told(*events), name="n", site=SITE, stamp=STAMP, timezone=zone)
    return data.decode("utf-8")


def unfolded(text: str) -> list[str]:
    """RFC 5545, 3.1: a line break and one blank are taken out."""
    return text.replace("\r\n ", "").replace("\r\n\t", "").split("\r\n")


def of_season(season: Season, day: date = DAY_0, weeks: int = 4) -> tuple[Event, ...]:
    days = [day + timedelta(days=n) for n in range(1, 7)]
    ahead = [
        (at, task)
        for at in days
        if season.weather.on(at) is not None
        for task in common_tasks(season, at)
        if task.family in BY_DAY
    ]
    return coming(season, build_round(season, day), ahead, weeks, lambda task: title(task, season))


RFC = [
    # section, event, zone, the line the section's example has
    ("3.3.4 Date", event(date(1997, 7, 14)), "", "DTSTART;VALUE=DATE:19970714"),
    (
        "3.3.5 Date-Time, form 1",
        event(date(1998, 1, 18), time(23, 0)),
        "",
        "DTSTART:19980118T230000",
    ),
    (
        "3.3.5 Date-Time, form 3",
        event(date(1998, 1, 19), time(2, 0)),
        "America/New_York",
        "DTSTART;TZID=America/New_York:19980119T020000",
    ),
    (
        "3.3.11 Text",
        event(
            date(1997, 7, 14),
            text="Project XYZ Final Review\nConference Room - 3B\nCome Prepared.",
        ),
        "",
        "DESCRIPTION:Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.",
    ),
]


@pytest.mark.parametrize(("section", "one", "zone", "line"), RFC, ids=[row[0] for row in RFC])
def test_lines_are_those_of_the_examples(section: str, one: Event, zone: str, line: str) -> None:
    """RFC 5545 (from memory), the examples of the sections named."""
    assert line in unfolded(written(one, zone=zone)), section


def test_signs_with_a_meaning_are_escaped() -> None:
    """RFC 5545, 3.3.11 (from memory): backslash, semicolon and comma; a colon is not."""
    lines = unfolded(written(event(DAY_0, name="a\\b;c,d:e")))
    assert "SUMMARY:a\\\\b\\;c\\,d:e" in lines


def test_lines_end_and_fold_as_they_must() -> None:
    """RFC 5545, 3.1 (from memory): CRLF, and at most 75 octets without it."""
    text = written(*of_season(sample_season()), zone="Europe/London")
    assert text.endswith("END:VCALENDAR\r\n")
    assert not re.search(r"[^\r]\n", text)
    assert max(len(line.encode("utf-8")) for line in text.split("\r\n")) <= 75


def test_every_event_has_what_it_must_and_is_read_back_by_icalendar() -> None:
    """RFC 5545, 3.6 and 3.6.1 (from memory): PRODID, VERSION; UID, DTSTAMP, DTSTART."""
    events = of_season(sample_season())
    calendar = Calendar.from_ical(written(*events, zone="Europe/London"))
    assert calendar["version"] == "2.0"
    assert calendar["prodid"]
    entries = calendar.walk("VEVENT")
    assert len(entries) == len(events)
    assert len({str(entry["uid"]) for entry in entries}) == len(events)
    for entry, one in zip(entries, events, strict=True):
        assert str(entry["summary"]) == one_line(one.title)
        assert entry.decoded("dtstamp") == STAMP
        start, end = entry.decoded("dtstart"), entry.decoded("dtend")
        if one.at is None:
            assert (start, end) == (one.day, one.day + timedelta(days=1))
            assert str(entry["transp"]) == "TRANSPARENT"
        else:
            zone = ZoneInfo("Europe/London")
            assert start.astimezone(UTC) == datetime.combine(one.day, one.at, zone).astimezone(UTC)
            assert end - start == timedelta(minutes=15)


def test_the_zone_in_the_file_is_the_zone_by_dateutil() -> None:
    """dateutil reads the file's own VTIMEZONE and agrees with the system's zone all year."""
    text = written(
        event(date(2026, 7, 1), time(7)), event(date(2026, 12, 1), time(8)), zone="Europe/London"
    )
    start = text.index("BEGIN:VTIMEZONE")
    end = text.index("END:VTIMEZONE") + len("END:VTIMEZONE")
    read = dateutil_tz.tzical(io.StringIO(text[start:end])).get("Europe/London")
    zone = ZoneInfo("Europe/London")
    for days in range(0, 365):
        noon = datetime(2026, 1, 1, 12) + timedelta(days=days)
        assert noon.replace(tzinfo=read).utcoffset() == noon.replace(tzinfo=zone).utcoffset()


def test_days_are_read_the_same_by_dateutil() -> None:
    events = of_season(sample_season())
    lines = unfolded(written(*events, zone="Europe/London"))
    starts = [line.partition(":")[2] for line in lines if line.startswith("DTSTART")]
    days = [dateutil_parser.parse(text).date() for text in starts[-len(events) :]]
    assert days == [one.day for one in events]


def test_the_same_input_gives_the_same_bytes_and_the_stamp_alone_moves() -> None:
    events = of_season(sample_season())
    first = written(*events)
    assert first == written(*of_season(sample_season()))
    later, _ = calendar_data(told(*events), name="n", site=SITE, stamp=STAMP + timedelta(hours=1))
    changed = [
        (a, b)
        for a, b in zip(first.split("\r\n"), later.decode().split("\r\n"), strict=True)
        if a != b
    ]
    assert changed
    assert all(a.startswith("DTSTAMP:") for a, _ in changed)


def test_a_thing_whose_day_moves_keeps_its_name_so_reading_in_again_moves_it() -> None:
    season = sample_season()
    today = {one.key: one for one in of_season(season)}
    tomorrow = {one.key: one for one in of_season(season, DAY_0 + timedelta(days=1))}
    both = set(today) & set(tomorrow)
    assert len(both) > 30
    moved = [key for key in both if today[key].day != tomorrow[key].day]
    assert moved
    again, _ = calendar_data(told(*tomorrow.values()), name="n", site=SITE, stamp=STAMP)
    uid = f"UID:{uid_of(moved[0], SITE)}"
    entries = again.decode().replace("\r\n ", "").split("BEGIN:VEVENT")
    (mine,) = (entry for entry in entries if uid in entry)
    assert f"{tomorrow[moved[0]].day:%Y%m%d}" in mine


def test_what_is_asked_every_day_has_an_event_for_every_day() -> None:
    lids = [one for one in of_season(sample_season()) if one.category == "lids"]
    frame_a = [one for one in lids if "Frame A" in one.title]
    assert len({one.day for one in frame_a}) == len(frame_a) > 1
    assert len({one.key for one in lids}) == len(lids)


def test_a_task_takes_the_place_of_its_forecast() -> None:
    events = of_season(sample_season())
    keys = [one.key for one in events]
    assert len(keys) == len(set(keys))
    prick = [one for one in events if one.key == "prick out:b25:"]
    assert len(prick) == 1
    assert "Why: " in prick[0].text
    assert any(one.text.startswith("Forecast: ") for one in events)


def test_nothing_is_before_today_or_beyond_the_weeks() -> None:
    for weeks in (1, 4, 30):
        days = [one.day for one in of_season(sample_season(), weeks=weeks)]
        assert min(days) >= DAY_0
        assert max(days) < DAY_0 + timedelta(weeks=weeks)


def test_seasons_with_the_same_batch_ids_are_kept_apart() -> None:
    assert uid_of("feed:b16:", "2026|2026-01-01") != uid_of("feed:b16:", "2027|2027-01-01")


def test_hostile_names_come_back_as_text() -> None:
    season = hostile_season()
    calendar = Calendar.from_ical(written(*of_season(season)))
    titles = " ".join(str(entry["summary"]) for entry in calendar.walk("VEVENT"))
    for name in HOSTILE:
        assert one_line(name) in titles
    assert len(calendar.walk("VEVENT")) == len(of_season(season))


@settings(deadline=None)
@given(st.text(max_size=120), st.text(max_size=300))
def test_any_text_comes_back(name: str, text: str) -> None:
    calendar = Calendar.from_ical(written(event(DAY_0, name=name, text=text)))
    (entry,) = calendar.walk("VEVENT")
    assert str(entry["summary"]) == one_line(name)
    lines = "\n".join(one_line(line) for line in text.splitlines())
    assert str(entry["description"]) == lines


def test_without_a_zone_times_are_local_and_it_is_said() -> None:
    one = event(DAY_0, time(7))
    data, remarks = calendar_data(told(one), name="n", site=SITE, stamp=STAMP, timezone="Mars/Base")
    assert b"DTSTART:20260527T070000\r\n" in data
    assert "Mars/Base" in remarks[0]


def test_an_empty_season_is_a_calendar_without_batches() -> None:
    calendar = Calendar.from_ical(written(*of_season(empty_season())))
    assert not calendar.walk("VEVENT")


@pytest.mark.parametrize(("zone", "name"), [("", "UTC"), ("Europe/London", "Europe/London")])
def test_a_calendar_without_events_still_holds_a_component(zone: str, name: str) -> None:
    """RFC 5545, 3.6 (from memory): one component at least; read by icalendar and by dateutil."""
    text = written(zone=zone)
    (component,) = Calendar.from_ical(text).subcomponents
    assert (component.name, str(component["tzid"])) == ("VTIMEZONE", name)
    assert dateutil_tz.tzical(io.StringIO(text)).keys() == [name]


def test_it_is_no_message_of_scheduling() -> None:
    """RFC 5546, 3.2.1 (from memory): with METHOD:PUBLISH every event must name its ORGANIZER."""
    calendar = Calendar.from_ical(written(*of_season(sample_season())))
    assert "method" not in calendar
    assert not any("organizer" in entry for entry in calendar.walk("VEVENT"))


def test_three_thousand_batches() -> None:
    events = of_season(many_season(), weeks=2)
    assert len(events) > 3000
    assert len({uid_of(one.key, SITE) for one in events}) == len(events)
