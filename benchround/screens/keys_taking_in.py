"""The keys of what comes from elsewhere, and of long work. A part of the one list in `keys.py`."""

from __future__ import annotations

from benchround.screens.key import DOING, LOOKING, PROGRAM, Key
from benchround.screens.key_screens import DIARY, PROGRESS, TAKE_IN

TAKING_IN_KEYS: tuple[Key, ...] = (
    Key("name-sheet", ("o",), "sheet",
        "Name the file of a sheet of sowings; it is shown, and nothing is recorded yet.", DOING,
        (TAKE_IN,), "name_file", 1),
    Key("take-rows", ("t",), "record rows",
        "Record every row that can be, as one thing to take back; asked once more.", DOING,
        (TAKE_IN,), "take", 2),
    Key("only-faults", ("f",), "faults", "Show only the rows with a fault; again: all rows.",
        LOOKING, (TAKE_IN,), "faults", 5),
    Key("undo-rows", ("u",), "undo",
        "Take back the last thing recorded in this sitting, and the one before it, and so on.",
        DOING, (TAKE_IN,), "undo", called="undo"),
    Key("undo-line", ("ctrl+z",), "undo line", "Take the last line of the diary back.", DOING,
        (DIARY,), "undo", 2),
    Key("stop", ("escape",), "stop",
        "Stop the work where that does no harm; what was and was not done is said.", PROGRAM,
        (PROGRESS,), "stop", 1),
)  # fmt: skip
