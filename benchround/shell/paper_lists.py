"""What the numbers on printed sheets stand for, kept beside the season's copies."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from benchround.core.errors import InputError
from benchround.desk import Desk
from benchround.feeds.paper_entry import Entry
from benchround.feeds.paper_round import PaperList, list_data, list_from, paper_list
from benchround.shell.beside import keep_beside, kept_beside
from benchround.store.layout import KEEP

NOT_KEPT = "The numbers are not kept: type the sheet in while the round is the same."
MOST_LISTS = 60
"""How many printed lists are kept with the season."""


def keep_list(desk: Desk, kept: PaperList) -> None:
    """Keep what the numbers stand for; it is no record."""
    if keep_beside(desk, kept.file_name, list_data(kept), NOT_KEPT):
        for old in sorted((desk.folder.path / KEEP).glob("paper-*.json"))[:-MOST_LISTS]:
            old.unlink(missing_ok=True)


def list_for(entry: Entry, desk: Desk) -> PaperList:
    """What the numbers typed stand for: the list kept under the code, or that of the day.

    Raises:
        InputError: there is no such list, or more than one and no code.
    """
    kept = _kept_lists(desk, entry.code)
    if entry.code:
        found = [one for one in kept if one.code == entry.code]
        now = paper_list(desk.round())
        if found or now.code == entry.code:
            return (found or [now])[-1]
        raise InputError(
            f"No sheet with the code {entry.code} is kept here, and today's round is another one "
            f"({now.code}): look at the code again."
        )
    return _of_day(kept, desk.today, desk)


def _of_day(kept: Sequence[PaperList], day: date, desk: Desk) -> PaperList:
    found = [one for one in kept if one.day == day]
    if len(found) > 1:
        codes = ", ".join(one.code for one in found)
        raise InputError(
            f"More than one sheet was printed that day: begin with its code ({codes})."
        )
    if found:
        return found[0]
    code = paper_list(desk.round()).code
    raise InputError(
        f"No sheet of {day.isoformat()} is kept here: begin with the code that stands on it "
        f"(the round as it is now has {code})."
    )


def _kept_lists(desk: Desk, code: str) -> list[PaperList]:
    return list(kept_beside(desk, f"paper-*-{code or '*'}.json", list_from))
