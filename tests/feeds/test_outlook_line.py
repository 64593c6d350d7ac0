"""A weather line typed in seconds: golden examples, what is refused, and what always holds."""

from __future__ import annotations

from datetime import date, time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import InputError
from benchround.core.record import Figure, Kind
from benchround.core.sky.weather import COLDEST_C, HOTTEST_C
from benchround.feeds.outlook_day import OutlookLineError
from benchround.feeds.outlook_line import read_outlook
from benchround.feeds.outlook_words import WORDS

WEDNESDAY = date(2026, 5, 27)
DAY_H = 16.0
MAY = {n: date(2026, 5, n) for n in range(27, 32)}

GOLDEN: list[tuple[str, dict[str, Figure]]] = [
    ("5 23 sun", {"min_c": 5.0, "max_c": 23.0, "sun_h": 12.0}),
    ("2/16 clear calm", {"min_c": 2.0, "max_c": 16.0, "sun_h": 16.0, "gust_kmh": 0.0}),
    ("23 5", {"min_c": 5.0, "max_c": 23.0}),
    ("-2/5 snow", {"min_c": -2.0, "max_c": 5.0, "sun_h": 0.8}),
    ("\N{MINUS SIGN}6/1", {"min_c": -6.0, "max_c": 1.0}),
    ("5\N{EN DASH}23", {"min_c": 5.0, "max_c": 23.0}),
    ("-6--1", {"min_c": -6.0, "max_c": -1.0}),
    ("5-23", {"min_c": 5.0, "max_c": 23.0}),
    ("5..23", {"min_c": 5.0, "max_c": 23.0}),
    ("5 to 23", {"min_c": 5.0, "max_c": 23.0}),
    ("5 / 23", {"min_c": 5.0, "max_c": 23.0}),
    ("5C 23°C", {"min_c": 5.0, "max_c": 23.0}),
    ("min 4", {"min_c": 4.0}),
    ("night -1, max 9", {"min_c": -1.0, "max_c": 9.0}),
    ("8 27 r22", {"min_c": 8.0, "max_c": 27.0, "rain_mm": 22.0}),
    ("8 27 22mm", {"min_c": 8.0, "max_c": 27.0, "rain_mm": 22.0}),
    ("8 27 rain 22 mm", {"min_c": 8.0, "max_c": 27.0, "rain_mm": 22.0}),
    ("8 27 2,5mm", {"min_c": 8.0, "max_c": 27.0, "rain_mm": 2.5}),
    ("8 27 1in", {"min_c": 8.0, "max_c": 27.0, "rain_mm": 25.4}),
    ("8 27 dry", {"min_c": 8.0, "max_c": 27.0, "rain_mm": 0.0}),
    ("8 27 r22 5mm/h", {"min_c": 8.0, "max_c": 27.0, "rain_mm": 22.0, "rain_hour_mm": 5.0}),
    ("8 27 rh5", {"min_c": 8.0, "max_c": 27.0, "rain_hour_mm": 5.0}),
    ("8 27 g68", {"min_c": 8.0, "max_c": 27.0, "gust_kmh": 68.0}),
    ("8 27 68km/h", {"min_c": 8.0, "max_c": 27.0, "gust_kmh": 68.0}),
    ("8 27 gusts of 42 mph", {"min_c": 8.0, "max_c": 27.0, "gust_kmh": 67.6}),
    ("8 27 19m/s", {"min_c": 8.0, "max_c": 27.0, "gust_kmh": 68.4}),
    ("8 27 37 kn", {"min_c": 8.0, "max_c": 27.0, "gust_kmh": 68.5}),
    ("8 27 F8", {"min_c": 8.0, "max_c": 27.0, "gust_kmh": 68.0}),
    ("8 27 gale", {"min_c": 8.0, "max_c": 27.0, "gust_kmh": 68.0}),
    ("8 27 strong breeze", {"min_c": 8.0, "max_c": 27.0, "gust_kmh": 44.0}),
    ("8 27 from 17", {"min_c": 8.0, "max_c": 27.0, "storm_from": "17:00"}),
    ("8 27 from 5:30pm", {"min_c": 8.0, "max_c": 27.0, "storm_from": "17:30"}),
    ("8 27 @9", {"min_c": 8.0, "max_c": 27.0, "storm_from": "09:00"}),
    ("8 27 12h", {"min_c": 8.0, "max_c": 27.0, "sun_h": 12.0}),
    ("8 27 partly cloudy", {"min_c": 8.0, "max_c": 27.0, "sun_h": 8.0}),
    ("8 27 mostly cloudy", {"min_c": 8.0, "max_c": 27.0, "sun_h": 4.0}),
    ("8 27 overcast", {"min_c": 8.0, "max_c": 27.0, "sun_h": 0.8}),
    ("8 27 ove", {"min_c": 8.0, "max_c": 27.0, "sun_h": 0.8}),
    ("8 27 SUNNY", {"min_c": 8.0, "max_c": 27.0, "sun_h": 12.0}),
    ("sun and showers 8 27", {"min_c": 8.0, "max_c": 27.0, "sun_h": 12.0}),
    ("8 27 showers r4", {"min_c": 8.0, "max_c": 27.0, "sun_h": 6.4, "rain_mm": 4.0}),
]


