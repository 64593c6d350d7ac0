"""The names of the screens in the list of keys, and which of them have keys in common."""

from __future__ import annotations

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
BATCH, CROPS, CROP, FIGURE, PACKETS, PACKET, REVIEW, FIND, PLACE_PAGE, GO_TO = (
    "batch",
    "crops",
    "crop",
    "figure",
    "packets",
    "packet",
    "review",
    "find",
    "place page",
    "go to",
)
YEAR, WEATHER, LIDS, WATER, SETTINGS = "year", "weather", "lids", "water", "settings"
OUTLOOK, READING, WEIGHING, SITE, PLACE, CONTAINER, CHOICES, FIRST_RUN = (
    "outlook sheet",
    "reading sheet",
    "weighing sheet",
    "site sheet",
    "place sheet",
    "container sheet",
    "choices sheet",
    "first run",
)
TAKE_IN, SHEET_FILE, DIARY, PROGRESS = "sheet in", "file sheet", "diary", "progress"
KEYS_SHEET = "keys sheet"

WIDE_CARDS = (YEAR, WEATHER, LIDS, WATER, SETTINGS, TAKE_IN)
"""Cards whose list takes the whole width."""
CARDS = (BATCH, CROP, PACKETS, PLACE_PAGE, *WIDE_CARDS)
"""A list on the front and a page on the back."""
LOOK_UPS = (CROPS, FIND)
"""Letters are typed there, so commands need ctrl."""
ONE_LINE = (OUTLOOK, DIARY)
"""Sheets with one line to type, and nothing to choose from."""
SHORT_SHEETS = (
    *(RECORD, TASK, PUT_OFF, COMMANDS, FIGURE, OUTLOOK, READING, WEIGHING, SHEET_FILE, DIARY),
    KEYS_SHEET,
)
LONG_SHEETS = (SOW, PACKET, SITE, PLACE, CONTAINER, CHOICES)
SHEETS = (*LONG_SHEETS, *SHORT_SHEETS)
SAVED_SHEETS = tuple(sheet for sheet in SHORT_SHEETS if sheet != COMMANDS)
SAVED_AT_ONCE = tuple(sheet for sheet in SAVED_SHEETS if sheet != RECORD)
"""Sheets whose first enter saves."""
MANY_FIELDS = tuple(sheet for sheet in SHEETS if sheet not in (COMMANDS, SHEET_FILE, *ONE_LINE))
WITH_CHOICES = tuple(sheet for sheet in SHEETS if sheet not in ONE_LINE)
PAGES = (PAGE, WHY, REVIEW)
PLAIN = (ROUND, *PAGES, *CARDS)
"""Screens on which a letter is a command."""
TYPING = (*SHEETS, *LOOK_UPS, FIRST_RUN)
"""Screens on which a letter is typed into a field."""
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
    BATCH: "A batch",
    CROPS: "Crops",
    CROP: "A crop",
    FIGURE: "A crop's figure",
    PACKETS: "Packets",
    PACKET: "Packet sheet",
    REVIEW: "Review",
    FIND: "Finding",
    PLACE_PAGE: "A place",
    GO_TO: "Going to a screen",
    YEAR: "The year",
    WEATHER: "Weather",
    LIDS: "Lids: a frame's day",
    WATER: "Water left",
    SETTINGS: "Settings",
    OUTLOOK: "Outlook sheet",
    READING: "Reading sheet",
    WEIGHING: "Weighing sheet",
    SITE: "Site sheet",
    PLACE: "Place sheet",
    CONTAINER: "Container sheet",
    CHOICES: "Sheet of choices",
    KEYS_SHEET: "Sheet of keys",
    TAKE_IN: "Sowings from a sheet",
    SHEET_FILE: "Naming a sheet's file",
    DIARY: "Diary sheet",
    PROGRESS: "Long work",
    FIRST_RUN: "The first season",
}
"""Every screen by name, in the order of docs/keys.md, with its heading."""
