"""Seed collected a second time is dried and packed as the first was.

A week to four weeks of drying in paper before it is packed: common practice, no source.
"""

from __future__ import annotations

from datetime import date, timedelta

from benchround.core.record import Kind
from benchround.core.task import Family
from tests.rounds.small_season import Story, begin, place, sown


def collected() -> Story:
    told = begin()
    place(told, "bed", name="Bed", kind="bed")
    sown(told, "s1", "halfling", date(2026, 3, 1), "bed", seeds=20, raising="drill")
    for day, kind in (
        (date(2026, 3, 20), Kind.FIRST_UP),
        (date(2026, 4, 20), Kind.PLANTED_OUT),
        (date(2026, 6, 1), Kind.FIRST_FLOWER),
        (date(2026, 7, 20), Kind.SEED_RIPE),
        (date(2026, 7, 21), Kind.SEED_SAVED),
    ):
        told.tell(day, kind, "s1", count=15)
    return told


def packing(told: Story, day: date) -> list[str]:
    return [str(task.window.best) for task in told.tasks(day, Family.PACK_SEED)]


def test_each_collecting_is_packed_once() -> None:
    told = collected()
    assert packing(told, date(2026, 8, 1)) == ["2026-07-28"]
    told.tell(date(2026, 8, 1), Kind.PACKED, "s1")
    assert packing(told, date(2026, 8, 1) + timedelta(days=30)) == []
    told.tell(date(2026, 9, 1), Kind.SEED_SAVED, "s1")
    assert packing(told, date(2026, 9, 10)) == ["2026-09-08"]
    told.tell(date(2026, 9, 10), Kind.PACKED, "s1")
    assert packing(told, date(2026, 9, 30)) == []
