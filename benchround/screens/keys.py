"""The only list of keys: footer, help, palette and docs/keys.md come from it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from benchround.screens.key import (
    DOING,
    FORM,
    GROUPS,
    LOOKING,
    MOVING,
    PROGRAM,
    SEVERAL,
    Key,
    name_of,
)
from benchround.screens.keys_ahead import (
    AHEAD_KEYS,
    AHEAD_WORDS,
    CHOICES,
    CONTAINER,
    FIRST_RUN,
    FIRST_RUN_KEYS,
    LIDS,
    LONG_AHEAD,
    OUTLOOK,
    PLACE,
    READING,
    SETTINGS,
    SHORT_AHEAD,
    SITE,
    WATER,
    WEATHER,
    WEIGHING,
    YEAR,
)
from benchround.screens.keys_cards import (
    BATCH,
    CARD_KEYS,
    CARD_WORDS,
    CARDS,
    CROP,
    CROPS,
    FIGURE,
    FIND,
    GO_TO,
    LOOK_UPS,
    PACKET,
    PACKETS,
    PLACE_PAGE,
    REVIEW,
    going_keys,
)

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

ROUND, SOW, RECORD, TASK, PUT_OFF, PAGE, WHY, COMMANDS = (
    "round",
    "sow",
    "record",
    "task",
    "put off",
    "page",
    "why",
    "commands",
)
SHORT_SHEETS = (RECORD, TASK, PUT_OFF, COMMANDS, FIGURE, *SHORT_AHEAD)
LONG_SHEETS = (SOW, PACKET, *LONG_AHEAD)
SHEETS = (*LONG_SHEETS, *SHORT_SHEETS)
MANY_FIELDS = tuple(sheet for sheet in SHEETS if sheet not in (COMMANDS, OUTLOOK))
WITH_CHOICES = tuple(sheet for sheet in SHEETS if sheet != OUTLOOK)
PAGES = (PAGE, WHY, REVIEW)
PLAIN = (ROUND, *PAGES, *CARDS)
"""Screens on which a letter is a command."""
EVERYWHERE = (*PLAIN, *SHEETS, *LOOK_UPS, GO_TO)

SCREEN_WORDS = {
    ROUND: "The round",
    SOW: "Sowing sheet",
    RECORD: "Record sheet",
    TASK: "Task sheet",
    PUT_OFF: "Putting off",
    PAGE: "Pages to read",
    WHY: "Why",
    COMMANDS: "Finding a command",
    **CARD_WORDS,
    **AHEAD_WORDS,
}

MOST_IN_FOOTER = 7


KEYS: tuple[Key, ...] = (
    Key(
        "tick",
        ("space",),
        "done",
        "Record the task, or all marked ones, as done; a sheet opens if a figure is needed.",
        DOING,
        (ROUND,),
        "tick",
        1,
    ),
    Key(
        "sheet",
        ("enter",),
        "figures",
        "Open the task's sheet: figures, place, note and day.",
        DOING,
        (ROUND,),
        "sheet",
    ),
    Key(
        "undo",
        ("u",),
        "undo",
        "Take back the last thing recorded in this sitting, and the one before it, and so on.",
        DOING,
        (ROUND,),
        "undo",
    ),
    Key(
        "put-off",
        ("p",),
        "put off",
        "Move the task to a later day, with a reason.",
        DOING,
        (ROUND,),
        "put_off",
        3,
    ),
    Key(
        "record",
        ("r",),
        "record",
        "Record anything that happened to the batch: a count, a loss, a move, a note.",
        DOING,
        (ROUND,),
        "record",
        5,
    ),
    Key(
        "sow",
        ("s",),
        "sow",
        "Open a sowing sheet: a new batch, sown or planned.",
        DOING,
        (ROUND,),
        "sow",
        6,
    ),
    Key(
        "why",
        ("w",),
        "why",
        "Tell why: the rule, its figures, their source, and the cautions in full.",
        LOOKING,
        (ROUND,),
        "why",
        4,
    ),
    Key(
        "day-before",
        ("left", "comma"),
        "day before",
        "Look at the round of the day before.",
        LOOKING,
        (ROUND,),
        "other_day(-1)",
    ),
    Key(
        "day-after",
        ("right", "full_stop"),
        "day after",
        "Look at the round of the day after.",
        LOOKING,
        (ROUND,),
        "other_day(1)",
    ),
    Key(
        "today",
        ("home",),
        "today",
        "Go back to today's round; on today's, go to its first task.",
        LOOKING,
        (ROUND,),
        "today",
    ),
    Key(
        "next-day",
        ("greater_than_sign",),
        "next day",
        "In the sample season: let the next day begin.",
        LOOKING,
        (ROUND,),
        "next_day",
    ),
    Key(
        "early",
        ("e",),
        "fold",
        "Fold away what is not due yet, or show it again.",
        LOOKING,
        (ROUND,),
        "fold",
    ),
    Key(
        "mark",
        ("m",),
        "mark",
        "Mark the task, or take its mark off; marked tasks are ticked together.",
        SEVERAL,
        (ROUND,),
        "mark",
    ),
    Key(
        "mark-family",
        ("f",),
        "mark alike",
        "Mark every task of this kind that is to be done today, or take their marks off.",
        SEVERAL,
        (ROUND,),
        "mark_family",
    ),
    Key(
        "unmark",
        ("escape",),
        "unmark",
        "Take all marks off.",
        SEVERAL,
        (ROUND,),
        "unmark",
    ),
    Key("up", ("up",), "up", "Go to the task above.", MOVING, (ROUND,), "move(-1)"),
    Key("down", ("down",), "down", "Go to the task below.", MOVING, (ROUND,), "move(1)"),
    Key("page-up", ("pageup",), "page up", "Go one screenful up.", MOVING, (ROUND,), "page(-1)"),
    Key(
        "page-down",
        ("pagedown",),
        "page down",
        "Go one screenful down.",
        MOVING,
        (ROUND,),
        "page(1)",
    ),
    Key(
        "next-place",
        ("tab",),
        "next place",
        "Go to the first task of the next place.",
        MOVING,
        (ROUND,),
        "place(1)",
    ),
    Key(
        "place-before",
        ("shift+tab",),
        "place before",
        "Go to the first task of the place before.",
        MOVING,
        (ROUND,),
        "place(-1)",
    ),
    Key("last", ("end",), "last", "Go to the last task.", MOVING, (ROUND,), "last"),
    Key(
        "save-short",
        ("enter", "ctrl+s"),
        "save",
        "Save the sheet; what is wrong is said beside the field, and nothing typed is lost.",
        FORM,
        SHORT_SHEETS,
        "save",
        1,
    ),
    Key(
        "save",
        ("ctrl+s",),
        "save",
        "Save at any time; what is not filled in has its default.",
        FORM,
        LONG_SHEETS,
        "save",
        1,
    ),
    Key(
        "next-line",
        ("enter",),
        "next field",
        "Take the choice and go to the next field.",
        FORM,
        LONG_SHEETS,
        "field(1)",
    ),
    Key(
        "next-field",
        ("tab",),
        "next field",
        "Go to the next field.",
        FORM,
        MANY_FIELDS,
        "field(1)",
        2,
    ),
    Key(
        "field-before",
        ("shift+tab",),
        "field before",
        "Go to the field before.",
        FORM,
        MANY_FIELDS,
        "field(-1)",
    ),
    Key(
        "choice-down",
        ("down",),
        "choice",
        "Take the next of the choices under the field; without choices, the next field.",
        FORM,
        WITH_CHOICES,
        "choice(1)",
        4,
    ),
    Key(
        "choice-up",
        ("up",),
        "choice before",
        "Take the choice before; without choices, the field before.",
        FORM,
        WITH_CHOICES,
        "choice(-1)",
    ),
    Key(
        "empty",
        ("ctrl+u",),
        "empty field",
        "Empty the field; empty already, it takes its first value again.",
        FORM,
        SHEETS,
        "empty",
    ),
    Key(
        "new-sheet",
        ("ctrl+n",),
        "new sheet",
        "Forget what was typed and begin the sheet anew.",
        FORM,
        SHEETS,
        "renew",
    ),
    Key(
        "agree",
        ("ctrl+k",),
        "have read",
        "Say that the caution shown has been read; it is recorded with the day.",
        FORM,
        (SOW,),
        "agree",
    ),
    Key(
        "have-read",
        ("a",),
        "have read",
        "Say that the cautions shown have been read; it is recorded with the day.",
        LOOKING,
        (WHY,),
        "agree",
        2,
    ),
    Key("line-up", ("up",), "up", "Go one line up.", MOVING, PAGES, "scroll(-1)"),
    Key("line-down", ("down",), "down", "Go one line down.", MOVING, PAGES, "scroll(1)"),
    Key("read-up", ("pageup",), "page up", "Go one screenful up.", MOVING, PAGES, "leaf(-1)"),
    Key(
        "read-down",
        ("pagedown", "space"),
        "more",
        "Go one screenful down.",
        MOVING,
        PAGES,
        "leaf(1)",
        4,
    ),
    Key(
        "back",
        ("escape",),
        "back",
        "Go one step back; what was typed is kept until the sheet is opened again.",
        PROGRAM,
        (*SHEETS, *PAGES),
        "back",
        3,
    ),
    Key(
        "help",
        ("question_mark", "f1"),
        "all keys",
        "Show all keys and what the words mean.",
        PROGRAM,
        (ROUND,),
        "help",
        9,
    ),
    Key(
        "help-in-sheet",
        ("f1",),
        "all keys",
        "Show all keys and what the words mean.",
        PROGRAM,
        SHEETS,
        "help",
        5,
    ),
    Key(
        "reload",
        ("f5",),
        "look again",
        "Take in what another computer wrote into the season's folder.",
        PROGRAM,
        (ROUND,),
        "reload",
    ),
    *CARD_KEYS,
    *AHEAD_KEYS,
    *FIRST_RUN_KEYS,
    *going_keys(ROUND, PLAIN, (*SHEETS, *LOOK_UPS)),
    Key(
        "batch",
        ("b",),
        "batch",
        "Open the card of the task's batch: what happened, what comes, how it came up.",
        LOOKING,
        (ROUND,),
        "batch",
    ),
    Key(
        "look",
        ("f2",),
        "light or dark",
        "Change between light and dark.",
        PROGRAM,
        EVERYWHERE,
        "app.change_look",
    ),
    Key(
        "palette",
        ("ctrl+p",),
        "find a command",
        "Find any of these by its words.",
        PROGRAM,
        tuple(screen for screen in EVERYWHERE if screen != COMMANDS),
        "app.find_command",
    ),
    Key(
        "quit",
        ("ctrl+q",),
        "quit",
        "Leave; everything is saved already.",
        PROGRAM,
        EVERYWHERE,
        "app.quit",
        priority=True,
    ),
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
