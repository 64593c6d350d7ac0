"""Typefaces made with fontTools: a single black square for a single sign."""

from __future__ import annotations

from pathlib import Path

from fontTools.fontBuilder import FontBuilder  # type: ignore[import-untyped]  # has no types
from fontTools.pens.t2CharStringPen import T2CharStringPen  # type: ignore[import-untyped]
from fontTools.pens.ttGlyphPen import TTGlyphPen  # type: ignore[import-untyped]  # has no types
from fontTools.ttLib import TTCollection, TTFont  # type: ignore[import-untyped]  # has no types

CORNERS = [(0, 0), (0, 600), (600, 600), (600, 0)]
ADVANCE = 700


def one_sign_typeface(folder: Path, sign: str, *, postscript: bool = False) -> Path:
    """A file with one sign, of TrueType or of PostScript outlines."""
    builder = FontBuilder(1000, isTTF=not postscript)
    builder.setupGlyphOrder([".notdef", "square"])
    builder.setupCharacterMap({ord(sign): "square"})
    pen = T2CharStringPen(ADVANCE, None) if postscript else TTGlyphPen(None)
    for at, point in enumerate(CORNERS):
        (pen.lineTo if at else pen.moveTo)(point)
    pen.closePath()
    if postscript:
        square = pen.getCharString()
        builder.setupCFF("OneSign", {}, {".notdef": square, "square": square}, {})
    else:
        square = pen.glyph()
        builder.setupGlyf({".notdef": square, "square": square})
    builder.setupHorizontalMetrics({".notdef": (ADVANCE, 0), "square": (ADVANCE, 0)})
    builder.setupHorizontalHeader(ascent=800, descent=-200)
    builder.setupNameTable({"familyName": "One Sign", "styleName": "Regular", "psName": "OneSign"})
    builder.setupOS2()
    builder.setupPost()
    path = folder / ("one.otf" if postscript else "one.ttf")
    builder.save(path)
    return path


def collection(path: Path) -> Path:
    """The same typeface twice in one file, as systems have them for several languages."""
    fonts = TTCollection()
    fonts.fonts = [TTFont(path), TTFont(path)]
    made = path.with_suffix(".ttc")
    fonts.save(made)
    return made
