"""Every row of the table of germination checks is tested by name, or says why it cannot be.

The table is a copy of the figures collected from papers, packages and worked examples, with their
sources (tests/data/germination_checks.csv); docs/germination_checks.md tells what is left out.
"""

import re
import subprocess
import sys
from collections.abc import Iterable
from csv import DictReader
from pathlib import Path

import pytest

TESTS = Path(__file__).parents[2]
PAGE = TESTS.parent / "docs" / "germination_checks.md"
WHERE = ("seed", "learning", "planning", "test_recurrence.py", "test_dateutil_version.py")
NAMED = re.compile(r"(?<![A-Za-z0-9])([DGLRSTVW][0-9]{2,3})(?![0-9])", re.IGNORECASE)


def rows() -> list[dict[str, str]]:
    with (TESTS / "data" / "germination_checks.csv").open(encoding="utf-8", newline="") as file:
        return list(DictReader(file))


def names_in(cases: Iterable[str]) -> set[str]:
    """The row names in the names of tests, whether `test_g52_...` or `[G01: source]`."""
    return {
        name.upper() for case in cases for name in NAMED.findall(case.replace("_", " ").strip())
    }


@pytest.fixture(scope="module")
def tested() -> set[str]:
    """The names in all collected cases, themselves left out."""
    asked = [str(TESTS / "core" / name) for name in WHERE]
    found = subprocess.run(
        [sys.executable, "-m", "pytest", "--collect-only", "-q", "-p", "no:cacheprovider", *asked],
        capture_output=True, text=True, check=True, timeout=300, cwd=TESTS.parent,
    )  # fmt: skip
    own = Path(__file__).name
    return names_in(
        line.partition("::")[2] for line in found.stdout.splitlines() if own not in line
    )


def test_the_table_is_whole() -> None:
    names = [row["id"] for row in rows()]
    assert len(names) == len(set(names)) == 238
    assert all(row["formula"] and row["expected"] and row["source"] for row in rows())
    assert all(row["status"] for row in rows())


@pytest.mark.parametrize("row", rows(), ids=lambda row: f"row {row['id']}")
def test_a_row_is_tested_or_says_why_not(row: dict[str, str], tested: set[str]) -> None:
    if row["not_reproduced"]:
        assert row["id"] not in tested, "it is tested: strike the reason"
        assert f"| {row['id']}" in PAGE.read_text(encoding="utf-8") or in_a_range(row["id"])
    else:
        assert row["id"] in tested, "no test names it, and no reason is given"


def in_a_range(name: str) -> bool:
    """Whether the page lists a range of rows, as G309-G315, that holds this one."""
    ranges = re.findall(r"\| ([A-Z])([0-9]+)-[A-Z]([0-9]+) ", PAGE.read_text(encoding="utf-8"))
    return any(
        letter == name[0] and int(first) <= int(name[1:]) <= int(last)
        for letter, first, last in ranges
    )


def test_the_page_lists_nothing_that_is_tested() -> None:
    page = PAGE.read_text(encoding="utf-8").partition("## Not reproduced")[2]
    left_out = {row["id"] for row in rows() if row["not_reproduced"]}
    assert names_in(re.findall(r"^\| [^|]+\|", page, re.MULTILINE)) <= left_out
