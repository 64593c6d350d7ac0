"""Shows a picture early, then is long about its business: `-m tests.terminal.waiting_app`."""

from __future__ import annotations

import sys
import time

from benchround.shell.early import Asked, shown_early

PICTURE = "the round, drawn early"
HOW = sys.argv[1:]


class Read:
    """A part of a class that is read until the program is asked to end, and a moment more.

    An exception in `__set_name__` reaches whoever reads the class as another one (Python 3.11).
    """

    def __init__(self, asked: Asked) -> None:
        self._asked = asked

    def __set_name__(self, owner: type, name: str) -> None:
        while not self._asked():
            time.sleep(0.02)


if __name__ == "__main__":
    with shown_early(lambda columns, lines: f"{PICTURE} at {columns} by {lines}") as asked:
        if HOW == ["fails"]:
            time.sleep(0.5)
            raise SystemExit("it could not go on")
        if HOW == ["stuck"]:
            time.sleep(60)
        type("Reading", (), {"part": Read(asked)})
        asked.heed()
