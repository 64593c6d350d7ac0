"""The keys of every sheet to fill in. A part of the one list in `keys.py`."""

from __future__ import annotations

from benchround.screens.key import FORM, PROGRAM, Key
from benchround.screens.key_screens import (
    COMMANDS,
    LONG_SHEETS,
    MANY_FIELDS,
    SAVED_SHEETS,
    SHEETS,
    SOW,
    TASK,
    WITH_CHOICES,
)

SHEET_KEYS: tuple[Key, ...] = (
    Key("save-short", ("enter",), "save",
        "Save the sheet; what is wrong is said beside the field, and nothing typed is lost.",
        FORM, SAVED_SHEETS, "save", 1),
    Key("save-at-once", ("ctrl+s",), "save", "Save the sheet from whichever field.", FORM,
        SAVED_SHEETS, "save", called="save"),
    Key("do-command", ("enter", "ctrl+s"), "do it", "Do what the choice under the field names.",
        FORM, (COMMANDS,), "save", 1),
    Key("save", ("ctrl+s",), "save",
        "Save at any time; what is not filled in has its default.", FORM, LONG_SHEETS, "save", 1),
    Key("next-line", ("enter",), "next field", "Take the choice and go to the next field.", FORM,
        LONG_SHEETS, "field(1)"),
    Key("next-field", ("tab",), "next field", "Go to the next field.", FORM, MANY_FIELDS,
        "field(1)", 2),
    Key("field-before", ("shift+tab",), "field before", "Go to the field before.", FORM,
        MANY_FIELDS, "field(-1)"),
    Key("choice-down", ("down",), "choice",
        "Take the next of the choices under the field; without choices, the next field.", FORM,
        WITH_CHOICES, "choice(1)", 4),
    Key("choice-up", ("up",), "choice before",
        "Take the choice before; without choices, the field before.", FORM, WITH_CHOICES,
        "choice(-1)"),
    Key("empty", ("ctrl+u",), "empty field",
        "Empty the field; empty already, it takes its first value again.", FORM, SHEETS,
        "empty"),
    Key("new-sheet", ("ctrl+n",), "new sheet", "Forget what was typed and begin the sheet anew.",
        FORM, SHEETS, "renew"),
    Key("agree", ("ctrl+k",), "have read",
        "Say that the caution shown has been read; it is recorded with the day.", FORM,
        (SOW, TASK), "agree", called="have-read"),
    Key("help-in-sheet", ("f1",), "all keys", "Show all keys and what the words mean.", PROGRAM,
        SHEETS, "help", 5, called="help"),
    Key("back", ("escape",), "back",
        "Go one step back; what was typed is kept until the sheet is opened again.", PROGRAM,
        SHEETS, "back", 3),
)  # fmt: skip
