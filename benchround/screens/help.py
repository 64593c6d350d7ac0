"""The page of all keys, from the one list of them, and what the words and marks mean."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from benchround.core.caution.due import CAUTIONS, Page, setup_cautions
from benchround.screens.keys import GROUPS, SCREEN_WORDS
from benchround.screens.page import PageScreen
from benchround.screens.text import BLANK, Line, Role, line, paragraph

KEY_WIDE = 20
LABELS_FIRST = (
    "Product labels, your local rules, licensed trades and your own poison line go before anything "
    "said here. That a plant has no caution does not prove it safe."
)
STANDINGS = (
    ("overdue 4", Role.OVERDUE, "four days after its last good day"),
    ("late", Role.LATE, "seed that should have come up by now"),
    ("due", Role.DUE, "to be done today"),
    ("held", Role.HELD, "due, but weather or room forbids it: not overdue"),
    ("early", Role.EARLY, "may be done, but is not due yet"),
    ("!!", Role.OVERDUE, "plants die today if it is left"),
    ("!", Role.INK, "plants spoil this week if it is left"),
    (">  *", Role.KEY, "where the cursor stands; marked"),
)


class HelpScreen(PageScreen):
    """All keys of one screen.

    Args:
        about: the name of the screen in the list of keys.
    """

    def __init__(self, about: str) -> None:
        super().__init__()
        self.about = about

    def page_lines(self, width: int) -> Sequence[Line]:
        """Keys by group, words and marks, and what is worth knowing."""
        return list(self._lines(width))

    def _lines(self, width: int) -> Iterator[Line]:
        yield from paragraph(f"{SCREEN_WORDS[self.about]}: all keys", width, Role.HEADING)
        for group in GROUPS:
            keys = [key for key in self.ring.on(self.about) if key.group == group]
            if keys:
                yield BLANK
                yield from paragraph(group, width, Role.HEADING)
            for key in keys:
                yield from _row(key.shown, Role.KEY, key.tooltip, width)
        yield BLANK
        yield from paragraph("Words and marks of the round", width, Role.HEADING)
        for word, role, meaning in STANDINGS:
            yield from _row(word, role, meaning, width)
        yield from self._known(width)
        yield from _cautions(width)

    def _known(self, width: int) -> Iterator[Line]:
        desk = self.desk
        assumed = (f"Assumed: {words}" for words in desk.round().assumed)
        known = (*desk.problems, *self.ring.faults, *assumed)
        if known:
            yield BLANK
            yield from paragraph("Worth knowing", width, Role.HEADING)
        for words in known:
            yield from paragraph(words, width, Role.CAUTION, "  ")


def _cautions(width: int) -> Iterator[Line]:
    """What anyone who works at a bench should know, and what goes before it."""
    yield BLANK
    yield from paragraph("Cautions for all work", width, Role.HEADING)
    for name in setup_cautions(Page.HELP):
        caution = CAUTIONS[name]
        yield from paragraph(caution.short, width, Role.CAUTION)
        yield from paragraph(f"  {caution.full}", width, Role.INK, "  ")
    yield from paragraph(LABELS_FIRST, width, Role.STRONG)


def _row(head: str, role: Role, words: str, width: int) -> Iterator[Line]:
    rows = paragraph(words, max(10, width - KEY_WIDE))
    for number, row in enumerate(rows):
        text = row[0][0]
        yield line(((head if not number else "").ljust(KEY_WIDE), role), (text, Role.INK))
