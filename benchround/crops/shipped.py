"""The shipped crops once more, one line a crop, in a form that is read much sooner than TOML.

    python -m benchround.crops.shipped

writes the lines from the TOML files, which stay the source; a test says where they have drifted.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

FOLDER = Path(__file__).parent
LINES = FOLDER / "shipped.jsonl"
BETWEEN = '","'
"""Stands between key, file name and what follows; none of the two holds a quotation mark."""


def lines_of(files: tuple[Path, ...]) -> Iterator[str]:
    """A line for every crop: its key, the name of its file and its table."""
    import tomllib  # only when the lines are written

    for path in files:
        for key, table in tomllib.loads(path.read_text("utf-8")).items():
            row = (key, path.name, table)
            yield json.dumps(row, ensure_ascii=False, separators=(",", ":")) + "\n"


def pieces() -> Iterator[tuple[str, str]]:
    """Each shipped crop's key and its line, which is not parsed yet."""
    with LINES.open(encoding="utf-8") as lines:
        for line in lines:
            yield line[2:].partition(BETWEEN)[0], line


def shipped_files() -> tuple[Path, ...]:
    """The TOML files of the library itself."""
    return tuple(sorted(FOLDER.glob("*.toml")))


if __name__ == "__main__":
    LINES.write_text("".join(lines_of(shipped_files())), "utf-8")
