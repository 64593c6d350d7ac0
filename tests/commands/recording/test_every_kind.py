"""Every kind of record can be written from a shell, and taken back there."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from benchround.cli import COMMANDS
from benchround.core.lifecycle import NEXT, TABLE
from benchround.core.record import Kind
from benchround.core.record_figures import ELSEWHERE, KINDS, OF_PLACES, OF_SITE, Form, figure_rule
from benchround.core.season import Season
from benchround.desk import Desk
from tests.commands.recording.bench import Run, rounds_of
from tests.sample.story import DAY_0

OWN_COMMANDS = {
    Kind.SITE: ("settings", "altitude_m=75"),
    Kind.PLACE: ("place", "set", "frame-d", "name=Frame D", "kind=frame"),
    Kind.SETTING: ("settings", "feed_every_days=12"),
    Kind.CROP_RULE: ("crops", "cosmos", "set", "germination.days_first=6"),
    # a tick of what has nothing else to tell; the sample's round has none, but labels write it too
    Kind.DONE: ("labels", ".", "--on", "2026-05-27", "--batch", "b07", "--text", "labels.txt"),
    Kind.PUT_OFF: ("put-off", "feed:b16", "--until", "+2"),
    Kind.WITHDRAWN: ("undo", "--last"),
}
NAMES = {Kind.PACKET: "p77", Kind.CONTAINER: "long tray", Kind.CAUTION_READ: "C14:foxglove"}
WORDS = {Form.PLACE: "bench-1", Form.CROP: "cosmos", Form.BATCH: "b33", Form.DAY: "2026-06-01"}


def words_for(kind: Kind) -> list[str]:
    """The figures a kind cannot do without, each with something it may be."""
    said: list[str] = ["--text", "said"] if kind is Kind.NOTED else []
    for name in KINDS[kind].figures:
        if name in KINDS[kind].needed:
            rule = figure_rule(kind, name)
            least = f"{max(rule.low, 1):g}" if rule.form in (Form.WHOLE, Form.NUMBER) else "some"
            choice = rule.choices[0] if rule.choices else least
            said.append(f"{name}={WORDS.get(rule.form, choice)}")
    return said


def abouts(kind: Kind, season: Season) -> Iterator[str]:
    """What a record of this kind may be about, in a season."""
    if kind in NAMES:
        yield NAMES[kind]
    if kind in OF_SITE:
        yield "site"
    if kind in OF_PLACES:
        yield "frame-a"
    for batch in season.batches.values():
        if (batch.main.stage, kind) in NEXT:
            yield batch.id
    yield "new"


def standing(folder: Path) -> list[tuple[str, Kind]]:
    """The records of a season that stand, by id."""
    desk = Desk.open(folder, today=lambda: DAY_0, read_only=True)
    try:
        records = desk.folder.records()
        gone = {r.text("record") for r in records if r.kind is Kind.WITHDRAWN}
        return sorted((r.id, r.kind) for r in records if r.id not in gone)
    finally:
        desk.close()


@pytest.mark.parametrize("kind", KINDS)
def test_note_writes_it_and_undo_takes_it_back(season: Path, run: Run, kind: Kind) -> None:
    desk = Desk.open(season, today=lambda: DAY_0, read_only=True)
    tried = list(abouts(kind, desk.season))
    desk.close()
    before, round_before = standing(season), rounds_of(season)
    word = str(kind).replace(" ", "-")
    said = []
    for about in tried:
        ran = run("note", about, word, *words_for(kind))
        if ran.code == 0:
            break
        said.append(ran.err)
        assert standing(season) == before
    else:
        pytest.fail(f"{kind}: {said}")
    (new,) = set(standing(season)) - set(before)
    assert new[1] is kind
    assert run("undo", "--last").code == 0
    assert [line for line in standing(season) if line[1] is not Kind.WITHDRAWN] == [
        line for line in before if line[1] is not Kind.WITHDRAWN
    ]
    assert rounds_of(season) == round_before


@pytest.mark.parametrize("kind", ELSEWHERE)
def test_its_own_command_writes_it(season: Path, run: Run, kind: Kind) -> None:
    words = OWN_COMMANDS[kind]
    assert {words[0], ELSEWHERE[kind].split()[0]} <= {*COMMANDS}
    if kind is Kind.WITHDRAWN:
        assert run("note", "b20", "counted", "count=40").code == 0
    before = standing(season)
    ran = run(*words)
    assert ran.code == 0, ran.err
    assert {new for _, new in set(standing(season)) - set(before)} == {kind}


def test_every_kind_has_a_way() -> None:
    assert {*KINDS, *OWN_COMMANDS} == set(Kind)
    assert {*TABLE} <= {*KINDS, *ELSEWHERE}
