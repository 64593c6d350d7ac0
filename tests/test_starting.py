"""The collector waits at a start, and is back to its usual pace after its first look."""

from __future__ import annotations

import gc
from collections.abc import Iterator

import pytest

from benchround.shell.starting import OBJECTS_OF_A_SITTING, OBJECTS_OF_A_START, collect_less


@pytest.fixture(autouse=True)
def thresholds_as_before() -> Iterator[None]:
    before, called = gc.get_threshold(), list(gc.callbacks)
    gc.callbacks[:] = [one for one in called if one.__module__ != collect_less.__module__]
    yield
    gc.set_threshold(*before)
    gc.callbacks[:] = called


def test_it_waits_until_its_first_look_only() -> None:
    called = len(gc.callbacks)
    collect_less()
    collect_less()
    assert (gc.get_threshold()[0], len(gc.callbacks)) == (OBJECTS_OF_A_START, called + 1)
    gc.collect()
    assert (gc.get_threshold()[0], len(gc.callbacks)) == (OBJECTS_OF_A_SITTING, called)
    gc.collect()
    assert gc.get_threshold()[0] == OBJECTS_OF_A_SITTING