@pytest.mark.parametrize(("line", "figures"), GOLDEN, ids=[line for line, _ in GOLDEN])
def test_golden_lines(line: str, figures: dict[str, Figure]) -> None:
    (draft,) = read_outlook(line, WEDNESDAY, DAY_H).drafts()
    assert draft.kind is Kind.OUTLOOK
    assert draft.day == WEDNESDAY
    assert draft.about == ""
    assert dict(draft.figures) == figures
    assert draft.note == line


@pytest.mark.parametrize(
    ("force", "kmh"),
    [(1, 3), (4, 24), (6, 44), (8, 68), (12, 125)],
    ids=[f"WMO Code 1100, v = 0.836 B^1.5, force {n} (from memory)" for n in (1, 4, 6, 8, 12)],
)
def test_wind_force_as_kilometres_an_hour(force: int, kmh: int) -> None:
    (draft,) = read_outlook(f"5 20 F{force}", WEDNESDAY, DAY_H).drafts()
    assert draft.figures["gust_kmh"] == kmh


@pytest.mark.parametrize(
    ("word", "share", "source"),
    [
        ("clear", 1.0, "FAO-56 eq. 35 with n/N 1: clear"),
        ("part", 0.5, "reference notes: part cloud 0.5 (a guess of n/N)"),
        ("overcast", 0.05, "reference notes: overcast 0.1 to 0"),
    ],
    ids=["clear", "part", "overcast"],
)
def test_the_sky_is_a_share_of_the_days_length(word: str, share: float, source: str) -> None:
    seen = [read_outlook(f"5 20 {word}", WEDNESDAY, hours).days[0] for hours in (8.0, 16.0)]
    assert [day.sun_share for day in seen] == [share, share], source
    assert [day.sun_h for day in seen] == [round(share * 8.0, 1), round(share * 16.0, 1)]


def test_the_length_of_each_day_is_asked_for_that_day() -> None:
    lengths = {MAY[27]: 10.0, MAY[29]: 20.0}
    days = read_outlook("5 20 clear; fri 5 20 clear", WEDNESDAY, lambda day: lengths[day]).days
    assert [day.sun_h for day in days] == [10.0, 20.0]


