"""The weather commands: what they record, what they refuse, what they leave out."""

from __future__ import annotations

import json
from datetime import date, timedelta
from pathlib import Path

import pytest

from benchround.commands import weather_out
from benchround.core.record import Kind, Record
from benchround.desk import FURTHEST_BACK, own_machine
from benchround.store import SeasonFolder
from tests.commands.shell import DAY, Ran, run
from tests.feeds import forecast_server as service
from tests.feeds.forecast_server import Server, serving

Capture = pytest.CaptureFixture[str]


@pytest.fixture(autouse=True)
def on_the_day(bench: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(weather_out, "local_day", lambda: DAY)
    assert bench.is_dir()


def weather(capsys: Capture, *words: str) -> Ran:
    return run(["weather", *words, "--json"], capsys)


def records(*kinds: Kind) -> list[Record]:
    with SeasonFolder.open(Path("garden"), "reader", read_only=True) as folder:
        return [record for record in folder.records() if record.kind in kinds]


def test_a_typed_line_becomes_outlook_records(capsys: Capture) -> None:
    ran = weather(capsys, "note", "5 23 sun; 8/27 r22 g68 from 17", "garden")
    assert ran.code == 0
    assert ran.value["recorded"] == 2
    first, second = records(Kind.OUTLOOK)
    assert (first.day, first.note, first.about) == (DAY, "5 23 sun", "")
    assert second.day == DAY + timedelta(days=1)
    assert second.figures == {
        "min_c": 8.0,
        "max_c": 27.0,
        "rain_mm": 22.0,
        "gust_kmh": 68.0,
        "storm_from": "17:00",
    }
    # 16.3 h of daylight at 52.5 N on 27 May, three quarters of it for "sun"
    assert first.figures["sun_h"] == pytest.approx(0.75 * 16.3, abs=0.1)
    assert ran.value["words"][0].startswith("Wed 27 May 2026, today: 5 to 23 C, sunny")


def test_a_line_below_zero_needs_no_care(capsys: Capture) -> None:
    assert weather(capsys, "note", "-4/-1", "garden").code == 0
    assert records(Kind.OUTLOOK)[0].figures == {"min_c": -4.0, "max_c": -1.0}


def test_a_word_not_understood_is_marked_and_nothing_is_recorded(capsys: Capture) -> None:
    ran = run(["weather", "note", "5 23 snuny; 6 24", "garden"], capsys)
    assert (ran.code, ran.out) == (1, "")
    lines = ran.err.splitlines()
    assert "'snuny' was not understood" in lines[0] and "sunny" in lines[0]
    assert lines[1] == "  5 23 snuny; 6 24"
    assert lines[2] == "       ^^^^^"
    assert records(Kind.OUTLOOK) == []


def test_a_preview_records_nothing(capsys: Capture) -> None:
    ran = weather(capsys, "note", "5 23 sun", "garden", "--preview")
    assert (ran.code, ran.value["recorded"]) == (0, 0)
    assert ran.value["days"][0]["max_c"] == 23.0
    assert records(Kind.OUTLOOK) == []


def test_a_reading_outside_and_in_a_place(capsys: Capture) -> None:
    assert weather(capsys, "read", "garden", "--min", "-2.5", "--max", "9", "--rain", "3").code == 0
    ran = weather(capsys, "read", "garden", "--max", "41", "--place", "frame-a", "--on",
                  "2026-05-26")  # fmt: skip
    assert ran.value["days"] == [{"day": "2026-05-26", "place": "frame-a", "max_c": 41.0}]
    found = [(r.day, r.about, dict(r.figures)) for r in records(Kind.READING)]
    assert found == [
        (DAY, "", {"min_c": -2.5, "max_c": 9.0, "rain_mm": 3.0}),
        (DAY - timedelta(days=1), "frame-a", {"max_c": 41.0}),
    ]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--min", "9", "--max", "5"], "outside -45 to 5"),
        (["--min", "-80"], "-45 to 70"),
        (["--max", "99"], "-45 to 70"),
        (["--rain", "-1"], "0 to 500"),
        (["--min", "5", "--place", "loft"], "places are: frame-a"),
        (["--min", "5", "--on", "2026-05-28"], "still to come"),
    ],
)
def test_a_reading_that_cannot_be_is_refused(words: list[str], said: str, capsys: Capture) -> None:
    ran = run(["weather", "read", "garden", *words], capsys)
    assert (ran.code, ran.out) == (1, "")
    assert said in ran.err
    assert records(Kind.READING) == []


def test_show_puts_a_reading_before_an_outlook(capsys: Capture) -> None:
    assert weather(capsys, "note", "5 23 sun; 8/27", "garden").code == 0
    assert weather(capsys, "read", "garden", "--min", "4", "--max", "19").code == 0
    assert weather(capsys, "read", "garden", "--max", "41", "--place", "frame-a").code == 0
    found = weather(capsys, "show", "garden").value
    assert [(day["day"], day["basis"]) for day in found["days"]] == [
        ("2026-05-27", "reading"),
        ("2026-05-28", "outlook"),
    ]
    assert (found["days"][0]["min_c"], found["days"][0]["sun_h"]) == (4.0, 12.2)
    assert [(p["place"], p["max_c"]) for p in found["places"]] == [("frame-a", 41.0)]
    text = run(["weather", "show", "garden"], capsys).out
    assert "Frame A: ? to 41 C" in text


