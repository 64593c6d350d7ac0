"""The crop library: crops by key, each read when it is first asked for.

Reading every table takes longer than a start may. So the shipped crops are read from lines made of
their files (see `crops.shipped`), and a line is parsed when its crop is named. A grower's own files
are few and not known to be good: they are read whole, at once.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from benchround.core.crop.crop import Crop, PlantClass
from benchround.core.crop.sound import crop_from_sound_table
from benchround.core.errors import UnknownNameError
from benchround.core.frozen import dataclass

if TYPE_CHECKING:
    from benchround.core.crop.fault import Fault

# Looking for faults is for the grower's own files; what that takes is imported where they are read.


@dataclass(frozen=True, slots=True)
class CropNames:
    """A crop's line in the list: what it is called and of what sort it is."""

    key: str
    name: str
    latin: str
    synonyms: tuple[str, ...]
    plant_class: PlantClass


class CropLibrary(Mapping[str, Crop]):
    """Crops by key; a shipped crop is read when it is first asked for."""

    def __init__(self, lines: Mapping[str, str], own: Mapping[str, Crop]) -> None:
        """Take the lines of shipped crops by key, not parsed yet, and crops that are already read.

        A crop of the grower's own stands before a shipped one of the same key.
        """
        self._lines = dict(lines)
        self._read = dict(own)
        self._keys = dict.fromkeys([*lines, *own])

    def __getitem__(self, key: str) -> Crop:
        if key not in self._read:
            self._read[key] = crop_from_sound_table(key, json.loads(self._lines[key])[2])
        return self._read[key]

    def __iter__(self) -> Iterator[str]:
        return iter(self._keys)

    def __len__(self) -> int:
        return len(self._keys)

    def __contains__(self, key: object) -> bool:
        return key in self._keys

    def crop(self, key: str) -> Crop:
        """The crop of this key.

        Raises:
            UnknownNameError: there is none; the message names the nearest.
        """
        if key in self._keys:
            return self[key]
        from difflib import get_close_matches  # only for a name that was mistyped

        near = get_close_matches(key, self._keys, n=1, cutoff=0.6)
        hint = f"the nearest is {near[0]!r}" if near else "look it up on the crops screen"
        raise UnknownNameError(f"no crop is called {key!r}: {hint}")

    def names(self) -> tuple[CropNames, ...]:
        """Every crop's names, without reading the rest of its table."""
        return tuple(self._names_of(key) for key in self._keys)

    def _names_of(self, key: str) -> CropNames:
        if key in self._read:
            crop = self._read[key]
            return CropNames(key, crop.name, crop.latin, crop.synonyms, crop.plant_class)
        head = json.loads(self._lines[key])[2]
        synonyms = tuple(head.get("synonyms", ()))
        return CropNames(key, head["name"], head["latin"], synonyms, PlantClass(head["class"]))


@lru_cache(maxsize=8)
def load_library(extra: tuple[Path, ...] = ()) -> CropLibrary:
    """The shipped crops and those of the grower's own files.

    Args:
        extra: crop files of the grower's own; a crop there takes the place of a shipped one.

    Raises:
        CropFileError: a file of the grower's own has faults; all faults of all files are listed.
    """
    # imported here, so that python -m benchround.crops.shipped finds itself not imported already
    from benchround.crops.shipped import pieces

    return CropLibrary(dict(pieces()), _own_crops(extra) if extra else {})


def _own_crops(files: tuple[Path, ...]) -> dict[str, Crop]:
    import tomllib

    from benchround.core.crop.table import crop_from_table, refuse

    refuse(faults_in_files(files))
    return {
        key: crop_from_table(key, table, path.name)
        for path in files
        for key, table in tomllib.loads(path.read_text("utf-8")).items()
    }


def faults_in_files(paths: tuple[Path, ...]) -> tuple[Fault, ...]:
    """Every fault of every table of these files, and keys that are given twice."""
    from benchround.core.crop.table import Fault, faults_in_table

    faults: list[Fault] = []
    first_in: dict[str, str] = {}
    for path in paths:
        tables = _tables(path)
        if isinstance(tables, Fault):
            faults.append(tables)
            continue
        for key, table in tables.items():
            faults += faults_in_table(key, table, path.name)
            if key in first_in:
                faults.append(Fault(path.name, key, key, f"a key not in {first_in[key]} already"))
            first_in.setdefault(key, path.name)
    return tuple(faults)


def _tables(path: Path) -> dict[str, Any] | Fault:
    """The crop tables of a file, or the one fault that keeps it from being read."""
    import tomllib

    from benchround.core.crop.fault import Fault

    try:
        return tomllib.loads(path.read_text("utf-8"))
    except (OSError, UnicodeDecodeError) as error:
        return Fault(path.name, "the file", str(error), "a text file in UTF-8 that can be read")
    except (ValueError, RecursionError) as error:  # a number too long, tables too deep
        return Fault(path.name, "the file", str(error), "a TOML file, one table a crop")
