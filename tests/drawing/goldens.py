"""Every picture at four widths in both sets of signs.

`python -m tests.drawing.goldens` writes them anew.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

from benchround.drawing.canvas import Glyphs, Line, plain
from benchround.drawing.flowering import flowering_lines, flowerings
from benchround.drawing.frame_day import frame_lines, frame_words
from benchround.drawing.germination import germination_lines
from benchround.drawing.lifecycle import lifecycle_lines
from benchround.drawing.room import room_lines, room_words
from benchround.drawing.water import water_lines, water_words
from benchround.drawing.year import strip_words
from benchround.drawing.year_strips import Order, in_order
from tests.drawing.checks import SETS
from tests.drawing.fixed import (
    FRAME,
    GERMINATION,
    ROOM,
    STRIPS,
    TODAY,
    WATER,
    WAY,
    YEAR,
)
from tests.drawing.whole_year import year_lines

FOLDER = Path(__file__).parent / "goldens"
WIDTHS = (60, 80, 120, 200)
FOUND = flowerings(STRIPS, YEAR, "b01")

PICTURES: Mapping[str, Callable[[int, Glyphs], tuple[Line, ...]]] = {
    "year-by-place": lambda w, g: year_lines(STRIPS, YEAR, TODAY, w, g),
    "year-by-sowing": lambda w, g: year_lines(
        in_order(STRIPS, Order.SOWING), YEAR, TODAY, w, g, Order.SOWING
    ),
    "year-by-flowering": lambda w, g: year_lines(
        in_order(STRIPS, Order.FLOWERING), YEAR, TODAY, w, g, Order.FLOWERING
    ),
    "flowering": lambda w, g: flowering_lines(FOUND, YEAR, TODAY, w, g, "b01"),
    "room": lambda w, g: room_lines(ROOM, TODAY, w, g),
    "frame": lambda w, g: frame_lines(FRAME, w, g),
    "germination": lambda w, g: germination_lines(GERMINATION, w, g),
    "water": lambda w, g: water_lines(WATER, w, g),
    "lifecycle": lambda w, g: lifecycle_lines(WAY, w, g),
}
WORDS: Mapping[str, Callable[[], str]] = {
    "year": lambda: " ".join(strip_words(strip, TODAY) for strip in STRIPS),
    "room": lambda: room_words(ROOM, TODAY),
    "frame": lambda: frame_words(FRAME),
    "water": lambda: water_words(WATER),
}


def drawn(name: str, glyphs: Glyphs) -> str:
    """One picture at all widths, each headed by its width."""
    pictures = (f"== {w} ==\n{plain(PICTURES[name](w, glyphs))}\n" for w in WIDTHS)
    return "\n".join(pictures)


def said() -> str:
    """Every picture that has words, in words, a sentence on each line."""
    told = (_listed(name, words()) for name, words in WORDS.items())
    return "\n".join(told)


def _listed(name: str, words: str) -> str:
    return f"== {name} ==\n" + words.replace(". ", ".\n") + "\n"


def write() -> None:
    """Write all goldens; look at the difference before keeping it."""
    FOLDER.mkdir(exist_ok=True)
    for name in PICTURES:
        for glyphs in SETS:
            (FOLDER / f"{name}-{glyphs.name}.txt").write_text(drawn(name, glyphs), "utf-8")
    (FOLDER / "words.txt").write_text(said(), "utf-8")


if __name__ == "__main__":
    write()
