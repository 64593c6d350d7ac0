"""The season's own file, `benchround.json`: format number, name, day it was begun."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Any

from benchround.core.frozen import dataclass
from benchround.store.bounds import LONGEST_NAME, checked_text
from benchround.store.disk import SYSTEM_DISK, Disk, read_whole
from benchround.store.errors import SeasonDamagedError, SeasonNewerError
from benchround.store.layout import HEADING
from benchround.store.tables import Tables, parse_tables

FORMAT = 1
"""The format this program writes; raised whenever an older program would misread a season."""

_TABLE = "season"


@dataclass(frozen=True, slots=True)
class Heading:
    """What the season's own file says.

    Attributes:
        moving_from: the older format an interrupted move to this one started from, or None.
    """

    name: str
    created: date
    format: int = FORMAT
    moving_from: int | None = None


def write_heading(folder: Path, heading: Heading, disk: Disk = SYSTEM_DISK) -> None:
    """Write the season's own file, in place of the one there.

    Raises:
        InputError: the name is too long or cannot be printed.
        SeasonError: it could not be written; what was there is untouched.
    """
    from tinydb import TinyDB  # not needed for reading

    from benchround.store.storage import AtomicStorage

    document: dict[str, Any] = {
        "format": heading.format,
        "name": checked_text("the season's name", heading.name, LONGEST_NAME),
        "created": heading.created.isoformat(),
    }
    if heading.moving_from is not None:
        document["moving from"] = heading.moving_from
    with TinyDB(folder / HEADING, storage=AtomicStorage, disk=disk) as season:
        table = season.table(_TABLE)
        if table.contains(doc_id=1):
            table.update(document, doc_ids=[1])
        else:
            table.insert(document)


def read_heading(folder: Path) -> Heading:
    """What the season's own file says.

    Raises:
        SeasonNewerError: a newer program wrote the season.
        SeasonDamagedError: the file is missing, cannot be read or does not hold what it should.
    """
    path = folder / HEADING
    try:
        return heading_from(parse_tables(read_whole(path)))
    except FileNotFoundError as error:
        raise SeasonDamagedError(f"{HEADING} is missing in {folder}") from error
    except OSError as error:  # the records may be readable all the same
        raise SeasonDamagedError(f"{path} cannot be opened ({error.strerror})") from error
    except SeasonDamagedError as error:
        raise SeasonDamagedError(f"{path} is damaged: {error}") from error


def heading_from(tables: Tables) -> Heading:
    """The heading in the tables of a season's own file.

    Raises:
        SeasonNewerError: a newer program wrote the season.
        SeasonDamagedError: the tables do not hold what they should.
    """
    try:
        document = tables[_TABLE]["1"]
        number = document["format"]
        if not isinstance(number, int):
            raise TypeError("the format is not a number")
        if number > FORMAT:
            raise SeasonNewerError(
                f"this season was written by a newer benchround (format {number}; this one knows"
                f" {FORMAT}); install the newer benchround here too"
            )
        return Heading(
            name=str(document["name"]),
            created=date.fromisoformat(document["created"]),
            format=number,
            moving_from=document.get("moving from"),
        )
    except (KeyError, TypeError, ValueError) as error:
        raise SeasonDamagedError(f"it does not say what it should ({error})") from error
