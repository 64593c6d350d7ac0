"""Lines in the order they stand on paper, and letters joined as another program joins them."""

from __future__ import annotations

from datetime import date
from importlib.util import find_spec
from pathlib import Path

import pytest
from PIL import Image, ImageChops, ImageDraw, ImageFont, features

from benchround.feeds.fonts import find_typefaces
from benchround.feeds.papers import Paper
from benchround.feeds.pdf_text import SHAPER, UNJOINED, Ink
from benchround.feeds.sight_order import in_sight_order, sight_runs
from tests.feeds.printed import pictures_of

DAY = date(2026, 5, 27)
ALEF_BET = {letter: chr(0x05D0 + at) for at, letter in enumerate("ABCDEFGHIJKLMNOPQRSTUVWXYZ")}
"""Capitals stand for letters read from the right, as in the examples of Unicode Annex 9."""

SEEN = [
    ("car means CAR.", "car means RAC.", "Unicode Annex 9, 3.3.3 (from memory)"),
    ("CAR 12", "12 RAC", "rule W7 and L2: figures are read from the left (from memory)"),
    ("rose 12 sown", "rose 12 sown", "nothing is turned"),
    ("ABC (def) GHI", "IHG (def) CBA", "rule N0: brackets around the other direction (memory)"),
]


def hebrew(text: str) -> str:
    return "".join(ALEF_BET.get(letter, letter) for letter in text)


@pytest.mark.parametrize(("read", "seen", "source"), SEEN, ids=[row[0] for row in SEEN])
def test_lines_stand_as_the_standard_has_them(read: str, seen: str, source: str) -> None:
    assert in_sight_order(hebrew(read)) == hebrew(seen), source
    turned = {"(": ")", ")": "("}
    runs = (
        "".join(turned.get(sign, sign) for sign in reversed(run.text))
        if run.from_right
        else run.text
        for run in sight_runs(hebrew(read))
    )
    assert "".join(runs) == hebrew(seen), source


@pytest.mark.skipif(not features.check("raqm"), reason="Pillow was built without its shaper")
@pytest.mark.skipif(find_spec(SHAPER) is None, reason="the extra 'joined' is not installed")
@pytest.mark.parametrize(
    "text",
    [
        "\u0648\u0631\u062f\u0629 \u062c\u0648\u0631\u064a\u0629",
        "\u0645\u06cc\u200c\u062e\u0648\u0627\u0647\u0645",
        "Rose \u0648\u0631\u062f\u0629 12 sown",
        "\u0917\u0947\u0902\u0926\u093e \u0915\u094d\u0937\u092e\u093e",
        "\u0938\u094d\u0925\u093f\u0924\u093f",
    ],
    ids=["rose of Damascus", "with a joiner", "mixed", "marigold", "stacked"],
)
def test_joined_letters_look_as_another_program_draws_them(tmp_path: Path, text: str) -> None:
    """Pillow with raqm lays the same typeface out; PDFium draws what we wrote."""
    faces = find_typefaces(tmp_path, folders=())
    assert faces.regular is not None
    with Ink(Paper("x", 140, 40), DAY, "t", faces=faces) as pen:
        pen.page()
        pen.lines([pen.ready(text)], 10, 10, 40)
        data, remarks = pen.data(), pen.remarks
    assert UNJOINED not in remarks
    ours = cropped(pictures_of(data, dpi=216)[0].convert("L"))
    theirs = cropped(drawn(text, faces.regular, ImageFont.Layout.RAQM))
    apart = cropped(drawn(text, faces.regular, ImageFont.Layout.BASIC))
    assert unlike(ours, theirs) < 0.15
    assert unlike(ours, apart) > 0.3


def drawn(text: str, path: Path, layout: ImageFont.Layout) -> Image.Image:
    face = ImageFont.truetype(str(path), 120, layout_engine=layout)
    picture = Image.new("L", (1500, 300), 255)
    ImageDraw.Draw(picture).text((20, 20), text, font=face, fill=0)
    return picture


def cropped(picture: Image.Image) -> Image.Image:
    box = picture.point(lambda dot: 255 if dot < 128 else 0).getbbox()
    assert box is not None
    return picture.crop(box)


def unlike(one: Image.Image, other: Image.Image) -> float:
    """Share of the ink that is not in both, the pictures laid on each other at their corner."""
    size = (max(one.width, other.width), max(one.height, other.height))
    inks = []
    for picture in (one, other):
        sheet = Image.new("L", size, 255)
        sheet.paste(picture, (0, 0))
        inks.append(ImageChops.invert(sheet))
    ink = sum(sum(at * count for at, count in enumerate(i.histogram())) for i in inks)
    odd = ImageChops.difference(*inks).histogram()
    return sum(at * count for at, count in enumerate(odd)) / ink


def test_without_the_shaper_letters_stand_one_by_one_and_that_is_said(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("benchround.feeds.pdf_text.find_spec", lambda name: None)
    with Ink(Paper("x", 140, 40), DAY, "t", faces=find_typefaces(tmp_path, folders=())) as pen:
        pen.page()
        pen.lines([pen.ready("\u0648\u0631\u062f\u0629")], 10, 10, 40)
        assert UNJOINED in pen.remarks
