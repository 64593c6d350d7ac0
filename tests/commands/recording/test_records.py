"""Listing what was recorded."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.commands.recording.bench import Run
from tests.sample.story import records

KEYS = {
    *("id", "day", "kind", "about", "figures", "note", "at", "machine"),
    *("standing", "withdrawn_by"),
}


def test_everything_is_listed_once_the_oldest_first(season: Path, run: Run) -> None:
    value = run("records", "--json").value
    assert {"season", "records"} == set(value)
    assert [r["id"] for r in value["records"]] == [
        r.id for r in sorted(records(), key=lambda r: r.order)
    ]
    assert all(set(record) == KEYS for record in value["records"])


@pytest.mark.parametrize(
    ("words", "about"),
    [(("b03",), "b03"), (("B03",), "b03"), (("Frame A",), "frame-a"), (("site",), "")],
)
def test_one_batch_or_place_is_listed(
    season: Path, run: Run, words: tuple[str, ...], about: str
) -> None:
    found = run("records", *words, "--json").value["records"]
    expected = [r.id for r in sorted(records(), key=lambda r: r.order) if r.about == about]
    assert [r["id"] for r in found] == expected
    assert len(run("records", *words).out.splitlines()) == len(expected)


def test_a_kind_and_the_newest_are_picked(season: Path, run: Run) -> None:
    run("note", "b20", "fed")
    newest = run("records", "--newest", "1", "--json").value["records"]
    assert [(r["about"], r["kind"]) for r in newest] == [("b20", "fed")]
    seen = run("records", "--kind", "first-up", "--json").value["records"]
    assert {r["kind"] for r in seen} == {"first up"}
    assert len(seen) == sum(1 for r in records() if r.kind == "first up")


def test_withdrawn_ones_say_so(season: Path, run: Run) -> None:
    run("note", "b20", "fed")
    run("undo")
    lines = run("records", "b20").out.splitlines()
    assert [line.split()[0] for line in lines].count("withdrawn") == 1
    assert sum(" withdrawn record=" in line for line in lines) == 1


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("b77",), "b07"),
        (("--kind", "feed"), "fed"),
        (("--newest", "0"), "above 0"),
        (("--newest", "-3"), "above 0"),
        (("--newest", "many"), "above 0"),
    ],
)
def test_what_is_not_there_is_named(
    season: Path, run: Run, words: tuple[str, ...], said: str
) -> None:
    ran = run("records", *words)
    assert (ran.code, said in ran.err) == (1, True)
