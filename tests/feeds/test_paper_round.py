"""The round on paper: what stands on the sheet, in what order, and on how many sheets."""

from __future__ import annotations

import re
from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchround.core.errors import InputError
from benchround.core.season import Season
from benchround.core.task import Round
from benchround.feeds.page_pdf import page_pdf
from benchround.feeds.page_text import as_text
from benchround.feeds.pages import Page, Tick
from benchround.feeds.paper_round import PaperList, list_data, list_from, paper_list, paper_page
from benchround.feeds.papers import PAPERS
from benchround.plain import place_name, title, weather_words
from benchround.rounds.build import build_round
from tests.feeds.printed import ink_share, page_count, pictures_of, text_of
from tests.feeds.seasons import empty_season, hostile_season, many_season, sample_season
from tests.sample.story import DAY_0


def sheet(season: Season) -> tuple[Round, Page]:
    the_round = build_round(season, DAY_0)
    page = paper_page(
        the_round,
        lambda task: title(task, season),
        lambda task: place_name(season, task.place),
        weather_words(season.weather.on(DAY_0)),
        paper_list(the_round).code,
    )
    return the_round, page


def test_every_task_of_today_has_its_number_in_walking_order() -> None:
    the_round, page = sheet(sample_season())
    ticks = [block for block in page.blocks if isinstance(block, Tick)]
    assert [tick.number for tick in ticks] == list(range(1, len(the_round.today) + 1))
    for tick, task in zip(ticks, the_round.today, strict=True):
        assert tick.text.startswith(f"{task.family}: ")
        if task.crop:
            assert f"{task.about} " in tick.text
        else:
            assert tick.text.startswith(f"{task.family}: {task.instruction[:10]}")
        assert tick.blanks == tuple(ask.label for ask in task.asks)


def test_text_has_a_box_a_number_and_room_for_figures_on_every_line() -> None:
    the_round, page = sheet(sample_season())
    text = as_text(page)
    lines = [line for line in text.splitlines() if line.startswith("[ ]")]
    assert len(lines) == len(the_round.today)
    assert text.count("______") == sum(len(task.asks) for task in the_round.today)
    assert all(re.match(r"\[ \] +\d+  \S", line) for line in lines)


def test_what_all_tasks_of_a_family_say_is_said_once_and_nothing_is_lost() -> None:
    the_round, page = sheet(sample_season())
    text = as_text(page)
    assert text.count("until the surface darkens") == 1
    for task in the_round.today:
        for clause in task.instruction.split("; "):
            assert clause in text


def test_held_tasks_have_no_box_but_their_reason() -> None:
    the_round, page = sheet(sample_season())
    text = as_text(page)
    held = text.split("held, not to be done")[1]
    for task in the_round.held:
        assert task.hold is not None
        assert task.hold.because in held


@pytest.mark.parametrize("paper", sorted(PAPERS))
def test_the_pdf_says_what_the_text_says(paper: str) -> None:
    """One content, two writers: PDFium finds every word of the text in the PDF."""
    _, page = sheet(sample_season())
    data, _ = page_pdf(page, PAPERS[paper], DAY_0, one_sheet=True)
    printed = text_of(data)
    missing = [
        word
        for word in as_text(page).replace("______", "").replace("[ ]", "").split()
        if word not in printed.replace("- ", "-")
    ]
    assert missing == []


@pytest.mark.parametrize(("paper", "sheets"), [("a4", 1), ("letter", 1), ("a5", 3)])
def test_the_sample_morning_fits_on_one_sheet_of_usual_paper(paper: str, sheets: int) -> None:
    data, remarks = page_pdf(sheet(sample_season())[1], PAPERS[paper], DAY_0, one_sheet=True)
    assert page_count(data) <= sheets
    assert bool(remarks) is (sheets > 1)
    for picture in pictures_of(data):
        assert 0.01 < ink_share(picture) < 0.3


def test_hostile_names_are_on_the_sheet() -> None:
    _, page = sheet(hostile_season())
    data, _ = page_pdf(page, PAPERS["a4"], DAY_0, one_sheet=True)
    printed = text_of(data)
    for name in ("tray [A]", "=1+1", "{nb}", "[/] [bold red]", "A|B *c* _d_ `e` <b>f</b>"):
        assert name.replace(" ", "") in printed.replace(" ", "")


def test_an_empty_day_is_a_page_all_the_same() -> None:
    _, page = sheet(empty_season())
    data, _ = page_pdf(page, PAPERS["a5"], DAY_0, one_sheet=True)
    assert page_count(data) == 1
    assert "Round of Wednesday 27 May 2026" in text_of(data)


def test_three_thousand_batches_go_on_to_further_sheets() -> None:
    the_round, page = sheet(many_season())
    data, remarks = page_pdf(page, PAPERS["a4"], DAY_0, one_sheet=True)
    sheets = page_count(data)
    assert sheets > 10
    assert any(f"there are {sheets}" in remark for remark in remarks)
    assert f"{len(the_round.today)} " in text_of(data)


def test_the_same_morning_has_the_same_code_and_another_has_another() -> None:
    first = paper_list(build_round(sample_season(), DAY_0))
    assert paper_list(build_round(sample_season(), DAY_0)) == first
    tomorrow = paper_list(build_round(sample_season(), DAY_0 + timedelta(days=1)))
    assert tomorrow.code != first.code
    assert PaperList(first.day, first.keys[1:]).code != first.code


KEYS = st.lists(st.text(max_size=20), max_size=20).map(tuple)


@settings(deadline=None)
@given(day=st.dates(date(1900, 1, 1), date(2200, 1, 1)), keys=KEYS)
def test_a_kept_list_comes_back_and_its_code_is_no_number(day: date, keys: tuple[str, ...]) -> None:
    kept = PaperList(day, keys)
    try:
        data = list_data(kept)
    except UnicodeEncodeError:
        assert any("\ud800" <= sign <= "\udfff" for key in keys for sign in key)
        return
    assert list_from(data, kept.file_name) == kept
    assert len(kept.code) == 4
    assert not kept.code.isdigit()
    assert not set(kept.code) & set("ilou")


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"[]",
        b"{}",
        b'{"day": "x", "code": "a", "keys": []}',
        b"\xff\xfe",
        b'{"day": 1}',
        b"[" * 9000,
    ],
)
def test_a_damaged_list_is_refused_by_name(data: bytes) -> None:
    with pytest.raises(InputError, match=r"paper-x\.json"):
        list_from(data, "paper-x.json")


def test_a_list_that_was_changed_is_refused() -> None:
    data = list_data(PaperList(DAY_0, ("feed:b16:", "turn:b02:")))
    with pytest.raises(InputError, match="changed since"):
        list_from(data.replace(b"b16", b"b17"), "paper-x.json")


def test_what_only_some_tasks_of_a_family_say_is_said_once_for_those() -> None:
    _, page = sheet(sample_season())
    text = as_text(page)
    assert "\nwater from below: stand in 2-3 cm of water" in text
    assert text.count("starting and ending off the tray") == 1
    below = [line for line in text.splitlines() if "Water from below" in line]
    above = [line for line in text.splitlines() if "Water from above" in line]
    assert len(below) > 1
    assert len(above) > 1
    assert not any("stand in" in line for line in (*below, *above))