@pytest.mark.parametrize(
    ("line", "days"),
    [
        ("5 20", [27]),
        ("5 20; 6 21 | 7 22", [27, 28, 29]),
        ("+1 5 20; 6 21", [28, 29]),
        ("fri 5 20; 6 21", [29, 30]),
        ("5 20 saturday", [30]),
        ("tomorrow 5 20", [28]),
        ("2026-05-31 5 20", [31]),
        ("28.5. 5 20; 5 20", [28, 29]),
        ("5 20; sun 6 21; sunday 7 22", [27, 28, 31]),
        ("fri 5 20; today 6 21", [27, 29]),
        ("5 20;", [27]),
    ],
)
def test_the_day_of_each_piece(line: str, days: list[int]) -> None:
    found = read_outlook(line, WEDNESDAY, DAY_H).days
    assert [day.day for day in found] == [MAY[number] for number in days]


def test_a_storm_from_a_piece_with_everything() -> None:
    (day,) = read_outlook("fri 12/29 part r22 22mm/h g68 from 17", WEDNESDAY, DAY_H).days
    assert (day.day, day.rain_hour_mm, day.storm_from) == (MAY[29], 22.0, time(17))
    assert day.words(WEDNESDAY) == (
        "Fri 29 May 2026, in 2 days: 12 to 29 C, part cloud, 8 h of sun, rain 22 mm, up to 22 mm "
        "in an hour, gusts of 68 km/h, storm from 17:00"
    )


def test_a_force_is_echoed_with_what_it_is_taken_for() -> None:
    (day,) = read_outlook("5 20 F8", WEDNESDAY, DAY_H).days
    assert "wind force 8, taken as gusts of 68 km/h" in day.words(WEDNESDAY)


REFUSED = [
    ("5 23 snuny", "snuny", "sunny"),
    ("5 23 clo", "clo", "cloud"),
    ("frost tonight", "frost", "lowest and highest; write it like: 5 23"),
    ("5 23 xyzzy", "xyzzy", "5 23 sun"),
    ("5,23 sun", "5,23", "understood"),
    ("5 sun", "5", "lowest or highest"),
    ("5 23 40", "40", "r40"),
    ("-6 - 1", "-", "not understood"),
    ("80 2", "80", "-45 C and 70 C"),
    ("5 23 r501", "r501", "0 and 500 mm"),
    ("5 23 g301", "g301", "0 to 300"),
    ("5 23 F13", "f13", "force 12"),
    ("5 23 20h", "", "16.0 h"),
    ("5 23 r5 6mm/h", "", "6 mm in an hour"),
    ("5 23 r5 r6", "r6", "already"),
    ("5 23 calm F8", "calm", "already"),
    ("5 23 sun cloudy", "", "two skies"),
    ("5 23 dry rain", "", "do not go together"),
    ("5 23 from 25", "from25", "no time"),
    ("5 23 from 13pm", "from13pm", "no time"),
    ("5 23 fri sat", "sat", "two"),
    ("2026-05-26 5 23", "2026-05-26", "ahead"),
    ("2026-02-30 5 23", "2026-02-30", "calendar"),
    ("+31 5 23", "+31", "30 days"),
    ("min5 5 23", "", "twice"),
    ("min9 max5", "", "above highest"),
    ("wind and", "wind and", "says nothing"),
    ("fri", "fri", "says nothing"),
    ("5 23; 6 24; today 7 25", "", "Two pieces"),
    ("5 23;; 6 24", "", "Nothing was typed"),
    ("", "", "Nothing was typed"),
    (";", "", "Nothing was typed"),
    ("5 23 [b]sun[/]", "[b]sun[/]", "not understood"),
    ("5 23 \x1b[31m", "", "no weather line"),
    ("5 23 " + "sun " * 200, "", "no weather line"),
    (";".join(["5 23"] * 17), "", "more than 16"),
]


@pytest.mark.parametrize(
    ("line", "word", "said"), REFUSED, ids=[line[:40] for line, _, _ in REFUSED]
)
def test_a_line_that_is_not_clear_is_refused_whole(line: str, word: str, said: str) -> None:
    with pytest.raises(OutlookLineError) as caught:
        read_outlook(line, WEDNESDAY, DAY_H).drafts()
    assert said in str(caught.value)
    assert caught.value.word == word
    assert caught.value.line == line  # nothing typed is lost
    if word and " " not in word:
        assert word in str(caught.value)


