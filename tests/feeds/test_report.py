"""The season's report: one content, written as Markdown and as PDF."""

from __future__ import annotations

from datetime import datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from markdown_it import MarkdownIt

from benchround.core.errors import StoppedError
from benchround.core.record import Figure, Kind, Record
from benchround.core.season import Season
from benchround.crops.library import load_library
from benchround.feeds.letters import one_line
from benchround.feeds.next_time import findings
from benchround.feeds.next_year import next_year
from benchround.feeds.page_pdf import page_pdf
from benchround.feeds.page_text import as_markdown, as_text
from benchround.feeds.pages import Grid, Heading, Page, Tick, Words
from benchround.feeds.papers import PAPERS
from benchround.feeds.report import report_page
from tests.feeds.printed import ink_share, page_count, pictures_of, text_of, words_of
from tests.feeds.seasons import (
    HOSTILE,
    empty_season,
    hostile_season,
    many_season,
    sample_season,
)
from tests.folding import fold_season
from tests.sample.story import DAY_0


def page(season: Season) -> Page:
    return report_page(season, "The sample season", DAY_0)


def markdown_words(text: str) -> list[str]:
    """The words markdown-it finds in a Markdown text, marks taken off."""
    tokens = MarkdownIt("commonmark").enable(["table", "strikethrough"]).parse(text)
    inline = [child for token in tokens for child in token.children or []]
    return " ".join(child.content for child in inline if child.type == "text").split()


def plain_words(content: Page) -> list[str]:
    """The words the page holds."""
    texts = [content.title]
    for block in content.blocks:
        match block:
            case Heading(text) | Words(text):
                texts.append(text)
            case Grid(columns, rows):
                texts.extend((*columns, *(cell for row in rows for cell in row)))
            case Tick(number, text, blanks):
                texts.extend((str(number), text, *blanks))
    return " ".join(one_line(text) for text in texts).split()


@pytest.mark.parametrize(
    "season",
    [sample_season(), hostile_season(), empty_season()],
    ids=["sample", "hostile", "empty"],
)
def test_markdown_says_what_the_page_says_and_nothing_is_a_mark(season: Season) -> None:
    """Read back by markdown-it with tables and strikethrough switched on."""
    content = page(season)
    assert "".join(markdown_words(as_markdown(content))) == "".join(plain_words(content))


MARKS = st.one_of(st.sampled_from("#*_`[]()<>|~&-+=.:1 \\!"), st.characters())


@settings(deadline=None)
@given(st.lists(st.text(alphabet=MARKS, max_size=30), min_size=3, max_size=3))
def test_any_text_is_no_mark_in_a_heading_a_paragraph_or_a_table(texts: list[str]) -> None:
    heading, words, cell = texts
    content = Page("t", (Heading(heading), Words(words), Grid(("c",), ((cell,),))))
    assert "".join(markdown_words(as_markdown(content))) == "".join(plain_words(content))


def test_headings_and_tables_are_what_markdown_it_takes_them_for() -> None:
    tokens = MarkdownIt("commonmark").enable("table").parse(as_markdown(page(sample_season())))
    headings = [token.tag for token in tokens if token.type == "heading_open"]
    assert headings.count("h1") == 1
    assert headings.count("h2") == 6
    assert sum(token.type == "table_open" for token in tokens) == 10
    assert sum(token.type == "tr_open" for token in tokens) > 100


@pytest.mark.parametrize("paper", sorted(PAPERS))
def test_the_pdf_says_what_the_page_says(paper: str) -> None:
    content = page(sample_season())
    data, remarks = page_pdf(content, PAPERS[paper], DAY_0, one_sheet=False)
    printed = text_of(data).replace(" ", "")
    assert [word for word in plain_words(content) if word not in printed] == []
    assert remarks == ()
    for picture in pictures_of(data):
        assert 0.002 < ink_share(picture) < 0.3
        edge = picture.crop((0, 0, picture.width, 20))
        assert ink_share(edge) == 0


def test_a_tables_head_is_on_every_sheet() -> None:
    rows = tuple((f"row{n}", str(n)) for n in range(300))
    content = Page("t", (Grid(("uncommonhead", "number"), rows, frozenset({1})),))
    data, _ = page_pdf(content, PAPERS["a4"], DAY_0, one_sheet=False)
    sheets = page_count(data)
    assert sheets > 3
    printed = text_of(data)
    assert printed.count("uncommonhead") == sheets
    assert all(printed.split().count(f"row{n}") == 1 for n in range(300))


def test_hostile_names_in_the_pdf() -> None:
    data, remarks = page_pdf(page(hostile_season()), PAPERS["a4"], DAY_0, one_sheet=False)
    printed = text_of(data).replace(" ", "")
    for name in HOSTILE:
        if name.isascii() and name.isprintable():
            assert name.replace(" ", "") in printed
    assert remarks


def test_three_thousand_batches() -> None:
    content = page(many_season())
    data, _ = page_pdf(content, PAPERS["a4"], DAY_0, one_sheet=False)
    assert page_count(data) > 60
    printed = text_of(data)
    assert "b0001" in printed
    assert "b3000" in printed


def test_an_empty_season_says_so() -> None:
    text = as_markdown(page(empty_season()))
    assert "Nothing was sown or planted yet" in text
    assert "|" not in text


def test_the_report_ends_with_what_to_sow_next_year() -> None:
    content = page(sample_season())
    headings = [block.text for block in content.blocks if isinstance(block, Heading)]
    assert headings[-1] == "What to sow when next year"
    last = content.blocks[-1]
    assert isinstance(last, Grid)
    assert last.columns == ("sow on", "crop", "variety", "wanted", "seeds", "because")
    days = [datetime.strptime(row[0], "%d %b %Y") for row in last.rows]
    assert days == sorted(days)
    assert [block.text for block in content.blocks if isinstance(block, Heading)][-2] == (
        "What to do differently"
    )


