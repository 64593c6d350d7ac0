"""What a start does without: looks of the collector until its first one, and the ssl module."""

from __future__ import annotations

import gc
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

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


def test_the_round_is_drawn_where_the_library_of_the_screens_cannot_be_read(tmp_path: Path) -> None:
    asked = """
import sys
from pathlib import Path
sys.modules["textual"] = sys.modules["rich"] = None  # how Python marks what is not there
from benchround.clock import SampleClock
from benchround.desk import Desk
from benchround.opening import first_picture, steered
from benchround.screens.sitting import AS_USUAL
from benchround.whereabouts import SAMPLE_DAY, lay_sample
folder = Path(sys.argv[1])
lay_sample(folder)
desk = Desk.open(folder, today=SampleClock(SAMPLE_DAY))
print("to do" in steered(first_picture(desk, AS_USUAL, 80, 24), ""))
"""
    words = [sys.executable, "-c", asked, str(tmp_path / "season")]
    told = subprocess.run(words, capture_output=True, text=True)
    assert (told.stdout, told.stderr) == ("True\n", "")