def test_the_word_at_fault_is_found_in_the_line() -> None:
    with pytest.raises(OutlookLineError) as caught:
        read_outlook("15 23 5mm snuny", WEDNESDAY, DAY_H)
    assert caught.value.at == 10
    with pytest.raises(OutlookLineError) as alone:
        read_outlook("+15 5 sun", WEDNESDAY, DAY_H)
    assert alone.value.at == 4  # the lone 5, not that of +15


@given(st.text(max_size=80))
def test_any_text_gives_sound_drafts_or_a_sentence(text: str) -> None:
    """Property: nothing else is raised, and nothing impossible comes out."""
    assert_sound_or_refused(text)


def assert_sound_or_refused(text: str) -> None:
    try:
        drafts = read_outlook(text, WEDNESDAY, DAY_H).drafts()
    except InputError as error:
        assert str(error)
        return
    for draft in drafts:
        assert draft.figures
        low, high = draft.figures.get("min_c"), draft.figures.get("max_c")
        for value in (low, high):
            assert value is None or COLDEST_C <= float(value) <= HOTTEST_C
        assert low is None or high is None or float(low) <= float(high)


LETTERS = st.text(alphabet="0123456789 ;/-+.,fgrhmisncloudyt", max_size=60)


@given(LETTERS)
def test_near_misses_give_sound_drafts_or_a_sentence(text: str) -> None:
    """Property, over texts made of the letters real lines are made of."""
    assert_sound_or_refused(text)


TENTHS = st.integers(-400, 450).map(lambda n: n / 10)


@st.composite
def typed_days(draw: st.DrawFn) -> tuple[str, dict[str, Figure]]:
    """A piece in any order and spelling, and the figures it stands for."""
    low, high = sorted((draw(TENTHS), draw(TENTHS)))
    style = draw(
        st.sampled_from(["{0:g}/{1:g}", "{0:g} {1:g}", "{1:g} {0:g}", "min{0:g} max{1:g}"])
    )
    words = [style.format(low, high)]
    figures: dict[str, Figure] = {"min_c": low, "max_c": high}
    if draw(st.booleans()):
        rain = draw(st.integers(0, 999)) / 10
        words.append(draw(st.sampled_from(["r{0:g}", "{0:g}mm", "rain {0:g} mm"])).format(rain))
        figures["rain_mm"] = rain
    if draw(st.booleans()):
        gust = draw(st.integers(0, 200))
        words.append(draw(st.sampled_from(["g{0}", "{0}km/h", "gusts {0} kmh"])).format(gust))
        figures["gust_kmh"] = float(gust)
    if draw(st.booleans()):
        hour = draw(st.integers(0, 23))
        words.append(draw(st.sampled_from(["from {0}", "@{0}", "from {0}:00"])).format(hour))
        figures["storm_from"] = f"{hour:02d}:00"
    if draw(st.booleans()):
        dry = [w for w, sky in WORDS.items() if sky.sun_share is not None and not sky.wet]
        word = draw(st.sampled_from(dry))
        share = WORDS[word].sun_share or 0.0
        words.append(word)
        figures["sun_h"] = round(share * DAY_H, 1)
    return " ".join(draw(st.permutations(words))), figures


@given(st.lists(typed_days(), min_size=1, max_size=5), st.sampled_from([";", " | ", "; "]))
def test_what_is_typed_in_any_order_comes_back(
    pieces: list[tuple[str, dict[str, Figure]]], between: str
) -> None:
    """Property: order and spelling make no difference, days follow each other."""
    drafts = read_outlook(between.join(text for text, _ in pieces), WEDNESDAY, DAY_H).drafts()
    assert [dict(draft.figures) for draft in drafts] == [figures for _, figures in pieces]
    assert [(d.day - WEDNESDAY).days for d in drafts if d.day] == list(range(len(pieces)))
