"""A sheet of labels as it is typed: names and values, each a length in millimetres or a word."""

from __future__ import annotations

from collections.abc import Mapping

from benchround.core.errors import InputError
from benchround.core.typed.figures import MOST_COUNT, naming, number_in, read_whole, shown
from benchround.feeds.label_sheets import Sheet, Sides, laid_out
from benchround.feeds.papers import Paper, paper_named, read_size

STICK_IN, STICK_ON = "stick-in", "stick-on"
STICK_IN_SIZE, STICK_ON_SIZE = (100.0, 13.0), (70.0, 37.0)
FOOT_MM = 25.0
"""How deep a stick-in label goes into a tray (our proposal)."""
MARGINS_MM = (5.0, 8.0)
"""Left and top margin of plain paper, which printers leave white (common practice, no source)."""
NOT_KEPT = ("first",)


def sheet_from(options: Mapping[str, str]) -> Sheet:
    """The sheet some options describe; what is left out takes its usual value.

    Args:
        options: form, paper, size, sides, columns, rows, left, top, gap, foot, first.

    Raises:
        InputError: an option cannot be understood, or the labels do not fit.
        OutOfRangeError: a figure cannot be.
    """
    form = options.get("form") or STICK_IN
    if form not in (STICK_IN, STICK_ON):
        raise InputError(f"form: '{form[:30]}' is neither {STICK_IN} nor {STICK_ON}.")
    into_tray = form == STICK_IN
    paper = paper_named(options.get("paper") or "A4")
    left, top = MARGINS_MM if into_tray else (0.0, 0.0)
    size = (
        read_size(options["size"])
        if options.get("size")
        else _usual_size(paper, left, STICK_IN_SIZE if into_tray else STICK_ON_SIZE)
    )
    foot = min(FOOT_MM, size[0] / 4) if into_tray else 0.0
    return laid_out(
        paper,
        size,
        columns=_count("columns", options),
        rows=_count("rows", options),
        left_mm=_length("left", options, left),
        top_mm=_length("top", options, top),
        gap_mm=read_size(options["gap"]) if options.get("gap") else (0.0, 0.0),
        foot_mm=_length("foot", options, foot),
        sides=_sides(options, Sides.FOLDED if into_tray else Sides.ONE),
        cut=into_tray,
        first=_count("first", options) or 1,
    )


def sheet_words(options: Mapping[str, str]) -> str:
    """The options in one line, to be remembered."""
    kept = ((name, value) for name, value in options.items() if value and name not in NOT_KEPT)
    return " ".join(f"{name}={value.replace(' ', '')}" for name, value in kept)


def _usual_size(paper: Paper, left: float, size: tuple[float, float]) -> tuple[float, float]:
    """The usual size of a label, smaller where the paper is, so that one still stands on it."""
    return min(size[0], paper.width_mm - 2 * left), min(size[1], paper.height_mm)


def _sides(options: Mapping[str, str], otherwise: Sides) -> Sides:
    said = options.get("sides") or otherwise.value
    if said not in set(Sides):
        raise InputError(f"sides: '{said[:30]}' is none of {', '.join(Sides)}.")
    return Sides(said)


def _count(name: str, options: Mapping[str, str]) -> int | None:
    text = options.get(name) or ""
    if not text:
        return None
    return naming(name, lambda: read_whole(text, MOST_COUNT))


def _length(name: str, options: Mapping[str, str], otherwise: float) -> float:
    text = options.get(name) or ""
    if not text:
        return otherwise
    length = number_in(text.strip())
    if length is None:
        raise InputError(f"{name}: '{shown(text)}' is no length in millimetres.")
    return length
