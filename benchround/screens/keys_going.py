"""The keys that look things up and go elsewhere. A part of the one list in `keys.py`.

The letters for going somewhere come from `destinations.py`.
"""

from __future__ import annotations

from benchround.screens.destinations import DESTINATIONS
from benchround.screens.key import FORM, GOING, LOOKING, MOVING, PROGRAM, Key
from benchround.screens.key_screens import (
    CARDS,
    FIND,
    GO_TO,
    LOOK_UPS,
    PLAIN,
    REVIEW,
    ROUND,
    SHEETS,
)

GO = "Choose a screen by one letter; what is half filled in is kept."
SEARCH = "Find any batch, crop, place or packet by its letters."
SHOWN = (ROUND, *CARDS, REVIEW)
"""Screens that name the way elsewhere at their foot."""
QUIET = tuple(screen for screen in PLAIN if screen not in SHOWN)
FINDING = tuple(screen for screen in (*SHEETS, *LOOK_UPS) if screen != FIND)
LETTER, CONTROL = ("g", "ctrl+g"), ("ctrl+g",)

GOING_KEYS: tuple[Key, ...] = (
    Key("open-found", ("enter",), "open", "Open what the cursor stands on.", LOOKING, LOOK_UPS,
        "pick", 1, called="open"),
    Key("empty-letters", ("ctrl+u",), "other letters", "Take the letters away and begin again.",
        FORM, LOOK_UPS, "empty", called="empty"),
    Key("found-up", ("up",), "up", "Go a row up.", MOVING, LOOK_UPS, "move(-1)", called="up"),
    Key("found-down", ("down",), "down", "Go a row down.", MOVING, LOOK_UPS, "move(1)",
        called="down"),
    Key("found-pages-up", ("pageup",), "page up", "Go one screenful up.", MOVING, LOOK_UPS,
        "page(-1)", called="page-up"),
    Key("found-pages-down", ("pagedown",), "page down", "Go one screenful down.", MOVING,
        LOOK_UPS, "page(1)", called="page-down"),
    Key("go-there", ("enter",), "go", "Go where the cursor stands.", GOING, (GO_TO,), "pick", 1,
        called="open"),
    Key("close", ("escape",), "back",
        "Go one step back; letters that were typed are taken away first.", PROGRAM,
        (*LOOK_UPS, GO_TO), "back", 6, called="back"),
    Key("help-while-typing", ("f1",), "all keys", "Show all keys and what the words mean.",
        PROGRAM, (*LOOK_UPS, GO_TO), "help", 9, called="help"),
    *(
        Key(f"go-{found.name.replace(' ', '-')}", (found.letter,), found.name,
            f"{found.tells[0].upper()}{found.tells[1:]}.", GOING, (GO_TO,), f"go('{found.name}')")
        for found in DESTINATIONS
    ),
    Key("go-to", LETTER, "go to", GO, GOING, SHOWN, "app.go_to_list", 3),
    Key("go-to-quietly", LETTER, "go to", GO, GOING, QUIET, "app.go_to_list", called="go-to"),
    Key("go-to-while-typing", CONTROL, "go to", GO, GOING, LOOK_UPS, "app.go_to_list", 7,
        called="go-to"),
    Key("go-to-from-sheet", CONTROL, "go to", GO, GOING, SHEETS, "app.go_to_list", called="go-to"),
    Key("find", ("slash", "ctrl+f"), "find", SEARCH, GOING, PLAIN, "app.find"),
    Key("find-while-typing", ("ctrl+f",), "find", SEARCH, GOING, FINDING, "app.find",
        called="find"),
)  # fmt: skip
