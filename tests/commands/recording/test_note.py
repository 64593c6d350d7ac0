"""Noting what happened: every kind, the checks of the screens, and helpful refusals."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchround.core.lifecycle import TABLE
from benchround.core.record import Kind
from benchround.core.record_figures import ELSEWHERE, KINDS, RULES, Form, figure_rule
from benchround.desk import Desk
from benchround.screens.record_fields import ASKED, NEEDS, WANTED
from tests.commands.recording.bench import Run, files_of, rounds_of
from tests.sample.story import DAY_0


def opened(folder: Path) -> Desk:
    return Desk.open(folder, today=lambda: DAY_0, read_only=True)


TOLD = [
    # words, kind, what it is about, figures, where the expected figures come from
    (("b20", "counted", "count=40"), Kind.COUNTED, "b20", {"count": 40}),
    (("B20", "Counted", "count= 40 "), Kind.COUNTED, "b20", {"count": 40}),
    (
        ("b25", "lost", "count=3", "cause=slug"),
        Kind.LOST,
        "b25",
        {"count": 3, "cause": "slug"},
    ),
    (
        ("b03", "moved", "place=Bench 1", "--part", "spares"),
        Kind.MOVED,
        "b03",
        {"place": "bench-1", "part": "spares"},
    ),
    (
        ("site", "reading", "min_c=41F", "max_c=19,5"),  # 41 F is 5 C by definition of the scale
        Kind.READING,
        "",
        {"min_c": 5, "max_c": 19.5},
    ),
    (("frame-a", "reading", "max_c=38"), Kind.READING, "frame-a", {"max_c": 38}),
    (
        ("Frame A", "lid", "position=half"),
        Kind.LID,
        "frame-a",
        {"position": "half", "of_place": True},
    ),
    (("bench-1", "watered"), Kind.WATERED, "bench-1", {"of_place": True}),
    (
        ("bench-2", "moisture", "said=still-wet"),
        Kind.MOISTURE,
        "bench-2",
        {"said": "still wet", "of_place": True},
    ),
    (
        ("p09", "packet", "crop=Lupin", "year=2026", "seeds=50", "saved=yes"),
        Kind.PACKET,
        "p09",
        {"crop": "lupin", "year": 2026, "seeds": 50, "saved": True},
    ),
    (
        ("long tray", "container", "cells=10", "cell_ml=60", "length_m=0.5", "width_m=.1"),
        Kind.CONTAINER,
        "long tray",
        {"cells": 10, "cell_ml": 60, "length_m": 0.5, "width_m": 0.1},
    ),
    (("c14:foxglove", "caution-read"), Kind.CAUTION_READ, "C14:foxglove", {}),
    (("b24", "brought-out"), Kind.BROUGHT_OUT, "b24", {}),
    (("b31", "noted", "--text", "tray washed twice"), Kind.NOTED, "b31", {}),
]


@pytest.mark.parametrize(("words", "kind", "about", "figures"), TOLD, ids=[t[0][1] for t in TOLD])
def test_what_is_noted_is_recorded(
    season: Path,
    run: Run,
    words: tuple[str, ...],
    kind: Kind,
    about: str,
    figures: dict[str, object],
) -> None:
    before = rounds_of(season)
    ran = run("note", *words, "--json")
    assert ran.code == 0, ran.err
    assert set(ran.value) == {"batch", "stage", "written"}
    [said] = ran.value["written"]
    assert (said["kind"], said["about"], said["figures"]) == (str(kind), about, figures)
    assert opened(season).folder.records()[-1].id == said["id"]
    run("undo")
    assert rounds_of(season) == before


def test_a_batch_begins_with_what_was_found(season: Path, run: Run) -> None:
    value = run("note", "new", "found", "count=30", "place=bench-2", "--json").value
    batch = opened(season).season.batches[value["batch"]]
    assert (value["batch"], batch.crop, batch.main.alive) == ("b34", "unknown", 30)


def test_time_day_and_text_are_kept(season: Path, run: Run) -> None:
    text = "one line\nand another"
    run("note", "b20", "noted", "--text", text, "--on", "yesterday", "--at", "7:05")
    record = opened(season).folder.records()[-1]
    assert (record.note, record.day.isoformat()) == (text, "2026-05-26")
    assert record.at is not None
    assert record.at.isoformat("minutes") == "07:05"


@pytest.mark.parametrize(
    ("words", "caution"),
    [
        (("noted", "--text", "sprayed them"), "only products approved here, used as labelled"),
        (("lost", "count=1", "cause=slug"), "Slug bait: lawful kinds only"),
        (("noted", "--text", "leaning a little"), ""),
    ],
)
def test_the_caution_of_what_is_noted_is_said_beside_it(
    season: Path, run: Run, words: tuple[str, ...], caution: str
) -> None:
    said = run("note", "b20", *words).err
    assert caution in said
    assert ("Caution" in said) is bool(caution)


REFUSED = [
    (("b20", "conted"), "counted"),
    (("b20", "co"), "counted"),
    (("b20", ""), "Nothing is recorded as"),
    (("b20", "setting"), "benchround settings"),
    (("b20", "withdrawn"), "benchround undo"),
    (("b2O", "counted", "count=4"), "b20"),
    (("nowhere", "watered"), "no place"),
    (("bench", "watered"), "Near it: Bench 1"),
    (("b20", "counted"), "needs count"),
    (("b20", "counted", "cont=4"), "count"),
    (("b20", "counted", "count="), "nothing is given"),
    (("b20", "counted", "count=4000"), "more than the 48 seeds"),
    (("b20", "counted", "count=1e3"), "not a whole number"),
    (("b20", "counted", "count=-1"), "from 0"),
    (("b20", "counted", "count=4", "count=5"), "given twice"),
    (("b13", "planted-out", "count=3"), "cannot be recorded"),
    (("b25", "lost", "cause=snail"), "slug"),
    (("b25", "lost", "count=99", "cause=slug"), "more than the"),
    (("b03", "lost", "cause=slug", "--part", "nowhere"), "no part"),
    (("bench-1", "watered", "--part", "spares"), "--part"),
    (("b32", "same-as", "batch=b99"), "no batch"),
    (("site", "watered"), "name a batch or place"),
    (("site", "reading", "min_c=9", "max_c=3"), "above highest"),
    (("site", "reading", "min_c=99"), "from -45 to 70"),
    (("site", "reading", "min_c=nan"), "not a number"),
    (("site", "noted"), "--text"),
    (("frame-a", "lid", "position=ajar"), "first notch"),
    (("b20", "fed", "--on", "tomorrow"), "still to come"),
    (("b20", "fed", "--on", "1015-05-01"), "look at the year"),
    (("b20", "fed", "--at", "25:00"), "no time of day"),
    (("new", "counted", "count=3"), "cannot begin a batch"),
    (("C99", "caution-read"), "no caution"),
    (("P 9", "packet", "crop=leek"), "name of a packet"),
    (("p09", "packet", "crop=leak"), "leek"),
    (("b20", "noted", "--text", "x" * 10_001), "10000"),
]


@pytest.mark.parametrize(("words", "said"), REFUSED, ids=[" ".join(w)[:40] for w, _ in REFUSED])
def test_what_cannot_be_is_refused_and_nothing_is_written(
    season: Path, run: Run, words: tuple[str, ...], said: str
) -> None:
    before = files_of(season)
    ran = run("note", *words)
    assert ran.code == 1
    assert said in ran.err
    assert ran.out == ""
    assert files_of(season) == before


@pytest.mark.parametrize("word", ["count", "=4", "Count=4", "4=4"])
def test_a_word_that_is_no_figure_is_wrong_usage(season: Path, run: Run, word: str) -> None:
    ran = run("note", "b20", "counted", word)
    assert (ran.code, "write name=value" in ran.err) == (2, True)


def test_every_kind_can_be_noted_or_has_a_command_of_its_own() -> None:
    assert {*KINDS, *ELSEWHERE} == set(Kind)
    assert not {*KINDS} & {*ELSEWHERE}
    assert {*TABLE} <= {*KINDS, *ELSEWHERE}
    for kind, rule in KINDS.items():
        assert rule.needed <= set(rule.figures)
        assert all(name in RULES for name in rule.figures), kind
    assert all(rule.choices for rule in RULES.values() if rule.form is Form.CHOICE)
    assert figure_rule(Kind.STALLED, "cause").choices == ("heat", "cold")


def test_whatever_the_record_sheet_asks_can_be_typed_here_too() -> None:
    for kind, names in ASKED.items():
        assert set(names) <= set(KINDS[kind].figures), kind
        for name in names:
            rule, wanted = figure_rule(kind, name), WANTED[name]
            if wanted.sort == "number" or wanted.sort == "whole":
                assert rule.low <= 0, name
                assert rule.high >= wanted.most, name
            elif wanted.choices and kind is not Kind.STALLED:
                assert set(wanted.choices) <= set(rule.choices), name
    for kind, needed in NEEDS.items():
        assert KINDS[kind].needed <= set(needed)


def test_the_sample_s_own_figures_may_all_be_typed(season: Path) -> None:
    """The sample tells of every kind of work; nothing in it may be beyond the shell."""
    silent = {"of_place", "part"}
    for record in opened(season).folder.records():
        if record.kind in KINDS:
            known = set(KINDS[record.kind].figures) | silent
            assert set(record.figures) <= known, record


@pytest.mark.parametrize("kind", ["lost", "composted"])
def test_without_a_count_it_says_that_all_were_taken(run: Run, season: Path, kind: str) -> None:
    alive = opened(season).season.batches["b25"].main.alive
    said = run("note", "b25", kind).out
    assert alive
    assert f"all {alive}: {kind}" in said
    assert "benchround undo --last" in said
    assert "undo" not in run("note", "b20", "lost", "count=1").out


@pytest.mark.parametrize(
    ("words", "said"),
    [  # plain words for what happens at a bench (common practice, no source)
        ("came up", "write first-up or counted"),
        ("dead", "write lost"),
        ("germinated", "write looked or first-up or counted"),
    ],
)
def test_other_words_for_what_happened_lead_to_it(
    season: Path, run: Run, words: str, said: str
) -> None:
    before = files_of(season)
    ran = run("note", "b20", words)
    assert ran.code == 1
    assert said in ran.err
    assert files_of(season) == before
