"""Regression tests: pictures of data made by hand, as they were when somebody last looked at them.

`python -m tests.drawing.goldens` draws them anew; look at the difference before keeping it.
"""

from __future__ import annotations

import pytest

from benchround.drawing.canvas import Glyphs
from tests.drawing.checks import SETS, must_be_sayable, must_hold
from tests.drawing.goldens import FOLDER, PICTURES, WIDTHS, WORDS, drawn, said


@pytest.mark.parametrize("glyphs", SETS, ids=lambda glyphs: glyphs.name)
@pytest.mark.parametrize("name", PICTURES)
def test_regression_picture_is_as_it_was(name: str, glyphs: Glyphs) -> None:
    kept = (FOLDER / f"{name}-{glyphs.name}.txt").read_text("utf-8")
    assert drawn(name, glyphs) == kept


def test_regression_words_are_as_they_were() -> None:
    assert said() == (FOLDER / "words.txt").read_text("utf-8")


@pytest.mark.parametrize("glyphs", SETS, ids=lambda glyphs: glyphs.name)
@pytest.mark.parametrize("width", (*WIDTHS, 20, 21, 39, 40, 47, 300))
@pytest.mark.parametrize("name", PICTURES)
def test_pictures_keep_to_their_width(name: str, width: int, glyphs: Glyphs) -> None:
    must_hold(PICTURES[name](width, glyphs), width, glyphs)


@pytest.mark.parametrize("name", WORDS)
def test_words_can_be_read_aloud(name: str) -> None:
    must_be_sayable(WORDS[name]())


def test_no_golden_lies_about_that_nothing_draws() -> None:
    names = {f"{name}-{glyphs.name}.txt" for name in PICTURES for glyphs in SETS}
    assert {path.name for path in FOLDER.iterdir()} == names | {"words.txt"}
