"""The crop library: crops by key, each read from its file when it is first asked for.

Reading every table takes longer than a start may; cutting the files at their `[key]` headings does
not. So a shipped file is cut into pieces, one a crop, and a piece is parsed when the crop is named.
A grower's own files are few and not known to be good: they are read whole, at once.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator, Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any

from benchround.core.crop import Crop, PlantClass
from benchround.core.crop_table import Fault, crop_from_table, faults_in_table, refuse
from benchround.core.errors import UnknownNameError
from benchround.core.frozen import dataclass

SHIPPED = tuple(sorted(Path(__file__).parent.glob("*.toml")))
"""The files of the library itself."""

HEADING = re.compile(r"^\[([a-z0-9-]+)\]", re.MULTILINE)
"""The line that begins a crop."""

SUBHEADING = re.compile(r"^\[", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class CropNames:
    """A crop's line in the list: what it is called and of what sort it is."""

    key: str
    name: str
    latin: str
    synonyms: tuple[str, ...]
    plant_class: PlantClass


class CropLibrary(Mapping[str, Crop]):
    """Crops by key; a crop is parsed and checked when it is first asked for."""

    def __init__(self, pieces: Mapping[str, tuple[str, str]], own: Mapping[str, Crop]) -> None:
        """Take the pieces (key to file name and text) and crops that are already read.

        A crop of the grower's own stands before a shipped one of the same key.
        """
        self._pieces = dict(pieces)
        self._read = dict(own)
        self._keys = dict.fromkeys([*pieces, *own])

    def __getitem__(self, key: str) -> Crop:
        if key not in self._read:
            where, text = self._pieces[key]
            self._read[key] = crop_from_table(key, tomllib.loads(text)[key], where)
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
        text = self._pieces[key][1]
        rest = SUBHEADING.search(text, 1)
        head = tomllib.loads(text[: rest.start()] if rest else text)[key]
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
    refuse(faults_in_files(extra))
    own = {
        key: crop_from_table(key, table, path.name)
        for path in extra
        for key, table in tomllib.loads(path.read_text("utf-8")).items()
    }
    pieces: dict[str, tuple[str, str]] = {}
    for path in SHIPPED:
        pieces.update(_pieces(path))
    return CropLibrary(pieces, own)


def faults_in_files(paths: tuple[Path, ...]) -> tuple[Fault, ...]:
    """Every fault of every table of these files, and keys that are given twice."""
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
    try:
        return tomllib.loads(path.read_text("utf-8"))
    except (OSError, UnicodeDecodeError) as error:
        return Fault(path.name, "the file", str(error), "a text file in UTF-8 that can be read")
    except (ValueError, RecursionError) as error:  # a number too long, tables too deep
        return Fault(path.name, "the file", str(error), "a TOML file, one table a crop")


def _pieces(path: Path) -> Iterator[tuple[str, tuple[str, str]]]:
    """A shipped file cut at its crops' headings: each key with the file's name and its text."""
    text = path.read_text("utf-8")
    starts = list(HEADING.finditer(text))
    ends = [start.start() for start in starts[1:]] + [len(text)]
    for start, end in zip(starts, ends, strict=True):
        yield start[1], (path.name, text[start.start() : end])
