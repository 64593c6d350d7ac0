"""The sheet that asks for the file of a sheet of sowings. Only what is typed here is a path."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from benchround.feeds.sowing_table import COLUMNS
from benchround.screens.key_screens import SHEET_FILE
from benchround.screens.keys import bindings
from benchround.screens.sheet_base import Sheet, SheetFault
from benchround.screens.site_form import path_finder, typed_path
from benchround.screens.text import Line, Role, paragraph
from benchround.screens.widgets.field import Field

HOW = (
    "A CSV file, as any spreadsheet program saves it. Its first line names the columns; only crop "
    f"is needed. Columns: {', '.join(COLUMNS)}.",
    "Days as you type them anywhere; a day to come makes a plan. Nothing is recorded by naming the "
    "file: every row is shown first.",
)


class SheetFileSheet(Sheet, inherit_bindings=False):
    """Names a file. Closing gives its path as text, or None."""

    BINDINGS = bindings(SHEET_FILE)
    KEYS_OF = SHEET_FILE

    def make_fields(self) -> Sequence[Field]:
        """The one field."""
        return [Field("file", "file", finder=path_finder, wide=True)]

    def title_lines(self, width: int) -> Sequence[Line]:
        """What this is."""
        return paragraph("Sowings from a sheet: which file?", width, Role.HEADING)

    def note_lines(self, width: int) -> Sequence[Line]:
        """What the file must be like."""
        return [words for text in HOW for words in paragraph(text, width, Role.QUIET)]

    def save(self) -> str:
        """The path, once there is such a file."""
        text = self.form.field("file").text
        if not text.strip():
            raise SheetFault({"file": "type the name of a file"}, "No file was named.")
        path = typed_path(text)
        if not _is_file(path):
            raise SheetFault({"file": "there is no such file"}, "Nothing was read.")
        return str(path)

    def action_back(self) -> None:
        """Close without a file; the name typed is kept."""
        self.put_away()
        self.dismiss(None)


def _is_file(path: Path) -> bool:
    try:
        return path.is_file()
    except OSError:
        return False  # a name too long for any file
