"""What holds for every test."""

from __future__ import annotations

import os

import pytest
from hypothesis import settings

WORKERS_A_CORE = 2
"""Tests of the screens wait for a quiet program half of their time."""

settings.register_profile("benchround", deadline=None)
settings.load_profile("benchround")


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_auto_num_workers() -> int:
    """How many workers `-n auto` means."""
    return WORKERS_A_CORE * (os.cpu_count() or 1)
