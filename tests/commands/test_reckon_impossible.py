"""Every figure of every `reckon` subject, put to what cannot be: one sentence and no answer."""

from __future__ import annotations

import re
from typing import Any

import pytest

from tests.commands.shell import run

Capture = pytest.CaptureFixture[str]
pytestmark = pytest.mark.usefixtures("bench")

NO_NUMBERS = ("nan", "inf", "-inf", "1e999", "warm")
SHARE = ("0", "-0.1", "1.01", "80", "101%", *NO_NUMBERS)
CHANCE = ("1", *SHARE)
COUNT = ("0", "-1", "2.5", "9" * 400, *NO_NUMBERS)
ABOVE_0 = ("0", "-3", *NO_NUMBERS)
FROM_0 = ("-3", *NO_NUMBERS)
TEMP_C = ("-100", "100", *NO_NUMBERS)
LATITUDE, LONGITUDE = ("-91", "91", *NO_NUMBERS), ("-181", "181", *NO_NUMBERS)
ON = ["--on", "2026-05-27"]
PLACE = ["--lat", "52", "--lon", "0", *ON]
QUANTITY = ["quantity", "--want", "24", "--germination", "0.8"]
PLAN = ["plan", "snapdragon", "--want", "24", "--by", "2027-05-15", "--site", "42,-93.6",
        "--today", "2027-01-01"]  # fmt: skip
WATER = ["water", "--container", "9 cm pot", "--tmin", "5", "--tmax", "15", "--lat", "52", *ON]
FRAME_DAY = ["frame", "--min", "5", "--max", "15", "--sun-hours", "6", *PLACE]

SUBJECTS: tuple[tuple[list[str], dict[str, tuple[str, ...]]], ...] = (
    (["emergence", "tomato", "--temp", "18"], {"--temp": TEMP_C}),
    (
        [*QUANTITY, "--tested", "20", "--survival", "0.9", "--per-cell", "1"],
        {"--want": COUNT, "--germination": SHARE, "--tested": ABOVE_0, "--survival": SHARE,
         "--chance": CHANCE, "--per-cell": COUNT, "--seeds-per-g": ABOVE_0,
         "--cells-per-tray": COUNT},
    ),
    ([*QUANTITY, "--container", "40-cell tray"], {"--cover-mm": ("-1", "500", *NO_NUMBERS)}),
    (["germination", "0 4 6", "--sown", "20"], {"--sown": ("9", *COUNT)}),
    (
        PLAN,
        {"--want": COUNT, "--germination": SHARE, "--tested": ABOVE_0, "--survival": SHARE,
         "--chance": CHANCE, "--temp": TEMP_C, "--again": COUNT, "--cells-per-tray": COUNT,
         "--site": ("91,0", "-91,0", "0,181", "nan,0", "0,inf", "52", "x,y")},
    ),
    (["frost", "minima.csv", "--lat", "42"], {"--lat": LATITUDE, "--threshold": TEMP_C}),
    (
        ["sun", *PLACE],
        {"--lat": LATITUDE, "--lon": LONGITUDE, "--altitude": ("-900", "9000", *NO_NUMBERS),
         "--sun-hours": ("-1", "25", *NO_NUMBERS)},
    ),
    (
        ["frame", "--radiation", "600"],
        {"--radiation": ("-1", "5000", *NO_NUMBERS), "--wind": FROM_0,
         "--height": ABOVE_0, "--shade": ("-0.1", "1.1", *NO_NUMBERS),
         "--size": ("0,1", "1,-1", "nan,1", "1", "1,inf")},
    ),
    (
        FRAME_DAY,
        {"--min": TEMP_C, "--max": TEMP_C, "--sun-hours": ("-1", "25", *NO_NUMBERS),
         "--lat": LATITUDE, "--lon": LONGITUDE, "--next-min": TEMP_C, "--gust": FROM_0,
         "--rain": FROM_0},
    ),
    (
        WATER,
        {"--tmin": TEMP_C, "--tmax": TEMP_C, "--lat": LATITUDE,
         "--altitude": ("-900", "9000", *NO_NUMBERS), "--sun-share": ("-0.1", "1.1", *NO_NUMBERS)},
    ),
    (
        ["degreedays", "--min", "5", "--max", "15", "--base", "8"],
        {"--min": TEMP_C, "--max": TEMP_C, "--base": TEMP_C, "--ceiling": TEMP_C},
    ),
)  # fmt: skip
RANGE = re.compile(
    r"give a figure (above|from|below|up to) |outside -?[0-9.]+ to |is no (whole )?number|"
    r"is not two numbers|whole number: give a count|of [0-9]+ sown|swapped|the length of that day"
)


def put(words: list[str], option: str, value: str) -> list[str]:
    """The command with one option set to a value."""
    if option not in words:
        return [*words, f"{option}={value}"]
    place = words.index(option)
    return [*words[:place], f"{option}={value}", *words[place + 2 :]]


def cases() -> list[Any]:
    return [
        pytest.param(put(words, option, value), id=f"{words[0]} {option} {value[:12]}")
        for words, options in SUBJECTS
        for option, values in options.items()
        for value in values
    ]


@pytest.mark.parametrize("words", [words for words, _ in SUBJECTS], ids=lambda w: " ".join(w)[:60])
def test_the_sound_command_answers(words: list[str], capsys: Capture) -> None:
    ran = run(["reckon", *words, "--json"], capsys)
    assert ran.code == 0, ran.err
    assert ran.value["source"]


@pytest.mark.parametrize("words", cases())
def test_what_cannot_be_is_one_sentence_with_its_range(words: list[str], capsys: Capture) -> None:
    ran = run(["reckon", *words, "--json"], capsys)
    assert ran.code in (1, 2)
    assert ran.out == ""
    assert RANGE.search(ran.err), ran.err[:300]
    assert "Traceback" not in ran.err
    assert len(ran.err) < 1500
