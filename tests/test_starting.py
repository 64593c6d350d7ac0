"""What a start does without: looks of the collector until its first one, and the ssl module."""

from __future__ import annotations

import gc
import subprocess
import sys
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


def test_the_screens_are_read_without_ssl_which_is_there_for_whoever_asks() -> None:
    asked = """
import sys
from benchround.shell.starting import begin_without_ssl
begin_without_ssl()
import benchround.screens.app
assert "ssl" not in sys.modules
import asyncio, ssl, urllib.request
assert urllib.request.HTTPSHandler and ssl.create_default_context().verify_mode
asyncio.run(asyncio.sleep(0))
print("fine")
"""
    told = subprocess.run([sys.executable, "-c", asked], capture_output=True, text=True)
    assert (told.stdout, told.stderr) == ("fine\n", "")
