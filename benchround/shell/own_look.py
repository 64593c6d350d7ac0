"""The look this computer was last given, light or dark: one word in the user's settings folder.

A look belongs to a screen and a room, not to a season: the same season may be dark in the shed and
light on the laptop. What stands in a season's settings holds only where a computer has none yet.
"""

from __future__ import annotations

import os
from contextlib import suppress
from pathlib import Path

from benchround.core.errors import SeasonError

LOOKS = ("dark", "light")
MOST_BYTES = 100


def look_file() -> Path:
    """Where the look is kept, by the system's custom; it need not be there."""
    from platformdirs import user_config_path

    return user_config_path("benchround", appauthor=False) / "look"


def own_look(path: Path | None = None) -> str:
    """The look kept; empty where there is none, or the file says something else."""
    try:
        with (path or look_file()).open("rb") as file:
            said = file.read(MOST_BYTES).decode("ascii", "replace").strip()
    except OSError:
        return ""
    return said if said in LOOKS else ""


def keep_look(look: str, path: Path | None = None) -> None:
    """Keep a look for this computer: the file is written whole, or left as it was.

    Raises:
        SeasonError: it could not be written.
    """
    kept = path or look_file()
    beside = kept.with_name(f"{kept.name}.{os.getpid()}.new")
    try:
        kept.parent.mkdir(parents=True, exist_ok=True)
        beside.write_text(f"{look}\n", "ascii")
        beside.replace(kept)
    except OSError as error:
        with suppress(OSError):
            beside.unlink()
        raise SeasonError(
            f"The look holds until you leave: {kept} could not be written ({error.strerror})."
        ) from None
