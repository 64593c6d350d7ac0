"""The only list of keys: footer, help, palette and docs/keys.md come from it."""

from __future__ import annotations

from benchround.screens.key import GROUPS, PROGRAM, Key
from benchround.screens.key_names import name_of
from benchround.screens.key_ring import KeyRing
from benchround.screens.key_screens import (
    BATCH,
    CHOICES,
    COMMANDS,
    CONTAINER,
    CROP,
    CROPS,
    EVERYWHERE,
    FIGURE,
    FIND,
    FIRST_RUN,
    GO_TO,
    KEYS_SHEET,
    LIDS,
    OUTLOOK,
    PACKET,
    PACKETS,
    PAGE,
    PLACE,
    PLACE_PAGE,
    PUT_OFF,
    READING,
    RECORD,
    REVIEW,
    ROUND,
    SCREEN_WORDS,
    SETTINGS,
    SITE,
    SOW,
    TASK,
    WATER,
    WEATHER,
    WEIGHING,
    WHY,
    YEAR,
)
from benchround.screens.keys_ahead import AHEAD_KEYS, FIRST_RUN_KEYS
from benchround.screens.keys_cards import CARD_KEYS
from benchround.screens.keys_going import GOING_KEYS
from benchround.screens.keys_pages import PAGE_KEYS
from benchround.screens.keys_round import ROUND_KEYS
from benchround.screens.keys_sheets import SHEET_KEYS
from benchround.screens.keys_taking_in import TAKING_IN_KEYS

__all__ = [
    "BATCH",
    "CHOICES",
    "COMMANDS",
    "CONTAINER",
    "CROP",
    "CROPS",
    "FIGURE",
    "FIND",
    "FIRST_RUN",
    "GO_TO",
    "GROUPS",
    "KEYS",
    "KEYS_SHEET",
    "LIDS",
    "OUTLOOK",
    "PACKET",
    "PACKETS",
    "PAGE",
    "PLACE",
    "PLACE_PAGE",
    "PUT_OFF",
    "READING",
    "RECORD",
    "REVIEW",
    "ROUND",
    "SCREEN_WORDS",
    "SETTINGS",
    "SITE",
    "SOW",
    "TASK",
    "USUAL",
    "WATER",
    "WEATHER",
    "WEIGHING",
    "WHY",
    "YEAR",
    "Key",
    "bindings",
    "footer_words",
    "keys_on",
    "name_of",
    "program_bindings",
]

MOST_IN_FOOTER = 7

PROGRAM_KEYS: tuple[Key, ...] = (
    Key("look", ("f2",), "light or dark", "Change between light and dark.", PROGRAM, EVERYWHERE,
        "app.change_look"),
    Key("palette", ("ctrl+p",), "find a command", "Find any of these by its words.", PROGRAM,
        tuple(screen for screen in EVERYWHERE if screen != COMMANDS), "app.find_command"),
    Key("quit", ("ctrl+q",), "quit", "Leave; everything is saved already.", PROGRAM, EVERYWHERE,
        "app.quit", priority=True),
)  # fmt: skip

KEYS: tuple[Key, ...] = (
    *ROUND_KEYS,
    *SHEET_KEYS,
    *PAGE_KEYS,
    *CARD_KEYS,
    *AHEAD_KEYS,
    *TAKING_IN_KEYS,
    *FIRST_RUN_KEYS,
    *GOING_KEYS,
    *PROGRAM_KEYS,
)


USUAL = KeyRing(KEYS)
"""The keys of whoever has not chosen any."""
keys_on = USUAL.on
footer_words = USUAL.footer_words
bindings = USUAL.bindings
program_bindings = USUAL.program_bindings
