"""What a grower should know about the state of a season's files, one sentence each."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from benchround.store.contents import Contents
from benchround.store.naming import is_journal
from benchround.store.pages import Page


def problems_of(contents: Contents) -> Iterator[str]:
    """The sentences: damaged files, passed-over records, records told two ways, lost ones."""
    for page in contents.pages:
        if page.fault:
            yield _damaged(page)
        yield from page.remarks
    for name in contents.unread:
        yield (
            f"{name} lies among the records and is not read; if it is a copy a service left behind,"
            " give it a name that ends in .json or .jsonl, as what is in it does"
        )
    for name, files in contents.disagreements.items():
        yield f"record {name} is told in two ways in {', '.join(files)}; the longer one is shown"
    for name, count in contents.missed.items():
        yield (
            f"{name} was changed or removed from outside and {_records(count)} missing since;"
            f" {'its page may still be on the way, else ' if is_journal(name) else ''}look among"
            " the kept copies"
        )


def kept_only(season: Path) -> str:
    """The sentence where the records of a season stand in a kept copy only; empty elsewhere."""
    from benchround.store.keep import latest_with_records  # seldom needed

    kept = latest_with_records(season)
    if kept is None:
        return ""
    return (
        f"there are no records here, but in the copy kept on {kept.day.isoformat()}: 'benchround"
        f" restore {kept.path.stem} --preview' says what it brings back"
    )


def _damaged(page: Page) -> str:
    saved = "nothing could be read from it"
    if page.records:
        saved = f"{len(page.records)} records on whole lines were read from it"
    return (
        f"{page.name} is damaged: {page.fault}; {saved}, it is left as it is, and a kept copy may"
        " hold the rest: 'benchround restore --damaged --preview' looks"
    )


def _records(count: int) -> str:
    return "1 record is" if count == 1 else f"{count} records are"
