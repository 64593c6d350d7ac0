"""Plain-text pictures of screens, kept in golden/: regression tests, checked against ourselves.

`BENCHROUND_GOLDEN=write pytest tests/screens/test_goldens.py` draws them anew; look at the
difference before you keep it.
"""

from __future__ import annotations

import os
from pathlib import Path

FOLDER = Path(__file__).parent / "golden"
WRITE = os.environ.get("BENCHROUND_GOLDEN") == "write"


def same_as_kept(name: str, text: str) -> None:
    """Fail where a screen does not look as it is kept."""
    path = FOLDER / f"{name}.txt"
    if WRITE:
        path.write_text(text, "utf-8")
    kept = path.read_text("utf-8") if path.exists() else "(none kept)\n"
    assert text == kept, f"{name} looks different from {path}:\n{text}"