def test_plain_text_has_every_cell() -> None:
    text = as_text(page(sample_season()))
    assert "b01 | Cosmos | Paper Lantern" in text


def test_a_batch_that_is_gone_is_said_to_be_lost_and_shares_have_their_range() -> None:
    """36 of 40 is 77 % to 96 % by Wilson's score interval (1927), worked by hand."""
    text = as_markdown(page(sample_season()))
    assert "| b31 | Lobelia | Thin Blue | 24 | 0 | all lost |" in text
    assert "yours 86% from 40 seeds in 1 sowing, 36 up (77% to 96%)" in text


def test_a_long_report_says_how_far_it_is_and_can_be_stopped() -> None:
    heard: list[tuple[int, int]] = []

    def stop(done: int, of: int) -> None:
        heard.append((done, of))
        if done >= 100:
            raise StoppedError("Stopped")

    with pytest.raises(StoppedError):
        page_pdf(page(sample_season()), PAPERS["a4"], DAY_0, one_sheet=False, progress=stop)
    assert [done for done, _ in heard] == [0, 50, 100]
    assert heard[0][1] > 150


def test_a_packet_is_told_with_what_is_in_it() -> None:
    """The other sowing of it has only its leaves noted, and is counted today (regression)."""
    assert "| p01: Cosmos Paper Lantern 2026 | 1 | 40 | 35 |" in as_markdown(page(sample_season()))


def test_names_are_never_turned_into_other_units() -> None:
    """As on the screens: 'Row 20 cm' is a name, not a length."""
    figures: dict[str, Figure] = {"crop": "cosmos", "variety": "Row 20 cm at 5 C", "seeds": 9}
    season = fold_season(
        (
            Record("0A1", DAY_0, Kind.SETTING, "units", {"value": "F"}),
            Record("0A2", DAY_0, Kind.SETTING, "rain_units", {"value": "inch"}),
            Record("0A3", DAY_0, Kind.SOWN, "b01", figures),
        ),
        load_library(),
    )
    assert season.unit_words("at 5 C") == "at 41 F"
    assert as_markdown(page(season)).count("| Row 20 cm at 5 C |") == 2


def test_many_lost_batches_are_counted_where_they_are_not_named() -> None:
    records: list[Record] = []
    for at in range(70):
        batch = f"b{at:02d}"
        records.append(
            Record(f"0A{at:02d}a", DAY_0, Kind.SOWN, batch, {"crop": "leek", "seeds": 9})
        )
        figures: dict[str, Figure] = {"cause": "mouse", "all": True}
        records.append(Record(f"0A{at:02d}b", DAY_0, Kind.LOST, batch, figures))
    text = as_markdown(page(fold_season(records, load_library())))
    assert "Lost altogether: b00, b01" in text
    assert "b59 and 10 more." in text


def sizes(content: Page) -> set[float]:
    """Heights of the letters of a page's rows, in mm, as PDFium has them."""
    data, _ = page_pdf(content, PAPERS["a4"], DAY_0, one_sheet=False)
    return {round(word.bottom - word.top, 1) for word in words_of(data) if word.text == "b01"}


def test_one_very_long_word_does_not_make_the_whole_report_small() -> None:
    columns = ("batch", "variety", *(f"column{at}" for at in range(7)))
    short = tuple((f"b{at:02d}", "Row", *("12",) * 7) for at in range(1, 9))
    long = (*short, ("b09", "x" * 200, *("12",) * 7))
    usual = Page("t", (Grid(columns, short),))
    odd = Page("t", (Grid(columns, long),))
    assert sizes(odd) == sizes(usual)
    data, _ = page_pdf(odd, PAPERS["a4"], DAY_0, one_sheet=False)
    assert "x" * 200 in text_of(data).replace(" ", "")


@pytest.mark.parametrize(("title", "foot"), [("A season", "A season, "), ("long " * 60, "")])
def test_sheets_are_numbered_where_there_are_several(title: str, foot: str) -> None:
    rows = tuple((f"row{at}",) for at in range(200))
    data, _ = page_pdf(Page(title, (Grid(("c",), rows),)), PAPERS["a4"], DAY_0, one_sheet=False)
    sheets = page_count(data)
    assert sheets > 2
    text = text_of(data)
    for number in range(1, sheets + 1):
        assert f"{foot}{number} of {sheets}" in text
    data, _ = page_pdf(Page(title, (Words("short"),)), PAPERS["a4"], DAY_0, one_sheet=False)
    assert "1 of 1" not in text_of(data)


def test_the_foot_stands_below_everything_else() -> None:
    rows = tuple((f"row{at}",) for at in range(200))
    data, _ = page_pdf(Page("t", (Grid(("c",), rows),)), PAPERS["a4"], DAY_0, one_sheet=False)
    words = words_of(data)
    for page_number in range(1, page_count(data) + 1):
        here = [word for word in words if word.page == page_number]
        foot = next(word for word in here if word.text == "of")
        assert max(w.bottom for w in here if w.text.startswith("row")) < foot.top


def test_both_ends_of_the_report_name_the_same_number_of_seeds() -> None:
    """The packet's own figure is taken in both, not the library's in one of them."""
    season = sample_season()
    (lesson,) = [one for one in findings(season) if one.found.startswith("b25 Delphinium")]
    (advice,) = [one for one in next_year(season, DAY_0) if one.crop == "Delphinium"]
    assert lesson.therefore.startswith(f"{advice.seeds} seeds are enough")
