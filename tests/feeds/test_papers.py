"""Sizes of paper and sizes as they are typed."""

from __future__ import annotations

import math

import pytest

from benchround.core.errors import InputError
from benchround.feeds.papers import paper_named, read_size


@pytest.mark.parametrize(
    ("name", "width", "height", "source"),
    [
        ("A4", 210.0, 297.0, "ISO 216 (from memory)"),
        ("a5", 148.0, 210.0, "ISO 216 (from memory)"),
        ("Letter", 8.5 * 25.4, 11 * 25.4, "ANSI/ASME Y14.1: 8.5 x 11 in (from memory)"),
        ("100x150", 100.0, 150.0, "as typed"),
    ],
)
def test_papers(name: str, width: float, height: float, source: str) -> None:
    paper = paper_named(name)
    assert math.isclose(paper.width_mm, width), source
    assert math.isclose(paper.height_mm, height), source


@pytest.mark.parametrize(
    ("text", "size"),
    [("100x13", (100.0, 13.0)), ("63.5 x 38,1", (63.5, 38.1)), ("70*37 mm", (70.0, 37.0))],
)
def test_sizes(text: str, size: tuple[float, float]) -> None:
    assert read_size(text) == size


@pytest.mark.parametrize("text", ["", "100", "x13", "1e3x2", "-1x5", "axb", "9" * 500])
def test_what_is_no_size_is_refused(text: str) -> None:
    with pytest.raises(InputError, match="as 100x13"):
        read_size(text)


@pytest.mark.parametrize("name", ["", "A9", "5x5", "9999x10", "letter paper"])
def test_what_is_no_paper_is_refused(name: str) -> None:
    with pytest.raises(InputError, match="is no paper"):
        paper_named(name)
