"""The keys of the screens that look ahead: the year, weather, lids, water; and of the settings.

A part of the one list in `keys.py`.
"""

from __future__ import annotations

from benchround.screens.key import DOING, FORM, LOOKING, PROGRAM, Key
from benchround.screens.key_screens import (
    FIRST_RUN,
    LIDS,
    PLACE,
    SETTINGS,
    WATER,
    WEATHER,
    YEAR,
)

OPENING = (YEAR, LIDS, WATER)
RECORDING = (WEATHER, LIDS, WATER, SETTINGS)

_YEAR_KEYS = (
    Key("open-ahead", ("enter",), "open", "Open what the cursor stands on.", LOOKING, OPENING,
        "open", 1, called="open"),
    Key("flowering", ("f",), "flowers",
        "Show only what flowers, and what flowers together with the one under the cursor; again: "
        "all strips.", LOOKING, (YEAR,), "flowering", 2),
    Key("room", ("b",), "bench room", "Show the bench room over the weeks; again: all strips.",
        LOOKING, (YEAR,), "room", 3),
    Key("order", ("o",), "order", "Sort the strips by place, by sowing or by first flower.",
        LOOKING, (YEAR,), "order", 5),
    Key("year-before", ("left", "comma"), "year before", "Show the year before.", LOOKING,
        (YEAR,), "other_year(-1)"),
    Key("year-after", ("right", "full_stop"), "year after", "Show the year after.", LOOKING,
        (YEAR,), "other_year(1)"),
)  # fmt: skip

_WEATHER_KEYS = (
    Key("outlook", ("o",), "outlook",
        "Type the weather ahead in one line, such as 5 23 sun; 8/27 r22 g68 from 17.", DOING,
        (WEATHER,), "outlook", 1),
    Key("reading", ("m",), "measured",
        "Type what the thermometer and the rain gauge say, outside or in a place.", DOING,
        (WEATHER, LIDS), "reading", 2),
    Key("type-day", ("enter",), "type for it",
        "Type for the day under the cursor: the outlook if it is to come, else what was measured.",
        DOING, (WEATHER,), "type_day"),
    Key("to-lids", ("l",), "lids", "Show the frames' day, hour by hour.", LOOKING, (WEATHER,),
        "lids", 3),
    Key("to-water", ("d",), "water", "Show what dries first.", LOOKING, (WEATHER,), "water", 5),
    Key("lid-day-before", ("left", "comma"), "day before", "Show the day before.", LOOKING,
        (LIDS,), "other_day(-1)", called="day-before"),
    Key("lid-day-after", ("right", "full_stop"), "day after", "Show the day after.", LOOKING,
        (LIDS,), "other_day(1)", 5, called="day-after"),
)  # fmt: skip

_WATER_KEYS = (
    Key("still-wet", ("w",), "still wet",
        "Say that the tray is still wet: its place is taken to dry slower from now on.", DOING,
        (WATER,), "said('still wet')", 2),
    Key("already-dry", ("d",), "already dry",
        "Say that the tray is dry already: its place is taken to dry faster from now on.", DOING,
        (WATER,), "said('already dry')", 3),
    Key("weigh", ("m",), "weigh", "Type what the tray weighs; two weighings tell how fast it "
        "dries.", DOING, (WATER,), "weigh"),
    Key("away", ("a",), "away",
        "Show which trays will not last while you are away; again: the water left today.",
        LOOKING, (WATER,), "away", 6),
    Key("days-fewer", ("left", "comma"), "a day less", "Be away a day less.", LOOKING, (WATER,),
        "days(-1)"),
    Key("days-more", ("right", "full_stop"), "a day more", "Be away a day more.", LOOKING,
        (WATER,), "days(1)"),
    Key("leave-earlier", ("minus",), "leave earlier", "Leave a day earlier.", LOOKING, (WATER,),
        "leave(-1)"),
    Key("leave-later", ("plus",), "leave later", "Leave a day later.", LOOKING, (WATER,),
        "leave(1)"),
)  # fmt: skip

_SETTINGS_KEYS = (
    Key("change-setting", ("enter",), "change", "Open the sheet of what the cursor stands on.",
        DOING, (SETTINGS,), "change", 1),
    Key("new-place", ("n",), "new place", "Set up a place after the one under the cursor.", DOING,
        (SETTINGS,), "new_place", 2),
    Key("new-container", ("c",), "container", "Describe a tray or pot of your own.", DOING,
        (SETTINGS,), "new_container", 3),
    Key("walk-earlier", ("minus",), "earlier", "Move the place one step earlier on the walk.",
        DOING, (SETTINGS,), "walk(-1)"),
    Key("walk-later", ("plus",), "later", "Move the place one step later on the walk.", DOING,
        (SETTINGS,), "walk(1)"),
    Key("remove", ("x",), "remove",
        "Take the place off the walk, or the container off the list; asked once more.", DOING,
        (SETTINGS,), "remove", 5),
    Key("own-keys", ("k",), "keys",
        "Give an action another key; it holds on this computer, in every season.", DOING,
        (SETTINGS,), "own_keys"),
    Key("agree-to-place", ("ctrl+k",), "have read",
        "Say that the cautions shown have been read; it is recorded with the day.", FORM,
        (PLACE,), "agree", called="have-read"),
)  # fmt: skip

_FIRST_RUN_KEYS = (
    Key("begin", ("ctrl+s",), "begin", "Begin the season with what is filled in; the rest is "
        "assumed, and the round says so.", FORM, (FIRST_RUN,), "save", 1, called="save"),
    Key("to-sample", ("ctrl+o",), "sample", "Open the sample season instead; nothing is begun.",
        FORM, (FIRST_RUN,), "sample", 2),
    Key("skip", ("enter", "tab"), "next, or skip", "Go to the next field; an empty one is skipped.",
        FORM, (FIRST_RUN,), "field(1)", 3),
    Key("skip-back", ("shift+tab",), "field before", "Go to the field before.", FORM,
        (FIRST_RUN,), "field(-1)", called="field-before"),
    Key("first-choice", ("down",), "choice", "Take the next of the choices under the field; "
        "without choices, the next field.", FORM, (FIRST_RUN,), "choice(1)", called="choice-down"),
    Key("first-choice-before", ("up",), "choice before", "Take the choice before; without "
        "choices, the field before.", FORM, (FIRST_RUN,), "choice(-1)", called="choice-up"),
    Key("first-empty", ("ctrl+u",), "empty field", "Empty the field; empty already, it takes its "
        "first value again.", FORM, (FIRST_RUN,), "empty", called="empty"),
    Key("first-look", ("f2",), "light or dark", "Change between light and dark.", PROGRAM,
        (FIRST_RUN,), "change_look", called="look"),
    Key("leave", ("escape", "ctrl+q"), "leave", "Leave; nothing is begun and nothing is written.",
        PROGRAM, (FIRST_RUN,), "leave", 4, called="quit"),
)  # fmt: skip

AHEAD_KEYS: tuple[Key, ...] = (
    *_YEAR_KEYS,
    *_WEATHER_KEYS,
    *_WATER_KEYS,
    *_SETTINGS_KEYS,
    Key("undo-ahead", ("u",), "undo",
        "Take back the last thing recorded in this sitting, and the one before it, and so on.",
        DOING, RECORDING, "undo", called="undo"),
)  # fmt: skip
FIRST_RUN_KEYS = _FIRST_RUN_KEYS
"""They belong to the screen before any season is open, which has none of the other keys."""
