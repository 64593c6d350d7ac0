"""Typefaces: found where they are, and done without where there are none."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]  # has no types

from benchround.feeds.fonts import BUILT_IN, Typefaces, find_typefaces
from benchround.feeds.papers import PAPERS
from benchround.feeds.pdf_text import Ink
from tests.feeds.printed import pictures_of, text_of
from tests.feeds.typefaces import collection, one_sign_typeface

DAY = date(2026, 5, 27)
ALPHABETS = {
    # the letters of the Universal Declaration's first word in several languages (from memory)
    "Czech": "\u0161\u010d\u0159\u017e\u00fd\u00e1\u00ed\u00e9\u016f\u0165\u010f\u0148",
    "Polish": "\u0105\u0107\u0119\u0142\u0144\u00f3\u015b\u017a\u017c",
    "Russian": "\u0430\u0431\u0432\u0433\u0434\u0435\u0451\u0436\u0437\u0438\u0439",
    "Greek": "\u03b1\u03b2\u03b3\u03b4\u03b5\u03ac\u03ce",
    "Hebrew": "\u05d0\u05d1\u05d2\u05d3",
    "Arabic": "\u0627\u0628\u062a\u0648\u0631\u062f\u0629",
    "Hindi": "\u0905\u0917\u0947\u0902\u0926\u093e\u094d",
    "Thai": "\u0e01\u0e38\u0e2b\u0e25\u0e32\u0e1a",
    "Georgian": "\u10d0\u10d1\u10d2\u10d3",
}


def test_the_packaged_typeface_has_the_letters_of_many_languages(tmp_path: Path) -> None:
    """Looked up in the file's own character map with fontTools."""
    faces = find_typefaces(tmp_path, folders=())
    assert faces.regular is not None
    assert faces.bold is not None
    assert not faces.remark
    for path in (faces.regular, faces.bold):
        cmap = TTFont(path).getBestCmap()
        for language, letters in ALPHABETS.items():
            assert all(ord(letter) in cmap for letter in letters), language


def test_a_system_typeface_is_found_by_name_however_deep(tmp_path: Path) -> None:
    packaged = find_typefaces(tmp_path, folders=()).regular
    assert packaged is not None
    deep = tmp_path / "share" / "truetype" / "dejavu"
    deep.mkdir(parents=True)
    (deep / "DejaVuSans.ttf").write_bytes(packaged.read_bytes())
    (deep / "unifont.ttf").write_bytes(packaged.read_bytes())
    faces = find_typefaces(tmp_path, folders=(tmp_path / "share",), packaged=False)
    assert faces.regular == deep / "DejaVuSans.ttf"
    assert faces.bold is None
    assert faces.others == (deep / "unifont.ttf",)


def test_without_any_typeface_the_built_in_one_is_used_and_said(tmp_path: Path) -> None:
    faces = find_typefaces(tmp_path, folders=(tmp_path / "nowhere",), packaged=False)
    assert faces.regular is None
    assert faces.remark == BUILT_IN


def test_with_the_built_in_typeface_nothing_vanishes_and_it_is_said(tmp_path: Path) -> None:
    faces = find_typefaces(tmp_path, folders=(), packaged=False)
    with Ink(PAPERS["a4"], DAY, "t", faces=faces) as pen:
        pen.page()
        words = ("Caf\u00e9 cr\u00e8me", "\u0411\u0430\u0440\u0445\u0430\u0442", "\u65e5\u672c")
        for at, text in enumerate(words):
            pen.lines([pen.ready(text)], 10, 10 + 10 * at, 12)
        data, remarks = pen.data(), pen.remarks
    assert text_of(data) == "Caf\u00e9 cr\u00e8me Barkhat [U+65E5][U+672C]"
    assert any("\u65e5" in remark and "\u0411" in remark for remark in remarks)
    assert BUILT_IN in remarks


@pytest.mark.parametrize("collected", [False, True], ids=["alone", "in a collection"])
@pytest.mark.parametrize("postscript", [False, True], ids=["TrueType", "PostScript"])
def test_letters_missing_in_the_main_typeface_come_from_another(
    tmp_path: Path, postscript: bool, collected: bool
) -> None:
    """The other one is made with fontTools: a single square for a single sign, seen by PDFium."""
    main = find_typefaces(tmp_path, folders=())
    other = one_sign_typeface(tmp_path, "\u2714", postscript=postscript)
    faces = Typefaces(main.regular, main.bold, (collection(other) if collected else other,))
    with Ink(PAPERS["a5"], DAY, "t", faces=faces) as pen:
        pen.page()
        pen.lines([pen.ready("leek \u2714 pricked")], 10, 10, 12, bold=True)
        pen.lines([pen.ready("\u2714")], 10, 60, 100)
        data, remarks = pen.data(), pen.remarks
    assert text_of(data) == "leek \u2714 pricked \u2714"
    assert remarks == ()
    (picture,) = pictures_of(data)
    below = picture.crop((0, 50 * 72 // 25, picture.width, picture.height))
    box = below.point(lambda dot: 255 if dot < 128 else 0).getbbox()
    assert box is not None
    left, top, right, bottom = box
    assert right - left == pytest.approx(60, abs=2)  # 600 of 1000 units at 100 point
    assert bottom - top == pytest.approx(60, abs=2)


def test_other_typefaces_are_read_only_once_a_letter_asks_for_them(tmp_path: Path) -> None:
    main = find_typefaces(tmp_path, folders=())
    faces = Typefaces(main.regular, main.bold, (tmp_path / "gone.ttf",))
    with Ink(PAPERS["a5"], DAY, "t", faces=faces) as pen:
        pen.page()
        pen.lines([pen.ready("\u0411\u0430\u0440\u0445\u0430\u0442")], 10, 10, 12)
        assert text_of(pen.data())
        with pytest.raises(FileNotFoundError):
            pen.ready("\u65e5")


@pytest.mark.parametrize("text", ["{nb}", "**b** __i__ [x](y)", "100 % \\n (a) <b>"])
def test_no_text_is_read_as_a_mark(text: str) -> None:
    with Ink(PAPERS["a5"], DAY, text) as pen:
        pen.page()
        pen.page()
        pen.lines([pen.ready(text)], 10, 10, 12)
        data = pen.data()
    assert text_of(data) == text


def test_the_same_page_gives_the_same_bytes() -> None:
    made: list[bytes] = []
    for _ in range(2):
        with Ink(PAPERS["letter"], DAY, "t") as pen:
            pen.page()
            pen.lines([pen.ready("\u017dlutoucky")], 10, 10, 12)
            made.append(pen.data())
    assert made[0] == made[1]
