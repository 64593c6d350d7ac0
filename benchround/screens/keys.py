"""The only list of keys: footer, help, palette and docs/keys.md come from it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from benchround.screens.key import GROUPS, PROGRAM, Key, name_of
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
    "WATER",
    "WEATHER",
    "WEIGHING",
    "WHY",
    "YEAR",
    "Key",
    "bindings",
    "footer_keys",
    "footer_words",
    "keys_on",
    "name_of",
    "program_bindings",
]

if TYPE_CHECKING:
    from textual.binding import BindingType

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
    *FIRST_RUN_KEYS,
    *GOING_KEYS,
    *PROGRAM_KEYS,
)


def keys_on(screen: str) -> Iterator[Key]:
    """The keys of a screen, in the order of the list."""
    return (key for key in KEYS if screen in key.where)


def footer_keys(screen: str) -> tuple[Key, ...]:
    """The keys a screen names at its foot, in their order."""
    shown = [key for key in keys_on(screen) if key.footer]
    return tuple(sorted(shown, key=lambda key: key.footer))


def footer_words(screen: str) -> tuple[tuple[str, str], ...]:
    """The foot of a screen as (key, label)."""
    return tuple((name_of(key.keys[0]), key.label) for key in footer_keys(screen))


def bindings(screen: str) -> list[BindingType]:
    """The keys of a screen as Textual wants them, those of the whole program left out."""
    return [_binding(key) for key in keys_on(screen) if not key.action.startswith("app.")]


def program_bindings() -> list[BindingType]:
    """The keys of the whole program as Textual wants them."""
    return [_binding(key) for key in KEYS if key.action.startswith("app.")]


def _binding(key: Key) -> BindingType:
    from textual.binding import Binding

    return Binding(
        ",".join(key.keys),
        key.action,
        key.label,
        show=False,
        priority=key.priority,
        tooltip=key.tooltip,
        id=key.id,
    )
