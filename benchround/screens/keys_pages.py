"""The keys of the pages one reads. A part of the one list in `keys.py`."""

from __future__ import annotations

from benchround.screens.key import LOOKING, MOVING, PROGRAM, Key
from benchround.screens.key_screens import PAGES, WHY

PAGE_KEYS: tuple[Key, ...] = (
    Key("have-read", ("a",), "have read",
        "Say that the cautions shown have been read; it is recorded with the day.", LOOKING,
        (WHY,), "agree", 2),
    Key("line-up", ("up",), "up", "Go one line up.", MOVING, PAGES, "scroll(-1)", called="up"),
    Key("line-down", ("down",), "down", "Go one line down.", MOVING, PAGES, "scroll(1)",
        called="down"),
    Key("read-up", ("pageup",), "page up", "Go one screenful up.", MOVING, PAGES, "leaf(-1)",
        called="page-up"),
    Key("read-down", ("pagedown", "space"), "more", "Go one screenful down.", MOVING, PAGES,
        "leaf(1)", 4, called="page-down"),
    Key("close-page", ("escape",), "back", "Go one step back.", PROGRAM, PAGES, "back", 3,
        called="back"),
)  # fmt: skip
