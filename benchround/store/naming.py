"""The names of the files in a season's records folder, and which of them are read.

A page and the journal of what is to be added to it share a name up to the ending:
`laptop-2027-04-003.json` and `laptop-2027-04-003.jsonl`. Files that only begin like that are copies
which services leave behind that keep folders alike; they are read, and never written to.
"""

from __future__ import annotations

import os
from collections.abc import Iterable

PAGE = ".json"
JOURNAL = ".jsonl"
KEPT, RESCUED = "kept", "rescued"
"""What stands in brackets behind the name of a page that came back from a copy, or that holds what
could be read of a damaged one."""

_FEWEST_DIGITS, _MOST_DIGITS = 3, 9
_MONTH_LENGTH = len("2027-04")


def page_name(machine: str, month: str, number: int) -> str:
    """The file name of a page, e.g. `laptop-2027-04-001.json`."""
    return f"{machine}-{month}-{number:0{_FEWEST_DIGITS}d}{PAGE}"


def journal_of(page: str) -> str:
    """The name of the journal whose records go to that page."""
    return page + JOURNAL[len(PAGE) :]


def page_of(journal: str) -> str:
    """The name of the page that journal's records go to."""
    return journal[: len(journal) - len(JOURNAL)] + PAGE


def first_name(page: str) -> str:
    """The name a page had before its records were brought back or rescued, however often."""
    stem, ending = os.path.splitext(page)
    while stem.endswith(")"):
        before, _, tag = stem.rpartition(" (")
        if not before or not tag.startswith((KEPT, RESCUED)):
            break
        stem = before
    return stem + ending


def page_number(name: str, machine: str, month: str) -> int | None:
    """The number of a page or journal of this computer and month, or of a copy of one."""
    start = f"{machine}-{month}-"
    if not name.startswith(start):
        return None
    rest = name[len(start) :]
    digits = len(rest) - len(rest.lstrip("0123456789"))
    after = rest[digits : digits + 1]
    if not _FEWEST_DIGITS <= digits <= _MOST_DIGITS or after.isalnum() or after in ("_", "-"):
        return None
    return int(rest[:digits])


def own_journals(names: Iterable[str], machine: str) -> list[str]:
    """Those of the names that are journals of this computer, copies of them left out; sorted."""
    return sorted(name for name in names if is_journal(name) and _is_own_journal(name, machine))


def _is_own_journal(name: str, machine: str) -> bool:
    month = month_in(name, machine)
    number = page_number(name, machine, month)
    return number is not None and name == journal_of(page_name(machine, month, number))


def month_in(name: str, machine: str) -> str:
    """What stands in a name where the names of this computer's pages have the month."""
    return name.removeprefix(f"{machine}-")[:_MONTH_LENGTH]


def is_journal(name: str) -> bool:
    """Whether a file is a journal, or a copy of one."""
    return name.lower().endswith(JOURNAL)


def is_page(name: str) -> bool:
    """Whether a file of the records folder is to be read.

    Files whose name begins with a point belong to the system or to a copying service at work.
    """
    return name.lower().endswith((PAGE, JOURNAL)) and not name.startswith(".")


def is_unread_copy(name: str) -> bool:
    """Whether a file seems to be a copy of a page, under a name that hides it from being read.

    Services and tools that put a mark behind the ending leave such copies: `x.json.1`, `x.json~`.
    """
    return PAGE in name.lower() and not name.startswith(".") and not is_page(name)


Mark = tuple[int, int, int]
"""Time of change, size and number of a file: another mark means another content."""


def mark_of(state: os.stat_result) -> Mark:
    """The mark of a file."""
    return state.st_mtime_ns, state.st_size, state.st_ino
