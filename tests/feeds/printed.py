"""Looking at PDF files and QR codes with programs we did not write.

PDFium, which draws PDF files in a widespread browser, and a reader of barcodes come as wheels, so
whatever looks at a page runs wherever the tests do; `test_second_viewer` asks poppler too.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any

import pypdfium2
import zxingcpp
from PIL import Image

POINTS_A_MM = 72 / 25.4


@dataclass(frozen=True, slots=True)
class Word:
    """A word on a page, with its box in mm from the page's top left corner."""

    page: int
    text: str
    left: float
    top: float
    right: float
    bottom: float


def text_of(data: bytes) -> str:
    """The text of all pages, spaces between words."""
    with _pages(data) as pages:
        said = [page.get_textpage().get_text_range() for page in pages]
    return " ".join(" ".join(said).split())


def words_of(data: bytes) -> list[Word]:
    """Every word and where it stands; pages count from 1."""
    with _pages(data) as pages:
        return [word for number, page in enumerate(pages, 1) for word in _words(number, page)]


def pictures_of(data: bytes, dpi: int = 72) -> list[Image.Image]:
    """Every page as a grey picture."""
    with _pages(data) as pages:
        return [
            page.render(scale=dpi / 72, grayscale=True).to_pil().convert("L").copy()
            for page in pages
        ]


def ink_share(picture: Image.Image) -> float:
    """The share of a picture's dots that are dark."""
    counts = picture.histogram()
    return sum(counts[:128]) / sum(counts)


def page_count(data: bytes) -> int:
    """How many pages there are."""
    with _pages(data) as pages:
        return len(pages)


def page_size_mm(data: bytes) -> tuple[float, float]:
    """Width and height of the first page."""
    with _pages(data) as pages:
        wide, high = pages[0].get_size()
    return wide / POINTS_A_MM, high / POINTS_A_MM


def codes_in(picture: Image.Image) -> list[str]:
    """What the QR codes of a picture say."""
    return [code.text for code in zxingcpp.read_barcodes(picture)]


@contextmanager
def _pages(data: bytes) -> Iterator[list[Any]]:
    document = pypdfium2.PdfDocument(data)
    try:
        yield [document[at] for at in range(len(document))]
    finally:
        document.close()


def _words(number: int, page: Any) -> Iterator[Word]:
    high = page.get_size()[1]
    text = page.get_textpage()
    letters: list[tuple[str, tuple[float, float, float, float]]] = []
    for at in range(text.count_chars()):
        sign = text.get_text_range(at, 1)
        if sign.strip():
            letters.append((sign, text.get_charbox(at, loose=True)))
        elif letters:
            yield _word(number, high, letters)
            letters = []
    if letters:
        yield _word(number, high, letters)


def _word(
    number: int, high: float, letters: list[tuple[str, tuple[float, float, float, float]]]
) -> Word:
    left, bottom, right, top = zip(*(box for _, box in letters), strict=True)
    edges = (min(left), high - max(top), max(right), high - min(bottom))
    return Word(number, "".join(sign for sign, _ in letters), *(e / POINTS_A_MM for e in edges))
