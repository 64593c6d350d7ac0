"""Ink: a PDF being written, in letters the grower's own language has.

Only this file, `pdf_faces` and `sight_order` know fpdf2. Lengths are millimetres from the top left
corner, type sizes points.
"""

from __future__ import annotations

import math
import tempfile
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from datetime import UTC, date, datetime, time
from functools import partial
from importlib.util import find_spec
from pathlib import Path
from types import TracebackType

from benchround.core.errors import InputError
from benchround.core.extras import install_words
from benchround.feeds.fitting import Fitted, fit, line_height_mm, wrap
from benchround.feeds.fonts import Typefaces, find_typefaces
from benchround.feeds.letters import Printable, joins, printable
from benchround.feeds.papers import Paper

try:
    from fpdf import FPDF

    from benchround.feeds.pdf_faces import MAIN, Faces
    from benchround.feeds.sight_order import in_sight_order, sight_runs
except ImportError as error:  # pragma: no cover - the message is all that can be done
    raise InputError(
        f"PDF files need the package fpdf2: {install_words('paper')}. Or ask for plain text."
    ) from error

UNJOINED = "Letters that should be joined or stacked stand one by one: install the extra 'joined'."
MEASURED_AT_PT = 100.0
SHAPER = "uharfbuzz"
"""The package that joins and stacks letters, where it is installed."""
GREY = 150


