"""The keys of the pages one reads. A part of the one list in `keys.py`."""

from __future__ import annotations

from benchround.screens.key import LOOKING, MOVING, Key
from benchround.screens.key_screens import PAGES, WHY

PAGE_KEYS: tuple[Key, ...] = (
    Key("have-read", ("a",), "have read",
        "Say that the cautions shown have been read; it is recorded with the day.", LOOKING,
        (WHY,), "agree", 2),
    Key("line-up", ("up",), "up", "Go one line up.", MOVING, PAGES, "scroll(-1)"),
    Key("line-down", ("down",), "down", "Go one line down.", MOVING, PAGES, "scroll(1)"),
    Key("read-up", ("pageup",), "page up", "Go one screenful up.", MOVING, PAGES, "leaf(-1)"),
    Key("read-down", ("pagedown", "space"), "more", "Go one screenful down.", MOVING, PAGES,
        "leaf(1)", 4),)  # fmt: skip
