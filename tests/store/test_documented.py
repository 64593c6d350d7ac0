"""What docs/records.md shows of the files is what they are."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from benchround.store.pages import page_from
from benchround.store.seal import is_sealed

TEXT = (Path(__file__).parents[2] / "docs" / "records.md").read_text()
TESTS = Path(__file__).parents[1]
NAMED = re.findall(r"`([a-z_/]+\.py)`: `(test_[a-z0-9_]+)`", TEXT)
INDENT = "    "


def shown(start: str) -> bytes:
    """The indented block whose first line begins like this."""
    for block in TEXT.split("\n\n"):
        lines = block.strip("\n").split("\n")
        if lines[0].startswith(INDENT + start):
            return "".join(f"{line.removeprefix(INDENT)}\n" for line in lines).encode()
    raise AssertionError(f"nothing is shown that begins with {start}")


def test_the_page_shown_is_sound_and_its_sum_is_right() -> None:
    data = shown("{")
    assert is_sealed(data)
    page = page_from("potting-shed-2027-04-001.json", (0, 0, 0), data)
    assert [record.kind.value for record in page.records] == ["sown", "first up"]
    assert (page.fault, page.remarks) == ("", ())


def test_the_journal_line_shown_is_sound() -> None:
    page = page_from("potting-shed-2027-04-001.jsonl", (0, 0, 0), shown('{"check": '))
    assert [record.kind.value for record in page.records] == ["pricked out", "lost"]
    assert (page.fault, page.unfinished) == ("", False)


@pytest.mark.parametrize(("file", "name"), NAMED)
def test_the_test_named_beside_a_promise_is_there(file: str, name: str) -> None:
    assert re.search(rf"^(async )?def {name}\(", (TESTS / file).read_text("utf-8"), re.M)


def test_every_promise_names_its_test() -> None:
    section = TEXT.partition("## How each promise is tested")[2].partition("\n## ")[0]
    rows = [line for line in section.splitlines() if line.startswith("| ")][1:]
    assert len(rows) == len(NAMED) > 30
