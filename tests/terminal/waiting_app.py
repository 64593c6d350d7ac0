"""Shows a picture early, then is long about its business: `-m tests.terminal.waiting_app`."""

from __future__ import annotations

import sys
import time

from benchround.shell.early import shown_early

PICTURE = "the round, drawn early"

if __name__ == "__main__":
    with shown_early(lambda columns, lines: f"{PICTURE} at {columns} by {lines}"):
        if sys.argv[1:] == ["fails"]:
            raise SystemExit("it could not go on")
        time.sleep(60)