def test_show_of_an_empty_season_says_what_to_do(capsys: Capture) -> None:
    assert "weather note" in run(["weather", "show", "garden"], capsys).out
    assert weather(capsys, "show", "garden").value["days"] == []


def test_show_of_the_sample(capsys: Capture) -> None:
    found = weather(capsys, "show", "--sample").value
    assert found["on"] == "2026-05-27"
    assert found["days"]


IMPORT = ["station.csv", "garden", "--map", "day=DATE,min=TMIN,max=TMAX,rain=PRCP", "--units", "F",
          "--rain-units", "in"]  # fmt: skip


def test_import_records_what_is_new_and_names_what_is_left_out(capsys: Capture) -> None:
    preview = weather(capsys, "import", *IMPORT, "--preview")
    assert (preview.value["recorded"], preview.value["new"]) == (0, 4)
    assert records(Kind.READING) == []
    ran = weather(capsys, "import", *IMPORT)
    assert ran.value["recorded"] == 4
    assert ran.value["faults"] == [
        {"row": 4, "reason": "TMAX: 432.22 C cannot be (-45 to 70); left out"}
    ]
    assert ran.value["gaps"] == [{"from": "2026-05-24", "days": 1}]
    assert "row 4" in ran.err and "432.22" in ran.err
    first = records(Kind.READING)[0]
    # 48 F is 8.89 C, 61 F 16.11 C, 0.12 in 3.05 mm (definitions)
    assert first.figures == {"min_c": 8.89, "max_c": 16.11, "rain_mm": 3.05}
    assert first.note == "from station.csv"
    again = weather(capsys, "import", *IMPORT)
    assert (again.value["recorded"], again.value["known_already"]) == (0, 4)
    assert len(records(Kind.READING)) == 4


def test_import_for_a_place_and_not_for_an_unknown_one(capsys: Capture) -> None:
    assert weather(capsys, "import", *IMPORT, "--place", "frame-a").value["recorded"] == 4
    assert {record.about for record in records(Kind.READING)} == {"frame-a"}
    ran = weather(capsys, "import", *IMPORT, "--place", "loft")
    assert (ran.code, "no place" in ran.err) == (1, True)


def test_import_leaves_out_days_to_come_and_days_long_gone(bench: Path, capsys: Capture) -> None:
    (bench / "far.csv").write_text(
        "date,tmin\n2001-01-01,1\n2026-05-26,5\n2026-05-28,6\n", encoding="utf-8"
    )
    ran = weather(capsys, "import", "far.csv", "garden")
    assert (ran.value["recorded"], ran.value["too_far_off"]) == (1, 2)
    assert "12 years" in ran.err


def test_a_long_file_comes_in_whole(capsys: Capture) -> None:
    ran = weather(capsys, "import", "seattle.csv", "garden")
    whole = (date(2015, 12, 31) - (DAY - FURTHEST_BACK)).days + 1
    assert (ran.value["recorded"], ran.value["faults"]) == (whole, [])
    assert ran.value["recorded"] + ran.value["too_far_off"] == 1461
    shown = weather(capsys, "show", "garden", "--on", "2015-06-01", "--days", "2", "--back", "0")
    assert len(shown.value["days"]) == 2


@pytest.mark.parametrize("name", ["nosuch.csv", "garden"])
def test_a_file_that_cannot_be_read(name: str, capsys: Capture) -> None:
    ran = weather(capsys, "import", name, "garden")
    assert (ran.code, ran.out) == (1, "")
    assert "cannot be read" in ran.err


@pytest.mark.parametrize(
    "words",
    [
        ["weather"],
        ["weather", "dance"],
        ["weather", "note"],
        ["weather", "read", "garden"],
        ["weather", "read", "garden", "--min", "cold"],
        ["weather", "import"],
        ["weather", "import", "station.csv", "garden", "--units", "K"],
        ["weather", "fetch", "garden", "--url", "https://example.invalid/{lat}/{lon}"],
        ["weather", "fetch", "garden", "--turn", "round"],
        ["weather", "show", "garden", "--on", "tomorrow"],
    ],
    ids=" ".join,
)
def test_wrong_usage_ends_with_2(words: list[str], capsys: Capture) -> None:
    ran = run(words, capsys)
    assert (ran.code, ran.out) == (2, "")
    assert "usage:" in ran.err


def test_no_season_is_a_sentence(capsys: Capture) -> None:
    for words in (["note", "5 23"], ["read", "--min", "5"], ["show"], ["fetch"]):
        ran = weather(capsys, *words)
        assert (ran.code, ran.out) == (1, "")
        assert "season" in ran.err


