"""The same work recorded on two computers that met only afterwards is asked for and shown once."""

from __future__ import annotations

import shutil
from datetime import date
from itertools import permutations
from pathlib import Path

import pytest

from benchround.core.record import Draft, Kind
from benchround.desk import Desk
from benchround.whereabouts import SAMPLE_DAY, sample_folder


def today() -> date:
    return SAMPLE_DAY


def two_copies(home: Path) -> tuple[Path, Path]:
    """The sample on two computers that do not see each other."""
    ignored = shutil.ignore_patterns("*.lock")
    copies = (home / "laptop", home / "tablet")
    for copy in copies:
        shutil.copytree(sample_folder(), copy, ignore=ignored)
    return copies


def ticked(folder: Path, key: str) -> tuple[str, ...]:
    """Tick a task there; the ids of what it wrote."""
    desk = Desk.open(folder, today=today, machine=folder.name)
    (task,) = (task for task in desk.round().tasks if task.key == key)
    records = desk.tick(task)
    desk.close()
    return tuple(record.id for record in records)


def standing(desk: Desk) -> dict[str, object]:
    """How every batch stands: its counts, and where and how its parts are."""
    return {
        name: (batch.tally, [(part.stage, part.alive, part.place) for part in batch.parts])
        for name, batch in desk.season.batches.items()
    }


def tickable() -> list[str]:
    """Keys of the tasks that can be ticked as they stand."""
    desk = Desk.open(sample_folder(), today=today, read_only=True)
    found = []
    for task in desk.round().tasks:
        if task.ticks and not any(ask.needed and not ask.default for ask in task.asks):
            found.append(task.key)
    desk.close()
    return found


@pytest.mark.parametrize("key", tickable())
def test_ticked_on_both_it_is_done_once_whoever_comes_first(key: str, tmp_path: Path) -> None:
    copies = two_copies(tmp_path)
    written = {ticked(copy, key) for copy in copies}
    alone = Desk.open(copies[0], today=today, machine="laptop", read_only=True)
    seasons = []
    for number, order in enumerate(permutations(copies)):
        both = tmp_path / f"both-{number}"
        shutil.copytree(order[0], both, ignore=shutil.ignore_patterns("*.lock"))
        for page in (order[1] / "records").iterdir():
            if not (both / "records" / page.name).exists():
                shutil.copy2(page, both / "records" / page.name)
        desk = Desk.open(both, today=today, machine="shed", read_only=True)
        there = {record.id for record in desk.folder.records()}
        assert {name for names in written for name in names} <= there
        assert [task.key for task in desk.round().tasks] == [t.key for t in alone.round().tasks]
        assert standing(desk) == standing(alone)
        seasons.append(desk.round())
        desk.close()
    alone.close()
    assert seasons[0] == seasons[1]


def test_sown_on_both_without_seeing_each_other_both_stand(tmp_path: Path) -> None:
    copies = two_copies(tmp_path)
    for copy, crop in zip(copies, ("lettuce", "leek"), strict=True):
        desk = Desk.open(copy, today=today, machine=copy.name)
        for _ in range(2):
            name = desk.free_batch_id()
            desk.record([Draft(Kind.SOWN, name, {"crop": crop, "cells": 9})])
            desk.record([Draft(Kind.FIRST_UP, name)])
        desk.close()
    for order in permutations(copies):
        both = tmp_path / f"sown-{order[0].name}-first"
        shutil.copytree(order[0], both, ignore=shutil.ignore_patterns("*.lock"))
        for page in (order[1] / "records").iterdir():
            if not (both / "records" / page.name).exists():
                shutil.copy2(page, both / "records" / page.name)
        desk = Desk.open(both, today=today, machine="shed", read_only=True)
        assert desk.problems == ()
        sown = {
            name: one.crop for name, one in desk.season.batches.items() if len(one.records) == 2
        }
        assert sown.items() >= {
            ("b34a", "lettuce"),
            ("b35a", "lettuce"),
            ("b34t", "leek"),
            ("b35t", "leek"),
        }
        assert desk.free_batch_id() == "b36"
        desk.close()
