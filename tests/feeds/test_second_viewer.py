"""What the tests see through PDFium, seen again through poppler, where that is installed."""

from __future__ import annotations

import re
import shutil
import subprocess
from collections import Counter
from functools import lru_cache
from pathlib import Path

import pytest
from PIL import Image

from benchround.feeds.label_pdf import labels_pdf
from benchround.feeds.label_settings import sheet_from
from benchround.feeds.labels import labels_of
from benchround.feeds.page_pdf import page_pdf
from benchround.feeds.papers import PAPERS
from benchround.feeds.report import report_page
from tests.feeds.printed import ink_share, page_count, page_size_mm, pictures_of, text_of
from tests.feeds.seasons import hostile_records, hostile_season, sample_season
from tests.feeds.test_paper_round import sheet as round_sheet
from tests.sample.story import DAY_0, records

pytestmark = pytest.mark.skipif(
    not all(map(shutil.which, ("pdftoppm", "pdftotext", "pdfinfo"))),
    reason="poppler-utils is not installed: PDF files were opened by PDFium alone",
)
MADE = ("folded", "two sides", "hostile stick-on with codes", "round", "report", "hostile report")


@lru_cache
def made(which: str) -> bytes:
    match which:
        case "round":
            return page_pdf(
                round_sheet(sample_season())[1], PAPERS["letter"], DAY_0, one_sheet=True
            )[0]
        case "report" | "hostile report":
            season = sample_season() if which == "report" else hostile_season()
            page = report_page(season, "A season", DAY_0)
            return page_pdf(page, PAPERS["a5"], DAY_0, one_sheet=False)[0]
        case "hostile stick-on with codes":
            labels = labels_of(hostile_season(), hostile_records(), DAY_0)
            return labels_pdf(labels, sheet_from({"form": "stick-on"}), DAY_0, qr=True)[0]
        case _:
            labels = labels_of(sample_season(), records(), DAY_0)
            sides = {"sides": "two"} if which == "two sides" else {}
            return labels_pdf(labels, sheet_from(sides), DAY_0)[0]


def asked(program: str, data: bytes, *words: str, folder: Path) -> str:
    path = folder / "printed.pdf"
    path.write_bytes(data)
    command = [program, *words[:-1], str(path), *words[-1:]]
    done = subprocess.run(command, capture_output=True, check=True)
    assert done.stderr == b""
    return done.stdout.decode("utf-8")


def letters(text: str) -> Counter[str]:
    """The letters of a text: the order of lines is each viewer's own, and so is whether a line's
    last hyphen is told; poppler alone marks directions.
    """
    return Counter(re.sub(r"[\s\u200e\u200f\u202a-\u202e-]", "", text))


@pytest.mark.parametrize("which", MADE)
def test_both_find_the_same_pages_and_letters(tmp_path: Path, which: str) -> None:
    data = made(which)
    command = ["pdfinfo", "-"]
    told = subprocess.run(command, input=data, capture_output=True, check=True).stdout.decode()
    assert re.findall(r"^Pages:\s+(\d+)", told, re.MULTILINE) == [str(page_count(data))]
    size = re.findall(r"Page size:\s+([\d.]+) x ([\d.]+)", told)[0]
    assert [float(side) / 72 * 25.4 for side in size] == pytest.approx(page_size_mm(data), abs=0.1)
    text = asked("pdftotext", data, "-enc", "UTF-8", "-", folder=tmp_path)
    assert letters(text) == letters(text_of(data))


@pytest.mark.parametrize("which", MADE)
def test_both_draw_the_same_ink(tmp_path: Path, which: str) -> None:
    data = made(which)
    asked("pdftoppm", data, "-r", "200", "-gray", str(tmp_path / "page"), folder=tmp_path)
    theirs = [Image.open(name) for name in sorted(tmp_path.glob("page*.pgm"))]
    ours = pictures_of(data, dpi=200)
    assert len(theirs) == len(ours)
    for one, other in zip(theirs, ours, strict=True):
        assert abs(one.width - other.width) <= 1
        assert abs(one.height - other.height) <= 1
        assert ink_share(one) == pytest.approx(ink_share(other), rel=0.3)
