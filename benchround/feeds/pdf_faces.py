"""The typefaces of a PDF being written: the main one, and others once a letter asks for them."""

from __future__ import annotations

import logging
import unicodedata

from fpdf import FPDF

from benchround.feeds.fonts import Typefaces

MAIN, BUILT_IN = "main", "helvetica"

logging.getLogger("fontTools.subset").setLevel(
    logging.ERROR
)  # tables it leaves out are no news here


class Faces:
    """The typefaces a PDF is written with.

    Args:
        pdf: the PDF.
        found: the typefaces at hand. Reading one takes its time, so the others are only read when
            a letter is missing in those read so far.
    """

    def __init__(self, pdf: FPDF, found: Typefaces) -> None:
        self._pdf = pdf
        self.remark = found.remark
        self.family = BUILT_IN if found.regular is None else MAIN
        self._unread = list(found.others) if found.regular is not None else []
        self._others: list[str] = []
        self._known: dict[str, bool] = {}
        if found.regular is not None:
            pdf.add_font(MAIN, "", found.regular)
            pdf.add_font(MAIN, "B", found.bold or found.regular)

    def has(self, sign: str) -> bool:
        """Whether any typeface can draw a character."""
        if sign not in self._known:
            self._known[sign] = self._look_for(sign)
        return self._known[sign]

    def _look_for(self, sign: str) -> bool:
        if self.family == BUILT_IN:
            return ord(sign) < 0x100 and unicodedata.category(sign) != "Cc"
        while not (found := self._is_read(sign)) and self._unread:
            self._read_next()
        return found

    def _is_read(self, sign: str) -> bool:
        fonts = self._pdf.fonts.values()
        return any(ord(sign) in font.cmap for font in fonts if hasattr(font, "cmap"))

    def _read_next(self) -> None:
        name = f"other{len(self._others)}"
        self._pdf.add_font(name, "", self._unread.pop(0))
        self._others.append(name)
        self._pdf.set_fallback_fonts(self._others, exact_match=False)
