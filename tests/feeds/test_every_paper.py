"""Every paper offered: nothing printed lies beyond its margins, measured by PDFium."""

from __future__ import annotations

import pytest
from PIL import Image

from benchround.core.errors import InputError
from benchround.feeds.label_pdf import labels_pdf
from benchround.feeds.label_settings import sheet_from
from benchround.feeds.labels import labels_of
from benchround.feeds.page_pdf import LEAST_PAPER_MM, MARGIN_MM, page_pdf
from benchround.feeds.pages import Page
from benchround.feeds.paper_round import paper_list, paper_page
from benchround.feeds.papers import PAPERS, Paper, paper_named
from benchround.feeds.report import report_page
from benchround.plain import place_name, title
from benchround.rounds.build import build_round
from tests.feeds.printed import ink_share, page_size_mm, pictures_of, words_of
from tests.feeds.seasons import hostile_records, hostile_season, sample_season
from tests.sample.story import DAY_0

OWN = ("74x105", "100x150", "297x210", "600x80")
EVERY = (*PAPERS, *OWN)
DPI = 50
EDGE_MM = 0.8
"""Slack of a dot at that many dots an inch, and of letters that lean out of their box."""


def pages() -> dict[str, Page]:
    season = sample_season()
    the_round = build_round(season, DAY_0)
    code = paper_list(the_round).code
    sheet = paper_page(
        the_round,
        lambda task: title(task, season),
        lambda task: place_name(season, task.place),
        "5 to 23 C",
        code,
    )
    return {"round": sheet, "hostile report": report_page(hostile_season(), "[/] x" * 30, DAY_0)}


def margins_of(picture: Image.Image, left_mm: float, top_mm: float) -> list[Image.Image]:
    """The four strips of a page that must be white."""
    wide, high = picture.size
    x, y = (int((mm - EDGE_MM) * DPI / 25.4) for mm in (left_mm, top_mm))
    return [
        picture.crop((0, 0, wide, y)),
        picture.crop((0, high - y, wide, high)),
        picture.crop((0, 0, x, high)),
        picture.crop((wide - x, 0, wide, high)),
    ]


@pytest.mark.parametrize(
    ("which", "name"),
    [
        *(("round", name) for name in EVERY if name != "600x80"),
        *(("hostile report", name) for name in ("a3", "a6", "letter", "74x105")),
    ],
)
def test_a_page_keeps_its_margins_on_every_paper(which: str, name: str) -> None:
    paper = paper_named(name)
    data, _ = page_pdf(pages()[which], paper, DAY_0, one_sheet=which == "round")
    assert page_size_mm(data) == pytest.approx((paper.width_mm, paper.height_mm), abs=0.1)
    for picture in pictures_of(data, DPI):
        assert ink_share(picture) > 0
        for strip in margins_of(picture, MARGIN_MM, MARGIN_MM):
            assert ink_share(strip) == 0
    assert_inside(data, paper)


@pytest.mark.parametrize("name", EVERY)
@pytest.mark.parametrize(("form", "sides"), [("stick-in", "folded"), ("stick-on", "two")])
def test_labels_lie_on_every_paper(name: str, form: str, sides: str) -> None:
    sheet = sheet_from({"paper": name, "form": form, "sides": sides})
    labels = labels_of(hostile_season(), hostile_records(), DAY_0)
    data, _ = labels_pdf(labels, sheet, DAY_0)
    assert_inside(data, sheet.paper)
    for picture in pictures_of(data, DPI):
        assert 0 < ink_share(picture) < 0.3
        if sheet.left_mm:
            assert all(ink_share(s) == 0 for s in margins_of(picture, sheet.left_mm, sheet.top_mm))


@pytest.mark.parametrize(("wide", "high"), [(20, 20), (62, 29), (300, 40), (60, 300)])
def test_paper_too_small_for_a_page_is_refused(wide: float, high: float) -> None:
    with pytest.raises(InputError, match=f"{LEAST_PAPER_MM[0]:g} x {LEAST_PAPER_MM[1]:g} mm"):
        page_pdf(Page("x", ()), Paper("x", wide, high), DAY_0, one_sheet=False)


def assert_inside(data: bytes, paper: Paper) -> None:
    words = words_of(data)
    assert words
    for word in words:
        assert min(word.left, word.top) > -EDGE_MM, word
        assert word.right < paper.width_mm + EDGE_MM, word
        assert word.bottom < paper.height_mm + EDGE_MM, word
