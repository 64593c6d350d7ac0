"""Pictures of the drawing room, as lines of a screen: each role there has one here."""

from __future__ import annotations

import os
from collections.abc import Iterable

from benchround.drawing.canvas import ASCII, CONSOLE, UNICODE, Glyphs
from benchround.drawing.canvas import Line as DrawnLine
from benchround.drawing.canvas import Role as DrawnRole
from benchround.screens.text import Line, Role, plain_letters_only

BARE_CONSOLE = "linux"
"""The terminal without windows: its font has 256 letters."""
ROLES = {
    DrawnRole.TITLE: Role.HEADING,
    DrawnRole.QUIET: Role.QUIET,
    DrawnRole.AXIS: Role.QUIET,
    DrawnRole.NOW: Role.KEY,
    DrawnRole.GOOD: Role.DONE,
    DrawnRole.WARN: Role.LATE,
    DrawnRole.BAD: Role.BAD,
    DrawnRole.DONE: Role.DONE,
    DrawnRole.AHEAD: Role.QUIET,
    DrawnRole.FLOWER: Role.CAUTION,
    DrawnRole.CROP: Role.LATE,
    DrawnRole.WATER: Role.HELD,
    DrawnRole.COLD: Role.HELD,
    DrawnRole.HOT: Role.OVERDUE,
    DrawnRole.LIMIT: Role.LATE,
    DrawnRole.INSIDE: Role.STRONG,
    DrawnRole.COUNT: Role.STRONG,
    DrawnRole.CURVE: Role.HELD,
}
"""A role that is not here is drawn as plain ink."""


def glyphs() -> Glyphs:
    """The signs this terminal can show."""
    if plain_letters_only():
        return ASCII
    return CONSOLE if os.environ.get("TERM", "") == BARE_CONSOLE else UNICODE


def shown(drawn: Iterable[DrawnLine]) -> list[Line]:
    """A picture's lines as lines of the screen."""
    return [tuple((span.text, ROLES.get(span.role, Role.INK)) for span in words) for words in drawn]