class Ink:
    """Pages of one paper being written; use it in a `with` block and take `data` at the end.

    Args:
        paper: the paper of every page.
        day: the day the file says it was made, so that the same content gives the same file.
        title: the file's title.
        faces: the typefaces; None: the best at hand.
    """

    def __init__(
        self, paper: Paper, day: date, title: str, *, faces: Typefaces | None = None
    ) -> None:
        self.paper = paper
        self._folder = tempfile.TemporaryDirectory(prefix="benchround-", ignore_cleanup_errors=True)
        self._pdf = FPDF(format=(paper.width_mm, paper.height_mm))
        self._pdf.alias_nb_pages(None)  # type: ignore[arg-type]  # as its manual says: no alias
        self._pdf.set_auto_page_break(False)
        self._pdf.c_margin = 0
        self._pdf.set_creation_date(datetime.combine(day, time(6), UTC))
        self._pdf.set_title(title)
        found = find_typefaces(Path(self._folder.name)) if faces is None else faces
        self._faces = Faces(self._pdf, found)
        self._shapes = self._faces.family == MAIN and find_spec(SHAPER) is not None
        self._widths: dict[tuple[str, bool], float] = {}
        self._ready: dict[str, Printable] = {}
        self._remarks: dict[str, None] = {}

    def __enter__(self) -> Ink:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._folder.cleanup()

    @property
    def pages(self) -> int:
        """How many pages there are."""
        return self._pdf.pages_count

    @property
    def remarks(self) -> tuple[str, ...]:
        """What the grower should know about the letters; empty when all is well."""
        replaced = [s for ready in self._ready.values() for s in ready.replaced]
        said = list(self._remarks)
        if replaced:
            signs = " ".join(dict.fromkeys(replaced))
            said.append(f"No typeface at hand has {signs}: they are written in other letters.")
            if self._faces.remark:
                said.append(self._faces.remark)
        if not self._shapes and any(ready.joined for ready in self._ready.values()):
            said.append(UNJOINED)
        return tuple(said)

    def remark(self, text: str) -> None:
        """Note something the grower should know; the same sentence only once."""
        self._remarks[text] = None

    def page(self) -> None:
        """Begin a page."""
        self._pdf.add_page()

    def ready(self, text: str) -> str:
        """A text in letters that can be printed; what had to be replaced becomes a remark."""
        if text not in self._ready:
            self._ready[text] = printable(text, self._faces.has)
        return self._ready[text].text

    def measure(self, bold: bool = False) -> Callable[[str], float]:
        """What gives a printable text's width in mm at a size of one point."""
        return partial(self._width, bold=bold)

    def wrap(
        self, text: str, width_mm: float, size_pt: float, *, bold: bool = False
    ) -> tuple[str, ...]:
        """A text in lines no wider than that."""
        return wrap(self.ready(text), width_mm, size_pt, self.measure(bold))

    def fit(
        self,
        paragraphs: Iterable[str],
        width_mm: float,
        height_mm: float,
        largest_pt: float,
        *,
        bold: bool = False,
        unbroken_pt: float = math.inf,
    ) -> Fitted:
        """Paragraphs at the largest size at which they fit; `fitting.fit` says more."""
        texts = [self.ready(text) for text in paragraphs]
        return fit(texts, width_mm, height_mm, largest_pt, self.measure(bold), unbroken_pt)

    def remark_size(self, fitted: Fitted) -> None:
        """Note letters that came out too small to read."""
        if fitted.lines and not fitted.readable:
            start = " ".join(fitted.lines)[:40]
            self.remark(f"'{start}' is set in {fitted.size_pt:g} point, hard to read.")

    def lines(
        self,
        lines: Sequence[str],
        left: float,
        top: float,
        size_pt: float,
        *,
        bold: bool = False,
        right: float | None = None,
    ) -> None:
        """Write lines that were wrapped before; with `right` they end there instead."""
        wide = [0.0 if right is None else self._width(line, bold=bold) for line in lines]
        self._set(bold, size_pt)
        for number, line in enumerate(lines):
            x = left if right is None else right - wide[number] * size_pt
            y = top + number * line_height_mm(size_pt)
            self._line(line, x, y, bold=bold, size_pt=size_pt)

    def _line(self, line: str, x: float, y: float, *, bold: bool, size_pt: float) -> None:
        high = line_height_mm(size_pt)
        if not self._joined(line):
            self._pdf.set_xy(x, y)
            self._pdf.cell(h=high, text=in_sight_order(line))
            return
        for run in sight_runs(line):
            self._pdf.set_text_shaping(True, direction="rtl" if run.from_right else "ltr")
            wide = self._pdf.get_string_width(run.text)
            self._pdf.set_xy(x, y)
            self._pdf.cell(w=wide, h=high, text=run.text)
            x += wide
        self._pdf.set_text_shaping(False)

    def box(self, left: float, top: float, width: float, height: float) -> None:
        """An empty box to tick."""
        self._pdf.set_draw_color(0)
        self._pdf.set_line_width(0.25)
        self._pdf.rect(left, top, width, height)

    def rule(
        self, left: float, top: float, to_left: float, to_top: float, *, dashed: bool = False
    ) -> None:
        """A thin grey line, such as one to cut or fold along."""
        self._pdf.set_draw_color(GREY)
        self._pdf.set_line_width(0.1)
        if dashed:
            self._pdf.set_dash_pattern(1.5, 1.5)
        self._pdf.line(left, top, to_left, to_top)
        self._pdf.set_dash_pattern()

    def fill(self, left: float, top: float, width: float, height: float) -> None:
        """A black rectangle."""
        self._pdf.set_fill_color(0)
        self._pdf.rect(left, top, width, height, style="F")

    @contextmanager
    def upside_down(self, x: float, y: float) -> Iterator[None]:
        """Everything drawn inside is turned by half a turn around a point."""
        with self._pdf.rotation(180, x, y):
            yield

    def data(self) -> bytes:
        """The finished file."""
        return bytes(self._pdf.output())

    def _width(self, text: str, *, bold: bool) -> float:
        key = (text, bold)
        if key not in self._widths:
            self._set(bold, MEASURED_AT_PT)
            self._pdf.set_text_shaping(self._joined(text))
            self._widths[key] = self._pdf.get_string_width(text) / MEASURED_AT_PT
            self._pdf.set_text_shaping(False)
        return self._widths[key]

    def _joined(self, text: str) -> bool:
        """Whether letters of a text are to be joined or stacked, and can be."""
        return self._shapes and any(map(joins, text))

    def _set(self, bold: bool, size_pt: float) -> None:
        self._pdf.set_font(self._faces.family, "B" if bold else "", size_pt)
