"""The published rows the library is held against, each with its source in the case id."""

from csv import DictReader
from pathlib import Path

import pytest

from benchround.core.crop.crop import Crop
from benchround.crops import load_library

DATA = Path(__file__).parents[1] / "data"

LIBRARY = load_library()
KEYS = tuple(LIBRARY)


def rows(name: str) -> list[dict[str, str]]:
    lines = (DATA / name).read_text("utf-8").splitlines()
    return list(DictReader(line for line in lines if not line.startswith("#")))


def cases(name: str) -> list[object]:
    """Rows as cases whose ids say crop, source and how the source was seen."""
    return [
        pytest.param(row, id=f"{row['key']}: {row['source']} ({row['status']})")
        for row in rows(name)
    ]


def crop(key: str) -> Crop:
    return LIBRARY.crop(key)