def test_a_season_held_by_another_program_ends_with_3(capsys: Capture) -> None:
    with SeasonFolder.open(Path("garden"), own_machine()):
        for words in (["note", "5 23", "garden"], ["read", "garden", "--min", "5"]):
            assert weather(capsys, *words).code == 3
        assert weather(capsys, "show", "garden").code == 0


# fetching


def turn_on(server: Server, capsys: Capture) -> Ran:
    return weather(capsys, "fetch", "garden", "--turn", "on", "--url", server.address)


def test_fetching_is_off_until_it_is_turned_on(capsys: Capture) -> None:
    ran = weather(capsys, "fetch", "garden")
    assert (ran.code, ran.out) == (1, "")
    assert "--turn on" in ran.err
    assert records(Kind.SETTING) == []


def test_turning_on_shows_what_will_be_asked(capsys: Capture) -> None:
    ran = weather(capsys, "fetch", "garden", "--turn", "on")
    assert ran.value["address"].startswith("https://")
    assert "latitude=52.50&longitude=-1.00" in ran.value["address"]
    values = {record.about: record.figures["value"] for record in records(Kind.SETTING)}
    assert values["weather_fetch"] == "on"
    assert "{lat}" in str(values["weather_url"])


def test_a_fetched_outlook_is_recorded_once(capsys: Capture, on_fetch_day: None) -> None:
    with serving(service.well) as server:
        assert turn_on(server, capsys).code == 0
        ran = weather(capsys, "fetch", "garden")
        assert (ran.code, ran.value["recorded"], ran.value["kept"]) == (0, 3, False)
        outlooks = records(Kind.OUTLOOK)
        assert [record.figures["max_c"] for record in outlooks] == [23.0, 24.0, 25.0]
        again = weather(capsys, "fetch", "garden")
        assert (again.value["recorded"], again.value["kept"], len(server.asked)) == (0, True, 1)
        assert again.value["age"] == "0 minutes old"
        assert weather(capsys, "fetch", "garden", "--again").value["recorded"] == 0
        assert len(server.asked) == 2
    assert len(records(Kind.OUTLOOK)) == 3


def test_a_reading_is_not_answered_with_an_outlook(capsys: Capture, on_fetch_day: None) -> None:
    assert weather(capsys, "read", "garden", "--min", "1", "--max", "2").code == 0
    with serving(service.well) as server:
        turn_on(server, capsys)
        assert weather(capsys, "fetch", "garden").value["recorded"] == 2


def test_a_failure_uses_the_kept_answer_and_says_so(capsys: Capture, on_fetch_day: None) -> None:
    with serving(service.well) as server:
        turn_on(server, capsys)
        weather(capsys, "fetch", "garden")
        server.answering = service.refusing
        ran = weather(capsys, "fetch", "garden", "--again")
    assert (ran.code, ran.value["kept"]) == (0, True)
    assert "503" in ran.value["problem"] and "503" in ran.err


def test_a_failure_with_nothing_kept_is_a_sentence(capsys: Capture, on_fetch_day: None) -> None:
    with serving(service.elsewhere) as server:
        turn_on(server, capsys)
        ran = weather(capsys, "fetch", "garden")
    assert (ran.code, ran.out) == (1, "")
    assert "not followed" in ran.err and "No earlier answer" in ran.err
    assert records(Kind.OUTLOOK) == []


def test_turned_off_again_it_asks_nobody(capsys: Capture, on_fetch_day: None) -> None:
    with serving(service.well) as server:
        turn_on(server, capsys)
        assert weather(capsys, "fetch", "garden", "--turn", "off").value["fetch"] == "off"
        assert weather(capsys, "fetch", "garden").code == 1
        assert server.asked == []


@pytest.mark.parametrize("url", ["http://example.invalid/{lat}/{lon}", "https://example.invalid/"])
def test_an_address_that_may_not_be_asked_is_not_kept(url: str, capsys: Capture) -> None:
    ran = weather(capsys, "fetch", "garden", "--turn", "on", "--url", url)
    assert (ran.code, ran.out) == (1, "")
    assert records(Kind.SETTING) == []


def test_a_season_without_a_site_is_not_fetched_for(bench: Path, capsys: Capture) -> None:
    SeasonFolder.create(bench / "bare", "Bare", "shed", date(2026, 1, 1)).close()
    ran = weather(capsys, "fetch", "bare", "--turn", "on")
    assert (ran.code, "no latitude" in ran.err) == (1, True)


@pytest.fixture
def on_fetch_day(monkeypatch: pytest.MonkeyPatch) -> None:
    """The service answers for the day the tests are on, whatever the computer's clock says."""
    from benchround.commands import weather_fetch

    monkeypatch.setattr(weather_fetch, "local_now", lambda: service.NOON)
    for name in ("http_proxy", "https_proxy", "HTTP_PROXY", "HTTPS_PROXY"):
        monkeypatch.setenv(name, "http://127.0.0.1:9")


def test_answers_are_json_of_plain_figures(capsys: Capture) -> None:
    ran = weather(capsys, "note", "5 23 sun", "garden")
    assert json.dumps(ran.value, allow_nan=False)
