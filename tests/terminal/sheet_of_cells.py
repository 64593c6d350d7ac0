"""What stands on a terminal, read from the bytes a program drew: no more than ours draw with."""

from __future__ import annotations

import re
from codecs import getincrementaldecoder

from rich.cells import get_character_cell_size

STEERING = re.compile(
    r"\x1b\[([0-?]*)[ -/]*([@-~])"  # moving, erasing, colours, modes
    r"|\x1b\][^\x07\x1b]*(?:\x07|\x1b\\)"  # the title
    r"|\x1b[P_^X][^\x1b]*\x1b\\"
    r"|\x1b[=>78cDEHM]"
    r"|[\r\n\x08\x07]"
    r"|[^\x1b\r\n\x08\x07]+"
)
STEERED = re.compile(
    rb"\x1b\[[0-?]*[ -/]*[@-~]|\x1b\][^\x07\x1b]*(?:\x07|\x1b\\)|\x1b[P_^X][^\x1b]*\x1b\\|\x1b[=>]"
)
"""What is not drawn, in the bytes themselves."""
UNFINISHED = re.compile(r"\x1b(?:\[[0-?]*[ -/]*|[\]P_^X][^\x07\x1b]*\x1b?)?\Z")


class SheetOfCells:
    """The letters on a terminal of a size, and the modes it was put into.

    Args:
        columns: of the terminal.
        lines: of the terminal.
    """

    def __init__(self, columns: int, lines: int) -> None:
        self.columns, self.lines = columns, lines
        self.modes: dict[str, bool] = {}
        self._decode = getincrementaldecoder("utf-8")("replace").decode
        self._left = ""
        self._x = self._y = 0
        self._cells: list[list[str]] = []
        self._clear()

    @property
    def text(self) -> str:
        """What is to be read, line by line, without blanks at the ends of lines."""
        return "\n".join("".join(row).rstrip() for row in self._cells)

    def resize(self, columns: int, lines: int) -> None:
        """Take another size; what stood there is gone, the modes stay."""
        self.columns, self.lines = columns, lines
        self._x = self._y = 0
        self._clear()

    def feed(self, drawn: bytes) -> None:
        """Take in what was drawn; half an escape sequence waits for its other half."""
        text = self._left + self._decode(drawn)
        half = UNFINISHED.search(text)
        self._left = text[half.start() :] if half else ""
        for found in STEERING.finditer(text[: half.start()] if half else text):
            if found[2]:
                self._steer(found[1], found[2])
            elif found[0] == "\r":
                self._x = 0
            elif found[0] == "\n":
                self._y = min(self.lines - 1, self._y + 1)
            elif found[0] == "\x08":
                self._x = max(0, self._x - 1)
            elif found[0][0] not in "\x1b\x07":
                self._write(found[0])

    def _steer(self, figures: str, what: str) -> None:
        if what in "hl" and figures.startswith("?"):
            for mode in figures[1:].split(";"):
                self.modes[mode] = what == "h"
            return
        numbers = [int(figure) if figure.isdigit() else 0 for figure in figures.split(";")]
        first = max(1, numbers[0])
        if what == "H":
            column = numbers[1] if len(numbers) > 1 else 1
            self._y = min(self.lines, first) - 1
            self._x = min(self.columns, max(1, column)) - 1
        elif what in "ABCD":
            across = {"C": first, "D": -first}.get(what, 0)
            down = {"B": first, "A": -first}.get(what, 0)
            self._x = max(0, min(self.columns - 1, self._x + across))
            self._y = max(0, min(self.lines - 1, self._y + down))
        elif what == "J" and numbers[0] in (2, 3):
            self._clear()

    def _clear(self) -> None:
        self._cells = [[" "] * self.columns for _ in range(self.lines)]

    def _write(self, text: str) -> None:
        for sign in text:
            wide = get_character_cell_size(sign)
            if not wide:
                continue
            if self._x + wide > self.columns:
                return
            row = self._cells[self._y]
            row[self._x] = sign
            if wide == 2:
                row[self._x + 1] = ""
            self._x += wide
