"""Words measured in terminal cells, made harmless, cut and padded to fit.

A name may hold anything: wide letters, accents without end, direction marks, control characters.
Here it becomes text of a known width that stays on its line.
"""

from __future__ import annotations

import unicodedata
from functools import lru_cache

from benchround.drawing.glyphs import UNICODE, Glyphs

MOST_LETTERS = 2_000
"""What is longer is cut before it is measured: no line holds more."""
MOST_MARKS = 2
"""Accents kept over one letter; more would spill into other lines."""
UNSEEN = frozenset({"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"})
"""Categories without a place on a line: controls, direction marks, line ends, unassigned."""
MARKS = frozenset({"Mn", "Me", "Mc"})
"""Categories that are drawn on the letter before them and take no cell."""
DROPPED = (
    (0x200C, 0x200D),  # joiners between letters and between pictures
    (0xFE00, 0xFE0F),  # choose between two shapes of a sign, and so its width
    (0xE0100, 0xE01EF),
    (0x1F3FB, 0x1F3FF),  # skin colours
)
"""Signs that only change the one before them, and its width with it."""
UNSURE = (
    (0x115F, 0x11FF),  # halves of Korean syllables and their fillers
    (0x3164, 0x3164),
    (0xD7B0, 0xD7FF),
    (0xFFA0, 0xFFA0),
    (0x2630, 0x2637),  # narrow or wide by the version of Unicode
    (0x268A, 0x268F),
    (0x4DC0, 0x4DFF),
    (0x1D300, 0x1D376),
)
"""Signs whose width terminals do not agree on."""
FLAG_A = 0x1F1E6
UNKNOWN = "?"
"""Stands for what cannot be shown, in pictures as in sentences and with every set of signs."""
SPELLED = {
    "ß": "ss",
    "æ": "ae",
    "Æ": "AE",
    "œ": "oe",
    "Œ": "OE",
    "ø": "o",
    "Ø": "O",
    "ł": "l",
    "Ł": "L",
    "đ": "d",
    "Đ": "D",
    "°": " deg",
    "\N{MULTIPLICATION SIGN}": "x",
    "\N{EN DASH}": "-",
    "\N{EM DASH}": "-",
    "\N{MINUS SIGN}": "-",
    "\N{LEFT SINGLE QUOTATION MARK}": "'",
    "\N{RIGHT SINGLE QUOTATION MARK}": "'",
    "\N{LEFT DOUBLE QUOTATION MARK}": '"',
    "\N{RIGHT DOUBLE QUOTATION MARK}": '"',
    "\N{FRACTION SLASH}": "/",
    "\N{MIDDLE DOT}": ".",
}
"""Letters and signs that do not come apart into ASCII by themselves."""


def cell_width(text: str) -> int:
    """Return how many cells a cleaned text takes."""
    return len(text) if text.isascii() else sum(map(_sign_width, text))


@lru_cache(maxsize=4096)
def _sign_width(sign: str) -> int:
    if unicodedata.category(sign) in MARKS:
        return 0
    return 2 if unicodedata.east_asian_width(sign) in "WF" else 1


def clean(text: str, glyphs: Glyphs = UNICODE) -> str:
    """Return the text as it may stand on one line.

    Controls, direction marks and signs of unsure width become a visible mark, blanks and line ends
    a space; heaped accents are thinned out. With ASCII glyphs every letter is spelled in
    ASCII. Cleaning twice changes nothing.
    """
    text = text[:MOST_LETTERS]
    if text.isascii() and text.isprintable():
        return text
    return _clean(text, glyphs.ascii_only)


@lru_cache(maxsize=4096)
def _clean(text: str, ascii_only: bool) -> str:
    signs: list[str] = []
    marks = MOST_MARKS  # nothing stands before the first sign
    kept = "".join(_flag_letter(sign) for sign in text if not _among(sign, DROPPED))
    for sign in unicodedata.normalize("NFC", kept):
        if unicodedata.category(sign) in MARKS:
            marks += 1
            if marks <= MOST_MARKS:
                signs.append(sign)
            elif not signs:
                signs.append(UNKNOWN)
            continue
        marks = 0
        signs.append(_harmless(sign))
    seen = "".join(signs)
    return spelled_plainly(seen) if ascii_only else seen


def _among(sign: str, ranges: tuple[tuple[int, int], ...]) -> bool:
    number = ord(sign)
    return number > 0x7E and any(low <= number <= high for low, high in ranges)


def _flag_letter(sign: str) -> str:
    """Halves of flags are one cell or two by what stands beside them: plain letters instead."""
    number = ord(sign) - FLAG_A
    return chr(ord("A") + number) if 0 <= number < 26 else sign


def _harmless(sign: str) -> str:
    category = unicodedata.category(sign)
    if category == "Zs" or sign in "\t\n\r":
        return " "
    return UNKNOWN if category in UNSEEN or _among(sign, UNSURE) else sign


def spelled_plainly(text: str) -> str:
    """Return the text in plain letters: accents left off, what cannot be spelled marked."""
    signs: list[str] = []
    for sign in text:
        if sign.isascii():
            signs.append(sign)
        elif sign in SPELLED:
            signs.append(SPELLED[sign])
        elif unicodedata.category(sign) not in MARKS:
            apart = unicodedata.normalize("NFKD", sign)
            plain = "".join(one if one.isascii() else SPELLED.get(one, "") for one in apart)
            signs.append(plain or UNKNOWN)
    return "".join(signs)


def fit(text: str, width: int, glyphs: Glyphs, *, right: bool = False) -> str:
    """Return the text in exactly so many cells: padded, or cut with an ellipsis.

    Args:
        text: anything.
        width: cells; below 1 gives nothing.
        glyphs: the set of signs.
        right: pad on the left instead.
    """
    seen = cut(text, width, glyphs)
    blank = " " * (max(0, width) - cell_width(seen))
    return blank + seen if right else seen + blank


def cut(text: str, width: int, glyphs: Glyphs) -> str:
    """Return the text in at most so many cells, ended with an ellipsis where it was longer."""
    seen = clean(text, glyphs)
    if cell_width(seen) <= width:
        return seen
    room = width - len(glyphs.ellipsis)
    if room <= 0:
        return glyphs.ellipsis[: max(0, width)]
    return head(seen, room).rstrip() + glyphs.ellipsis


def head(text: str, width: int) -> str:
    """Return as much of a cleaned text as goes into so many cells."""
    if text.isascii():
        return text[: max(0, width)]
    taken = 0
    for number, sign in enumerate(text):
        taken += _sign_width(sign)
        if taken > width:
            return text[:number]
    return text
